/**
 * How much does each score count? Weights in words and shares, and what they do to the order.
 * A weight is told against its usual one; only proportions matter to the overall.
 */
import { type Build, defaultWeights, type Weights } from '../../../build/build.ts';
import type { ScoreSheet } from '../../../score/comparison.ts';
import { type ScoreKey, scoreKeys } from '../../../score/evidence.ts';

/** Times the usual weight, from nothing to double, in quarters. */
export const mostTimes = 2;
export const timesStep = 0.25;

/** A score's weight as so many times its usual one. */
export const timesUsual = (weights: Weights, key: ScoreKey): number =>
  weights[key] / defaultWeights[key];

/** The weight in words: `not at all`, `a little`, `less`, `as usual`, `more`, `a lot`. */
export function timesInWords(times: number): string {
  if (times === 0) return 'not at all';
  if (times <= 0.5) return 'a little';
  if (times < 1) return 'less';
  if (times === 1) return 'as usual';
  return times < 1.75 ? 'more' : 'a lot';
}

/** Percent of the whole that a score counts. */
export function shareOf(weights: Weights, key: ScoreKey): number {
  const total = scoreKeys.reduce((sum, one) => sum + weights[one], 0);
  return (100 * weights[key]) / total;
}

/** Weights with one changed; undefined where then nothing would count. */
export function withTimes(weights: Weights, key: ScoreKey, times: number): Weights | undefined {
  const changed = { ...weights, [key]: defaultWeights[key] * times };
  return scoreKeys.some((one) => changed[one] > 0) ? changed : undefined;
}

export const isUsual = (weights: Weights): boolean =>
  scoreKeys.every((key) => weights[key] === defaultWeights[key]);

export const withWeights = (build: Build, weights: Weights): Build => ({ ...build, weights });

/** Letters and overalls, best first: `C 91, A 57, B 23`. */
export const orderInWords = (sheets: readonly ScoreSheet[]): string =>
  [...sheets]
    .sort((one, other) => other.overall - one.overall)
    .map(({ letter, overall }) => `${letter}\u00a0${Math.round(overall)}`)
    .join(', ');

/** Letters best first were every score to count as usual; the overall is a weighted geometric mean. */
export function usualOrder(sheets: readonly ScoreSheet[]): string {
  const usual = ({ scores }: ScoreSheet): number =>
    scoreKeys.reduce((sum, key) => sum + defaultWeights[key] * Math.log(scores[key]), 0);
  return [...sheets]
    .sort((one, other) => usual(other) - usual(one))
    .map(({ letter }) => letter)
    .join(', ');
}
