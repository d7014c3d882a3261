/**
 * What was taken for granted when a builder's own table was read? Counted row by row, told in
 * sentences at the end, so that no default comes in unseen; nor does a second paint of one name.
 */
import { shown } from '../../../ground/problem.ts';
import { type Finish, paintEffects } from '../../finish.ts';
import { usualDeltaE } from '../../provenance.ts';
import { type ClassWord, classGloss } from '../../text/words.ts';
import type { Headed } from './headings.ts';
import type { Taken } from './row.ts';

/** Gathers what was taken for granted; `sentences` tells it. */
export class Granted {
  readonly #head: Headed;
  readonly #counts = new Map<string, number>();
  readonly #words = new Set<ClassWord>();
  readonly #unread: string[] = [];
  /** Rows by the name that stands in them. */
  readonly #rows = new Map<string, number[]>();

  constructor(head: Headed) {
    this.#head = head;
  }

  /** Notes what one good row left open; `row` is its number in the table. */
  note(finish: Finish, taken: readonly Taken[], row: number): void {
    const key = finish.name.trim().toLowerCase();
    this.#rows.set(key, [...(this.#rows.get(key) ?? []), row]);
    for (const one of taken) {
      if (one.kind === 'unread') {
        const { heading, cell } = one;
        this.#unread.push(`${shown(cell)} under ${heading} (${finish.name}, row ${row})`);
        continue;
      }
      if (one.kind === 'gloss-word') this.#words.add(one.as);
      const isPaint = paintEffects.some((effect) => effect === finish.effect);
      if (one.kind === 'chemistry' && !isPaint) continue;
      const key = one.kind === 'gloss' ? `gloss ${one.as}` : one.kind;
      this.#counts.set(key, (this.#counts.get(key) ?? 0) + 1);
    }
    if (finish.bottle === undefined) {
      this.#counts.set('no-bottle', (this.#counts.get('no-bottle') ?? 0) + 1);
    }
  }

  /** One sentence for each thing taken for granted. */
  sentences(): string[] {
    const { hasHeadings, leftOut } = this.#head;
    const words = [...this.#words];
    const said = (kind: string, sentence: (subject: string, count: number) => string): string[] => {
      const count = this.#counts.get(kind) ?? 0;
      return count === 0
        ? []
        : [sentence(`${count} ${count === 1 ? 'finish' : 'finishes'}`, count)];
    };
    return [
      ...(hasHeadings
        ? []
        : ['The first row names no columns; they were told apart by what is in them.']),
      ...this.#unreadInWords(),
      ...this.#twinsInWords(),
      ...(Object.keys(classGloss) as ClassWord[]).flatMap((word) =>
        said(
          `gloss ${word}`,
          (subject) =>
            `${subject} had no gloss; taken as ${word}, ${classGloss[word]} GU: correct them.`,
        ),
      ),
      ...(words.length === 0
        ? []
        : [
            `Gloss in words was taken as ${words.map((word) => `${word} ${classGloss[word]} GU`).join(', ')}.`,
          ]),
      ...said('effect', (subject) => `${subject} had no effect; taken as solid paint.`),
      ...said(
        'how',
        (subject, count) =>
          `${subject} did not say how ${count === 1 ? 'its colour was' : 'their colours were'} ` +
          `obtained; taken as a guess, usually off by ΔE\u00a0${usualDeltaE.guess}.`,
      ),
      ...said('light', () => 'Lab was taken as under daylight D65, 2° observer.'),
      ...said('lab-counts', (subject) => `${subject} had Lab and another colour; Lab counts.`),
      ...said('stock', (subject) => `${subject} did not say whether on hand; taken as to buy.`),
      ...said('days', (subject) => `${subject} to buy had no days to come; taken as none.`),
      ...said(
        'no-bottle',
        (subject, count) =>
          `${subject} said nothing of a bottle; ${count === 1 ? 'it counts' : 'they count'} neither as on hand nor as to buy.`,
      ),
      ...said(
        'chemistry',
        (subject, count) =>
          `${subject} did not say what paint ${count === 1 ? 'it is' : 'they are'}; what may go ` +
          'over what is not checked there.',
      ),
      ...(leftOut.length === 0
        ? []
        : [
            `${leftOut.length === 1 ? 'This column was' : 'These columns were'} left out: ` +
              `${leftOut.slice(0, 12).map(shown).join(', ')}${leftOut.length > 12 ? ' and others' : ''}.`,
          ]),
    ];
  }

  #unreadInWords(): string[] {
    const count = this.#unread.length;
    if (count === 0) return [];
    const subject =
      count === 1
        ? '1 cell could not be read and counts'
        : `${count} cells could not be read and count`;
    return [`${subject} as empty: ${listedUpTo(this.#unread, '; ')}.`];
  }

  #twinsInWords(): string[] {
    const twins = [...this.#rows].filter(([, rows]) => rows.length > 1);
    if (twins.length === 0) return [];
    const told = twins.map(
      ([name, rows]) => `${shown(name)} in rows ${listedUpTo(rows.map(String), ', ')}`,
    );
    return [`One name stands for several paints, and each comes in: ${listedUpTo(told, '; ')}.`];
  }
}

const mostTold = 8;
const listedUpTo = (things: readonly string[], between: string): string => {
  const more = things.length - mostTold;
  return things.slice(0, mostTold).join(between) + (more > 0 ? ` and ${more} more` : '');
};
