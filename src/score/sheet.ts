/**
 * Which alternative is better, by how much, and why?
 *
 * In: a build, its car's sight table, and today's date. Out: a comparison: six scores 0–100, the
 * overall as their weighted geometric mean, evidence worst first, broken rules, the Pareto mark
 * and closeness. Definitions: DEVELOPERS.md, *The scores*.
 */

import type { Alternative } from '../build/build.ts';
import {
  assignmentOf,
  type Build,
  defaultWeights,
  finishesByRef,
  letterOf,
  type Weights,
} from '../build/build.ts';
import { brokenRules } from '../build/rule.ts';
import type { SightTable } from '../car/table.ts';
import type { Closeness, Comparison, ScoreSheet, Unsure } from './comparison.ts';
import { aheadIn100, aheadWhereSure } from './confidence.ts';
import { type Evidence, type ScoreKey, scoreKeys } from './evidence.ts';
import { accentEvidence } from './finding/accent.ts';
import { contrastEvidence } from './finding/contrast.ts';
import { harmonyEvidence } from './finding/harmony.ts';
import { readinessEvidence } from './finding/readiness.ts';
import { type Scheme, schemeOf } from './finding/scheme.ts';
import { sheenEvidence } from './finding/sheen.ts';
import { steadinessEvidence } from './finding/steadiness.ts';
import { type Judged, type Judging, judge } from './judged.ts';
import { plainlyApart, tooCloseBelow } from './judgement.ts';
import { aheadOfOrdinary, ordinaryOveralls } from './ordinary.ts';
import { overallOf, scoreOfCost, type Terms } from './terms.ts';

/**
 * How to compare; `withoutCloseness` skips all draws: `closeness` is then empty and no sheet says
 * how many ordinary schemes it is ahead of.
 */
export interface Comparing extends Judging {
  readonly withoutCloseness?: boolean;
}

/** Compares every alternative of a build. */
export function compareAlternatives(
  build: Build,
  sight: SightTable,
  judging: Comparing,
): Comparison {
  return comparisonOf(judge(build, sight, judging), judging);
}

/**
 * Compares every alternative of a build that is laid out already. Sheets of alternatives that are
 * as they were in the same tables are the same objects as before.
 */
export function comparisonOf(judged: Judged, judging: Comparing): Comparison {
  const { build, sight } = judged.from;
  const sheets = judged.build.alternatives.map((alternative, at) =>
    sheetKept(judged, alternative, at),
  );
  const costs = sheets.map(({ costs: six }) => six);
  const ordinary = judging.withoutCloseness ? undefined : ordinaryOveralls(build, sight, judging);
  return {
    light: judged.light,
    distanceMm: judged.terms.scene.distanceMm,
    today: judging.today,
    alternatives: sheets.map((kept, at) => {
      const pareto = isUnbeaten(costs, at);
      if (kept.sheet.pareto !== pareto) kept.sheet = { ...kept.sheet, pareto };
      const { sheet } = kept;
      return ordinary === undefined
        ? sheet
        : { ...sheet, aheadOfOrdinary: aheadOfOrdinary(ordinary, sheet.overall) };
    }),
    closeness:
      judging.withoutCloseness === true
        ? []
        : closenessOf(
            judged,
            sheets.map(({ sheet }) => sheet),
          ),
  };
}

/** A sheet, and all that it rests on beside the tables. */
interface Kept {
  readonly of: readonly unknown[];
  readonly costs: Float64Array;
  sheet: ScoreSheet;
}
/** By tables and alternative: a change on one alternative leaves the sheets of the others. */
const keptIn = new WeakMap<Terms, Map<string, Kept>>();

function sheetKept(judged: Judged, alternative: Alternative, at: number): Kept {
  const { weights, rules } = judged.build;
  const of = [alternative, weights, rules, at, judged.from.judging.today];
  const kept = keptIn.get(judged.terms) ?? new Map<string, Kept>();
  keptIn.set(judged.terms, kept);
  const before = kept.get(alternative.id);
  if (before?.of.every((one, k) => one === of[k])) return before;
  const now = { of, ...sheetOf(judged, alternative, at) };
  kept.set(alternative.id, now);
  return now;
}

function sheetOf(judged: Judged, alternative: Alternative, at: number) {
  const assignment = assignmentOf(judged.build, alternative);
  const choice = judged.choiceOf(assignment);
  const costs = judged.terms.costs(choice, new Float64Array(scoreKeys.length));
  const sheet: ScoreSheet = {
    id: alternative.id,
    letter: letterOf(at),
    name: alternative.name,
    ...numbersOf(costs, judged.build.weights),
    pareto: false,
    broken: brokenRules(judged.build, assignment, judged.factsOf(choice)).map(
      ({ sentence }) => sentence,
    ),
    evidence: reasonsFor(judged, choice),
  };
  return { sheet, costs };
}

/** What six costs in halvings come to on a sheet. */
export const numbersOf = (
  costs: Float64Array,
  weights: Weights,
): Pick<ScoreSheet, 'overall' | 'overallWithoutReadiness' | 'scores'> => ({
  overall: overallOf(costs, weights),
  overallWithoutReadiness: overallOf(costs, weights, 'readiness'),
  scores: Object.fromEntries(scoreKeys.map((key, k) => [key, scoreOfCost(costs[k]!)])) as Record<
    ScoreKey,
    number
  >,
});

/** The evidence on the sheet of a choice, worst first. */
export const reasonsFor = (judged: Judged, choice: ArrayLike<number>): Evidence[] =>
  worstFirst(evidenceOf(schemeOf(judged.terms, choice), judged.bottleNames), judged.build.weights);

/** All evidence of a scheme, by score. */
export function evidenceOf(scheme: Scheme, bottleNames: ReadonlyMap<string, string>): Evidence[] {
  return [
    ...contrastEvidence(scheme),
    ...accentEvidence(scheme),
    ...sheenEvidence(scheme),
    ...harmonyEvidence(scheme),
    ...steadinessEvidence(scheme),
    ...readinessEvidence(scheme, bottleNames),
  ];
}

function worstFirst(evidence: readonly Evidence[], weights: Weights): Evidence[] {
  const loss = ({ score, cost }: Evidence): number =>
    cost * (weights[score] + Number.EPSILON * defaultWeights[score]);
  return [...evidence].sort((one, other) => loss(other) - loss(one));
}

/** Whether no other alternative costs at most as much on every score and less on one. */
export function isUnbeaten(costs: readonly Float64Array[], at: number): boolean {
  const own = costs[at]!;
  return !costs.some(
    (other, k) =>
      k !== at && other.every((cost, s) => cost <= own[s]!) && other.some((c, s) => c < own[s]!),
  );
}

function closenessOf(judged: Judged, sheets: readonly ScoreSheet[]): Closeness[] {
  if (sheets.length < 2) return [];
  const choices = judged.build.alternatives.map((alternative) =>
    judged.choiceOf(assignmentOf(judged.build, alternative)),
  );
  const { weights } = judged.build;
  const ahead = aheadIn100(judged.terms, choices, weights);
  return sheets.flatMap((one, i) =>
    sheets.slice(i + 1).map((other, step): Closeness => {
      const j = i + 1 + step;
      const isFirst = one.overall >= other.overall;
      const [first, second] = isFirst ? [i, j] : [j, i];
      const [a, b] = [sheets[first]!, sheets[second]!];
      const [choice, another] = [choices[first]!, choices[second]!];
      const pair = { a: a.id, b: b.id, aheadIn100: ahead[first]![second]! };
      if (choice.every((c, at) => c === another[at])) return { ...pair, isAlike: true };
      if (pair.aheadIn100 >= tooCloseBelow || a.overall < b.overall + plainlyApart) return pair;
      const unsure = unsureOf(judged, [choice, another], pair.aheadIn100);
      return unsure === undefined ? pair : { ...pair, unsure };
    }),
  );
}

/** The one colour that, were it sure, would put the first ahead most often; if any would at all. */
function unsureOf(
  judged: Judged,
  choices: readonly [Int32Array, Int32Array],
  aheadNow: number,
): Unsure | undefined {
  const { terms, build } = judged;
  const finishes = finishesByRef(build);
  const worn = new Map(terms.candidates.flatMap((list) => list.map((c) => [c.worn.ref, c.worn])));
  let most: Unsure | undefined;
  for (const [ref, ahead] of aheadWhereSure(terms, choices, build.weights)) {
    const finish = finishes.get(ref);
    if (finish === undefined || ahead <= (most?.aheadIn100 ?? aheadNow)) continue;
    const { deltaE } = worn.get(ref)!;
    most = { ref, name: finish.name, how: finish.provenance.how, deltaE, aheadIn100: ahead };
  }
  return most;
}
