/**
 * Which of several does no other beat? One beats another that is at least as good on all six scores
 * and better on one.
 *
 * Costs in halvings, six a row, in the order of `scoreKeys`; or scores 0–100.
 */
import type { ScoreSheet } from '../../score/comparison.ts';
import { scoreKeys } from '../../score/evidence.ts';

export const scoreCount = scoreKeys.length;
/** Rows between two looks at whether to stop. */
export const lookEvery = 256;

/**
 * Places of rows of six costs that no other row beats, those level with each other once; undefined
 * where stopped. In order of their sums a row can only be beaten by one before it.
 */
export function unbeatenIn(
  costs: Float64Array,
  count: number,
  isOver: () => boolean = () => false,
): { at: number; level: number }[] | undefined {
  const sums = Float64Array.from({ length: count }, (_, at) => {
    let sum = 0;
    for (let k = 0; k < scoreCount; k++) sum += costs[at * scoreCount + k]!;
    return sum;
  });
  const order = Uint32Array.from({ length: count }, (_, at) => at).sort(
    (one, other) => sums[one]! - sums[other]! || compareCosts(costs, one, other),
  );
  const kept: { at: number; level: number }[] = [];
  for (let place = 0; place < count; place++) {
    if (place % lookEvery === 0 && isOver()) return undefined;
    const at = order[place]!;
    const before = kept.find((one) => isNoDearer(costs, one.at, at));
    if (before === undefined) kept.push({ at, level: 1 });
    else if (compareCosts(costs, before.at, at) === 0) before.level++;
  }
  return kept;
}

/** By the first cost in which they differ, then by neither. */
function compareCosts(costs: Float64Array, one: number, other: number): number {
  for (let k = 0; k < scoreCount; k++) {
    const by = costs[one * scoreCount + k]! - costs[other * scoreCount + k]!;
    if (by !== 0) return by;
  }
  return 0;
}

function isNoDearer(costs: Float64Array, one: number, other: number): boolean {
  const [a, b] = [one * scoreCount, other * scoreCount];
  for (let k = 0; k < scoreCount; k++) if (costs[a + k]! > costs[b + k]!) return false;
  return true;
}

/** Scores nearer than this are level: what a thousand-millionth of a halving makes of 100. */
const scoreGrain = 1e-6;

/** Whether one sheet is at least as good as another on all six scores and better on one. */
export const beats = (
  one: Pick<ScoreSheet, 'scores'>,
  other: Pick<ScoreSheet, 'scores'>,
): boolean =>
  scoreKeys.every((key) => one.scores[key] >= other.scores[key] - scoreGrain) &&
  scoreKeys.some((key) => one.scores[key] > other.scores[key] + scoreGrain);

/** Places, from 0, of the sheets that none of these beats. */
export const unbeatenBy = (
  sheets: readonly Pick<ScoreSheet, 'scores'>[],
  others: readonly Pick<ScoreSheet, 'scores'>[],
): number[] =>
  [...sheets.keys()].filter((at) => !others.some((other) => beats(other, sheets[at]!)));
