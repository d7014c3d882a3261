/**
 * Which combinations of the open choices are best? What terminal and page are told: the best rows in
 * order, how surely the order is known, and what could still be better where the search was stopped.
 *
 * Overalls are points 0–100 as on the score sheet.
 */
import type { BottleToBuy } from '../build/bottles.ts';
import type { FinishRef, Part } from '../build/build.ts';
import type { ScoreSheet } from '../score/comparison.ts';
import type { Judging } from '../score/judged.ts';

/** What is asked of a ranking. */
export interface Wanted extends Judging {
  /** Rows wanted, 1–1000. */
  readonly count: number;
  /** Only rows that differ plainly from every row above in at least one open part. */
  readonly isDifferent: boolean;
}

/** How a search is watched and stopped. */
export interface Watch {
  /** Asked often; true ends the search with what has been found. */
  isOver?(): boolean;
  /** Hears of every better row and of the bound as it rises. */
  tell?(soFar: Ranking): void;
}

/** One combination in its place. */
export interface RankedRow {
  /** Finish of every open part, by part id. */
  readonly choices: Readonly<Record<string, FinishRef>>;
  /** As the sheet of an alternative with these choices: id `rank-1`, letter and name `1`. */
  readonly sheet: ScoreSheet;
  readonly toBuy: readonly BottleToBuy[];
}

export interface Ranking {
  /** Parts with a choice, in the order of the build. */
  readonly open: readonly Part[];
  /** Product of the candidate counts of the open parts. */
  readonly combinations: bigint;
  /** Best first; rows of one overall stand in the order of their parts' candidates. */
  readonly rows: readonly RankedRow[];
  /** These are the best rows there are, in this order, to 0.001 point. */
  readonly isProved: boolean;
  /** Overall that no combination can exceed; that of the first row once proved. */
  readonly atMost: number;
  /** Steps the search has taken. */
  readonly steps: number;
}
