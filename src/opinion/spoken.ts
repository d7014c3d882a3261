/**
 * How is a thing called inside a sentence that goes out to viewers? By its name, in one line without
 * what steers or hides, small where it begins as an English word does.
 *
 * In: a name as its builder gave it, and what to say where nothing of it is left. Out: text that
 * stands in a sentence. Limits: English only; other scripts stay as they are.
 */
import { wordsFrom } from './reply/words.ts';

/** A name inside a sentence: `Seat belts` gives `seat belts`, `XL wing` stays. */
export const spoken = (name: string, otherwise: string): string =>
  (wordsFrom(name) || otherwise).replace(/^[A-Z](?=[a-z ])/, (first) => first.toLowerCase());

/** Things one after the other: `A, B or C`. */
export function listed(names: readonly string[], joint: 'and' | 'or'): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} ${joint} ${last}`;
}
