/** What changes from one score sheet to another of the same alternative, and whether a finding goes. */
import type { ScoreSheet } from '../comparison.ts';
import { type Evidence, scoreKeys } from '../evidence.ts';
import type { Judged } from '../judged.ts';
import { readinessOf } from '../six/readiness.ts';
import type { Effect } from './remedy.ts';

/** One alternative worked out: its sheet, and what it would take. */
export interface Worked {
  readonly sheet: ScoreSheet;
  /** Names of the bottles to buy, by id. */
  readonly toBuy: ReadonlyMap<string, string>;
  readonly days: number;
  /** Ids of the parts to strip. */
  readonly strips: readonly string[];
}

/** A sheet with what its scheme takes. */
export function workedFrom(judged: Judged, sheet: ScoreSheet, choice: ArrayLike<number>): Worked {
  const { candidates, scene } = judged.terms;
  const { bottles, days, stripped } = readinessOf(candidates, choice);
  return {
    sheet,
    toBuy: new Map([...bottles].map((id) => [id, judged.bottleNames.get(id) ?? id])),
    days,
    strips: stripped.map((at) => scene.surfaces[at]!.id),
  };
}

/** What makes a finding the same one before and after a change: what is said, and of what. */
export function findingKey({ score, kind, parts, words }: Evidence): string {
  const pair =
    kind === 'near-miss' || kind === 'nearly-same' ? [...parts].sort().join() : undefined;
  const about = words.bottle ?? words.colour ?? pair ?? parts[0] ?? '';
  return `${score}/${kind}/${about}`;
}

const countOf = ({ evidence }: ScoreSheet, key: string): number =>
  evidence.filter((one) => findingKey(one) === key).length;

/** Whether a sheet says the very same of the very same parts. */
const isSaid = ({ evidence }: ScoreSheet, { score, kind, parts }: Evidence): boolean =>
  evidence.some(
    (one) => one.score === score && one.kind === kind && one.parts.join() === parts.join(),
  );

/** The effect of going from one to the other, as the answer to a finding of the first. */
export function effectOf(before: Worked, after: Worked, finding: Evidence): Effect {
  const key = findingKey(finding);
  const scores = scoreKeys.map((score) => [
    score,
    { before: before.sheet.scores[score], after: after.sheet.scores[score] },
  ]);
  return {
    overall: { before: before.sheet.overall, after: after.sheet.overall },
    scores: Object.fromEntries(scores) as Effect['scores'],
    toBuy: [...after.toBuy].flatMap(([id, name]) => (before.toBuy.has(id) ? [] : [name])),
    spared: [...before.toBuy].flatMap(([id, name]) => (after.toBuy.has(id) ? [] : [name])),
    days: { before: before.days, after: after.days },
    strips: after.strips.filter((part) => !before.strips.includes(part)),
    clears: countOf(after.sheet, key) < countOf(before.sheet, key) && !isSaid(after.sheet, finding),
  };
}
