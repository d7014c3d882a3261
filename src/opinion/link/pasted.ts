/**
 * What did pasting make of a link? Mail breaks it over lines and quotes it, chats put it in quotes,
 * brackets or Markdown, a sentence ends behind it, editors write `&amp;`, `%2D` or marks without
 * width. What is known to happen is undone here; what remains is told by `envelope`.
 *
 * In: any text. Out: what may be meant as a link, the likeliest first, each either of the characters
 * links have or with the first one that no link has, so that it can be told. Limits: words that
 * stand behind a cut link with only a space between look like more of it, since mail puts spaces
 * into links too: they count as arrived.
 */
import { isDigit } from './base64.ts';
import { lengthFrom } from './envelope.ts';

/** Longest text that is searched, UTF-16 units. */
export const longestPasted = 200_000;
/** Most places where a link is looked for. */
const mostPlaces = 40;

/** Longest link that is read, with what stands in between, UTF-16 units. */
const mostCharacters = 80_000;
/** Within so many characters its beginning shows, quotes and all. */
const longestBeginning = 40;

/** What no eye sees and no link has: spaces and breaks of any kind, and marks without width. */
const isUnseen = (character: string): boolean =>
  /\ufe0f|[\s\u00ad\u180e\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/u.test(character);
/** What may stand around a link. */
const opening = /^[<>([{"'“”„‘’«»‹›`*|~]+/u;
const isClosing = (character: string): boolean =>
  /[<>()[\]{}"'“”„‘’«»‹›`*|~.,;:!?…&\\/]/u.test(character);

/** Texts that may be meant as links. */
export function linksIn(pasted: string): readonly string[] {
  // As it was sent: nothing to undo.
  if (/^#?\d[\w-]+$/.test(pasted)) return [pasted.replace('#', '')];
  const text = undone(pasted.slice(0, longestPasted));
  const places = [...text.matchAll(/#/g)].map(({ index }) => index + 1);
  const starts = places.length > 0 ? places : wordStarts(text);
  return starts.slice(0, mostPlaces).map((start) => linkAt(text, start));
}

/** What is likeliest meant as the link, whether or not it opens; empty where there is none. */
export const pastedLink = (pasted: string): string => linksIn(pasted)[0] ?? '';

/** Without what mail and editors put into it. */
const undone = (text: string): string =>
  text
    .replace(/=\r?\n/g, '')
    .replace(/^[ \t]*>[> \t]*/gm, '')
    .replace(/&amp;/g, '&')
    .replace(/&(?:quot|lt|gt|#39|#x27|nbsp);/g, ' ')
    .replace(/(?:%[0-9a-fA-F]{2})+/g, (escaped) => {
      try {
        return decodeURIComponent(escaped);
      } catch {
        return escaped;
      }
    });

/** Where words begin, those first whose beginning is that of a link. */
function wordStarts(text: string): number[] {
  const starts = [...text.matchAll(/\S+/g)].map(({ index }) => index);
  const likely = starts.filter((start) => hasBeginning(text, start));
  // Without any sign of a link, only a piece of one may be meant: one word that holds nothing else.
  const isPiece = starts.length === 1 && [...linkAt(text, starts[0]!)].every(isDigit);
  return likely.length > 0 || !isPiece ? likely : starts;
}

const hasBeginning = (text: string, start: number): boolean =>
  lengthFrom(linkAt(text.slice(start, start + longestBeginning), 0)) !== undefined;

/** The link that begins here, to its own length where that is known. */
function linkAt(text: string, start: number): string {
  // The bench's own address of a round tells besides which letter was chosen.
  const rest = text
    .slice(start, start + mostCharacters)
    .replace(/^[\s\u200b-\u200f\ufeff]+/u, '')
    .replace(opening, '')
    .replace(/^start-[A-Z0]-/, '');
  let link = '';
  let of: number | undefined;
  let isApart = false;
  const characters = [...rest];
  for (const [at, one] of characters.entries()) {
    if (isUnseen(one)) {
      isApart = true;
      continue;
    }
    // Whole, and the next stands apart from it: other words.
    if (link.length === of && isApart) return link;
    isApart = false;
    if (!isDigit(one)) {
      const next = characters.slice(at).find((later) => !isClosing(later));
      const ends = isClosing(one) && (link.length === of || next === undefined || isUnseen(next));
      return ends || one === '#' || one === '…' ? link : link + one;
    }
    link += one;
    if (link.length === 5) of = lengthFrom(link);
  }
  return link;
}
