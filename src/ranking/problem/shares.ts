/** How much does each score count? Weights as shares of the overall, 0–1, summing to 1. */
import { type ScoreKey, scoreKeys } from '../../score/evidence.ts';

export type Shares = Readonly<Record<ScoreKey, number>>;

export function sharesOf(weights: Readonly<Record<ScoreKey, number>>): Shares {
  const total = scoreKeys.reduce((sum, key) => sum + weights[key], 0);
  return Object.fromEntries(scoreKeys.map((key) => [key, weights[key] / total])) as Record<
    ScoreKey,
    number
  >;
}
