/**
 * Does a name show anything, and what is a thing called that is named by a file? Names stand in
 * headings and lists, so at least one character must be seen; and what a file's name may hold but
 * ours may not (`hasHidden` in `parse`) is left out, since nobody chose it as a name of ours.
 */
import { cutText } from '../../ground/id.ts';
import { withoutHidden } from '../parse.ts';

/** A letter, figure, mark or picture; blanks that call themselves letters are none. */
const seen = /(?!\p{Default_Ignorable_Code_Point}|\u2800)[\p{L}\p{N}\p{P}\p{S}]/u;

/** Whether anything of the text is seen. */
export const isSeen = (text: string): boolean => seen.test(text);

/** What a file is called, without its ending, as a name that files of ours may hold. */
export function nameFromFile(fileName: string, fallback: string): string {
  const stem = fileName.replace(/\.[a-z0-9]{1,5}$/i, '');
  const name = cutText(
    withoutHidden(stem || fileName)
      .replace(/\s+/g, ' ')
      .trim(),
  ).trimEnd();
  return isSeen(name) ? name : fallback;
}
