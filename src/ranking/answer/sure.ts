/**
 * How surely does this order hold, given how uncertain the colours are? In how many of 100 draws a
 * row stays ahead of the next and the first ahead of it, and which rows cannot be told from the first.
 *
 * Rows of one ranking and the build laid out in; shares of 100 draws out. The draws are those of the
 * sheet (`score/confidence`): one a finish, shared by all parts and rows. Rows after `mostTried` are
 * not tried.
 */
import type { Build } from '../../build/build.ts';
import { assignmentOf } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { aheadIn100 } from '../../score/confidence.ts';
import { inWords } from '../../score/finding/scheme.ts';
import { type Judged, type Judging, judgeAgain } from '../../score/judged.ts';
import { tooCloseBelow } from '../../score/judgement.ts';
import type { RankedRow } from '../ranking.ts';
import { inNumerals } from './figures.ts';

export interface Surely {
  /** In how many of 100 draws it is ahead of the next row; undefined for the last. */
  readonly aheadOfNext: number | undefined;
  /** In how many of 100 draws the first is ahead of it; undefined for the first itself. */
  readonly firstAhead: number | undefined;
  /** Too close to the next to call. */
  readonly isCloseToNext: boolean;
}

export interface Sureness {
  /** One for each row tried, in their order. */
  readonly rows: readonly Surely[];
  /** Places from 0 of the first and of every row too close to it to call; one alone where none is. */
  readonly head: readonly number[];
}

/** Rows that draws are made for; they are many more than anyone compares (our judgement). */
export const mostTried = 50;

/** How surely rows hold their places. A build laid out before may be handed in. */
export function surenessOf(
  build: Build,
  sight: SightTable,
  judging: Judging,
  rows: readonly Pick<RankedRow, 'choices'>[],
  laidOut?: Judged,
): Sureness {
  const judged = judgeAgain(laidOut, build, sight, judging);
  const choices = rows
    .slice(0, mostTried)
    .map((row) =>
      judged.choiceOf(assignmentOf(judged.build, { id: 'row', name: 'row', choices: row.choices })),
    );
  if (choices.length === 0) return { rows: [], head: [] };
  const ahead = aheadIn100(judged.terms, choices, judged.build.weights);
  const sure = ahead.map((row, at): Surely => {
    const aheadOfNext = row[at + 1];
    return {
      aheadOfNext,
      firstAhead: at === 0 ? undefined : ahead[0]![at]!,
      isCloseToNext: isTooClose(aheadOfNext),
    };
  });
  const head = [...sure.keys()].filter((at) => at === 0 || isTooClose(sure[at]!.firstAhead));
  return { rows: sure, head };
}

const isTooClose = (in100: number | undefined): boolean =>
  in100 !== undefined && in100 < tooCloseBelow;

/** `The first four are too close to call; ask your viewers.` */
export function headSentence({ head, rows }: Sureness): string {
  if (rows.length < 2) return '';
  if (head.length === 1) {
    const least = Math.min(...rows.slice(1).map(({ firstAhead }) => firstAhead!));
    return rows.length === 2
      ? `The first stays ahead of the second ${timesOf100(least)}.`
      : `The first stays ahead of every other shown, ${timesOf100(least)}${least >= 100 ? '' : ' or more'}.`;
  }
  const isRun = head.every((at, k) => at === k);
  const who =
    head.length === rows.length
      ? rows.length === 2
        ? 'Both'
        : `All ${inNumerals(head.length)}`
      : isRun
        ? `The first ${inNumerals(head.length)}`
        : `Numbers ${inWords(head.map((at) => `${at + 1}`))}`;
  return `${who} are too close to call; ask your viewers.${overtakenSentence(rows)}`;
}

/** Where a row is ahead of the first in most draws, though behind it as colours are stated. */
function overtakenSentence(rows: readonly Surely[]): string {
  const most = Math.min(...rows.slice(1).map(({ firstAhead }) => firstAhead!));
  if (most >= 50) return '';
  const at = rows.findIndex(({ firstAhead }) => firstAhead === most);
  return ` Number ${at + 1} is even ahead of the first ${timesOf100(100 - most)}.`;
}

/** How surely a row is ahead of the next: `Stays ahead of number 2 97 times of 100.` */
export function nextSentence({ aheadOfNext }: Surely, next: string): string {
  if (aheadOfNext === undefined) return '';
  const times = timesOf100(aheadOfNext);
  return isTooClose(aheadOfNext)
    ? `Too close to number ${next} to call: ahead ${times}.`
    : `Stays ahead of number ${next} ${times}.`;
}

/** Never 100 where it was not always so, nor 0 where it was once. */
const timesOf100 = (share: number): string => {
  const times = share >= 100 ? 100 : share <= 0 ? 0 : Math.min(99, Math.max(1, Math.round(share)));
  return `${times} ${times === 1 ? 'time' : 'times'} of 100`;
};
