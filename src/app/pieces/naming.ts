/** Can something be called this? One line of text that is not blank, as files have it. */
import { hasHidden } from '../../finish/parse.ts';

/** Longest name, characters. */
const longest = 120;

/** What is wrong with a name, to stand behind “Not yet:”; undefined where nothing is. */
export function nameFault(text: string): string | undefined {
  if (text.trim() === '') return 'a name has at least one letter or figure.';
  if (text.length > longest)
    return `a name has at most ${longest} characters; this has ${text.length}.`;
  return hasHidden(text) || /[\r\n\t]/.test(text)
    ? 'it holds a character that cannot be seen; type it afresh.'
    : undefined;
}

/** Longest note or story, characters. */
const longestNote = 2000;

/** What is wrong with a note of several lines. */
export function noteFault(text: string): string | undefined {
  if (text.length > longestNote) {
    return `at most ${longestNote} characters fit; this has ${text.length}.`;
  }
  return hasHidden(text) ? 'it holds a character that cannot be seen; type it afresh.' : undefined;
}
