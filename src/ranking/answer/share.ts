/**
 * Which scores carry the difference between two overalls? Points of the overall for each of the six,
 * which add up to the difference.
 *
 * An overall is the weighted geometric mean of scores, so weighted differences of logarithms add up;
 * times the logarithmic mean of the two overalls they are points (the method of index decomposition
 * by logarithmic means).
 */
import type { ScoreSheet } from '../../score/comparison.ts';
import { type ScoreKey, scoreKeys } from '../../score/evidence.ts';

/** What one score does to the difference. */
export interface Share {
  readonly score: ScoreKey;
  /** Points of the overall; over 0 where the upper row gains by it. */
  readonly points: number;
}

/** What each score does to the difference of two overalls, most in favour of the first on top. */
export function sharesOf(
  upper: Pick<ScoreSheet, 'overall' | 'scores'>,
  lower: Pick<ScoreSheet, 'overall' | 'scores'>,
  weights: Readonly<Record<ScoreKey, number>>,
): Share[] {
  const total = scoreKeys.reduce((sum, key) => sum + weights[key], 0);
  const mean = logarithmicMean(upper.overall, lower.overall);
  return scoreKeys
    .map((score): Share => {
      const ratio = Math.log(upper.scores[score] / lower.scores[score]);
      return { score, points: total === 0 ? 0 : (mean * weights[score] * ratio) / total };
    })
    .sort((one, other) => other.points - one.points);
}

/** (a − b) / (ln a − ln b), which is a where both are the same. */
function logarithmicMean(a: number, b: number): number {
  const ratio = Math.log(a / b);
  // The quotient of two differences near 0 is all rounding.
  return Math.abs(ratio) < 1e-6 ? (a + b) / 2 : (a - b) / ratio;
}
