/**
 * What did pasting make of a link? Mail breaks it over lines, chats put it in quotes, brackets or
 * Markdown, a sentence ends behind it, an editor writes `&amp;` or `%2D`. All that is known to
 * happen is undone here; what remains is told by whoever reads the link.
 *
 * In: any text. Out: what stands behind `#`, or the text itself where there is no `#`; empty where
 * nothing is left.
 */

/** What no eye sees and no link has: spaces and breaks of any kind, and marks without width. */
const unseen = /[\s\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]+/gu;
/** What may stand around it. */
const before = /^[<>([{"'“”„‘’«»‹›`*|]+/u;
const after = /[<>()[\]{}"'“”„‘’«»‹›`*|.,;:!?…]+$/u;

/** The link in a pasted text. */
export function pastedLink(text: string): string {
  // A quoted line of mail begins with `>`.
  const joined = text
    .replace(/^[ \t]*>[> \t]*/gm, '')
    .replace(unseen, '')
    .replace(/&amp;/g, '&');
  const hash = joined.lastIndexOf('#');
  const link = decoded(joined.slice(hash + 1));
  // The bench's own address of a round tells besides which letter was chosen.
  return link
    .replace(before, '')
    .replace(after, '')
    .replace(/^start-[A-Z0]-/, '');
}

/** Percent signs undone; as it stands where they mean nothing. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
