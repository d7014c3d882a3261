/** How long is a link, in words? In: characters of the whole address. Out: a plain sentence. */

import { longestComfortable } from '../../opinion/link/link.ts';

/** A count with its thousands apart. */
export const counted = (count: number): string => count.toLocaleString('en-GB');

/** `512 characters, fits anywhere we know of.` */
export function lengthWords(characters: number): string {
  const count = `${counted(characters)} characters`;
  return characters <= longestComfortable
    ? `${count}, fits anywhere we know of.`
    : `${count}. Over ${counted(longestComfortable)}, comments and chats may cut it or hold it back.`;
}
