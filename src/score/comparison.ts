/**
 * The comparison of a build's alternatives as terminal, page and files receive it.
 */
import type { Provenance } from '../finish/finish.ts';
import { type Evidence, type ScoreKey, scoreKeys } from './evidence.ts';

/** One alternative's score sheet. */
export interface ScoreSheet {
  readonly id: string;
  readonly letter: string;
  readonly name: string;
  /** Weighted geometric mean of the six scores, 0–100. */
  readonly overall: number;
  readonly overallWithoutReadiness: number;
  /** How many of 100 ordinary schemes of the same build it is ahead of; absent without draws. */
  readonly aheadOfOrdinary?: number;
  /** No other alternative is at least as good on every score and better on one. */
  readonly pareto: boolean;
  /** Rules this alternative breaks, each as a sentence that says which and why. */
  readonly broken: readonly string[];
  /** Each 0–100. */
  readonly scores: Readonly<Record<ScoreKey, number>>;
  /** Worst first. */
  readonly evidence: readonly Evidence[];
}

/** The others that are at least as good on every score and better on one. */
export const beating = (sheet: ScoreSheet, all: readonly ScoreSheet[]): ScoreSheet[] =>
  all.filter(
    ({ scores }) =>
      scoreKeys.every((key) => scores[key] >= sheet.scores[key]) &&
      scoreKeys.some((key) => scores[key] > sheet.scores[key]),
  );

/** In how many of 100 seeded draws over colour uncertainty `a` stays ahead of `b`. */
export interface Closeness {
  readonly a: string;
  readonly b: string;
  readonly aheadIn100: number;
  /** Present where both wear the same throughout; they are level then, in every draw. */
  readonly isAlike?: true;
  /** Where their numbers are apart and yet too close to call: the colour that does most to it. */
  readonly unsure?: Unsure;
}

/** A finish whose colour is uncertain, and what being sure of it would do. */
export interface Unsure {
  readonly ref: string;
  readonly name: string;
  readonly how: Provenance['how'];
  /** RMS CIEDE2000 between its stated and its real colour. */
  readonly deltaE: number;
  /** In how many of the same draws `a` is ahead where this one colour is as stated. */
  readonly aheadIn100: number;
}

export interface Comparison {
  readonly light: string;
  readonly distanceMm: number;
  /** ISO date the readiness was counted from. */
  readonly today: string;
  readonly alternatives: readonly ScoreSheet[];
  readonly closeness: readonly Closeness[];
}
