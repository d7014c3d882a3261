/**
 * Where do a viewer's own words begin? Behind the sentence that a reply opens with, which is known
 * once its code is read; channels may have broken its line, or changed its quotes and dashes.
 *
 * In: the text before a code, and what the code says. Out: the words behind the opening, or whether
 * the text speaks for another letter than the code does. Limits: where the viewer wrote over the
 * opening it is not found.
 */
import { lettersIn, type Round } from '../round.ts';
import type { Choice } from './grammar.ts';
import { dashes } from './scan.ts';
import { openings } from './write.ts';

/** What stands behind the opening of this choice, on the nearest line that has one. */
export function afterOpening(before: string, choice: Choice, round: Round): string | undefined {
  for (const opening of openings(round, choice)) {
    const found = [...before.matchAll(patternOf(opening))];
    const last = found.at(-1);
    if (last === undefined) continue;
    // Words stand on the opening's own line and may repeat it.
    const lineStart = before.lastIndexOf('\n', last.index) + 1;
    const first = found.find(({ index }) => index >= lineStart) ?? last;
    return before.slice(first.index + first[0].length);
  }
  return undefined;
}

/** A sentence as channels may hand it on. */
function patternOf(sentence: string): RegExp {
  const source = [...sentence]
    .map((character) => {
      if (character === ' ') return '\\s+';
      if (new RegExp(`[${dashes}]`).test(character)) return `[${dashes}]`;
      const quotes = ['"“”„‟«»″', "'‘’‚‛′`´"].find((all) => all.includes(character));
      if (quotes !== undefined) return `[${quotes}]`;
      return character.replace(/[\\^$.*+?()[\]{}|/]/, '\\$&');
    })
    .join('');
  return new RegExp(`(?<![\\p{L}\\p{N}])${source}`, 'giu');
}

/** Whether the words before a code speak for another letter than the code does. */
export function namesAnother(before: string, { letter }: Choice, round: Round): boolean {
  const named = [...before.matchAll(/(?<![\p{L}\p{N}])([A-Z])\s+for\s+me(?![\p{L}\p{N}])/giu)];
  const spoken = named.at(-1)?.[1]?.toUpperCase();
  return spoken !== undefined && spoken !== letter && lettersIn(round).includes(spoken);
}
