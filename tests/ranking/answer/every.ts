/**
 * The plain way to a ranking: every combination of a small build as an alternative of its own,
 * compared by the score sheet, those that break a rule left out, the rest sorted.
 */
import { readFileSync } from 'node:fs';
import { bottlesToBuy } from '../../../src/build/bottles.ts';
import { assignmentOf, type Build, isOpen, type Rule } from '../../../src/build/build.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { brokenRules } from '../../../src/build/rule.ts';
import type { SightTable } from '../../../src/car/table.ts';
import type { Draw } from '../../../src/ground/draw.ts';
import type { RankedRow, Ranking } from '../../../src/ranking/ranking.ts';
import { judge } from '../../../src/score/judged.ts';
import { comparisonOf } from '../../../src/score/sheet.ts';

const read = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));
export const sight = read('models/roadster.sight.json') as SightTable;
export const demo: Build = buildFrom(read('src/build/demo.json'));
export const today = '2031-05-01';

/** The demo with only some of its parts open, the others at their first candidate. */
export const demoWith = (open: readonly string[], rules: readonly Rule[] = []): Build => ({
  ...demo,
  parts: demo.parts.map((part) => {
    if (!isOpen(part) || open.includes(part.id)) return part;
    const { candidates, ...others } = part;
    return { ...others, finish: candidates[0]!, painted: false };
  }),
  rules: [...rules],
  alternatives: [],
});

interface Tried extends RankedRow {
  /** Positions of the rules it breaks. */
  readonly broken: readonly number[];
}
const triedIn = new WeakMap<Build, readonly Tried[]>();

/** Every combination, best first. */
function everyTried(build: Build): readonly Tried[] {
  const known = triedIn.get(build);
  if (known !== undefined) return known;
  let all: Record<string, string>[] = [{}];
  for (const part of build.parts) {
    if (!isOpen(part)) continue;
    all = all.flatMap((worn) => part.candidates.map((ref) => ({ ...worn, [part.id]: ref })));
  }
  const alternatives = all.map((choices, at) => ({ id: `all-${at}`, name: `${at}`, choices }));
  const judged = judge({ ...build, alternatives }, sight, { today });
  const tried = comparisonOf(judged, { today, withoutCloseness: true })
    .alternatives.map((sheet, at): Tried => {
      const assignment = assignmentOf(build, alternatives[at]!);
      const facts = judged.factsOf(judged.choiceOf(assignment));
      return {
        choices: all[at]!,
        sheet,
        toBuy: bottlesToBuy(build, assignment),
        broken: brokenRules(judged.build, assignment, facts).map(({ index }) => index),
      };
    })
    .sort((one, other) => other.sheet.overall - one.sheet.overall);
  triedIn.set(build, tried);
  return tried;
}

/** Every combination that keeps every rule, but for one that is left out, as rows of a ranking. */
export const everyRow = (build: Build, leftOut?: number): RankedRow[] =>
  everyTried(build)
    .filter(({ broken }) => broken.every((rule) => rule === leftOut))
    .map(({ choices, sheet, toBuy }, place): RankedRow => {
      const number = `${place + 1}`;
      const numbered = { ...sheet, id: `rank-${number}`, letter: number, name: number };
      return { choices, sheet: numbered, toBuy };
    });

/** The ranking made of them. */
export function everyRanking(build: Build, count: number): Ranking {
  const all = everyRow(build);
  const open = build.parts.filter(isOpen).filter(({ candidates }) => candidates.length > 1);
  return {
    open,
    combinations: open.reduce((product, { candidates }) => product * BigInt(candidates.length), 1n),
    rows: all.slice(0, count),
    isProved: true,
    atMost: all[0]?.sheet.overall ?? 0,
    steps: all.length,
  };
}

/** Open parts of the demo. */
export const openInDemo = demo.parts.filter(isOpen).map(({ id }) => id);

/** `count` different entries of a list, drawn. */
export function drawn<T>(list: readonly T[], count: number, draw: Draw): T[] {
  const left = [...list];
  return Array.from(
    { length: Math.min(count, left.length) },
    () => left.splice(draw.below(left.length), 1).at(0)!,
  );
}
