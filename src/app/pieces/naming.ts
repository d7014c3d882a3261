/** Can something be called this? One line of text that is not blank, as files have it. */
import { longestNote } from '../../finish/finish.ts';
import { hasHidden } from '../../finish/parse.ts';
import { isSeen } from '../../finish/text/name.ts';
import { longestName } from '../../ground/id.ts';

/** What is wrong with a name, to stand behind “Not yet:”; undefined where nothing is. */
export function nameFault(text: string): string | undefined {
  if (text.trim() === '') return 'a name has at least one letter or figure.';
  if (text.length > longestName)
    return `a name has at most ${longestName} characters; this has ${text.length}.`;
  if (hasHidden(text) || /[\r\n\t]/.test(text)) {
    return 'it holds a character that cannot be seen; type it afresh.';
  }
  return isSeen(text) ? undefined : 'nothing of it can be seen; a name has a letter or figure.';
}

/** What is wrong with a note of several lines. */
export function noteFault(text: string): string | undefined {
  if (text.length > longestNote) {
    return `at most ${longestNote} characters fit; this has ${text.length}.`;
  }
  return hasHidden(text) ? 'it holds a character that cannot be seen; type it afresh.' : undefined;
}
