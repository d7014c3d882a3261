/**
 * What of a viewer's words goes along? Their own, in one line, as any channel hands them on: composed
 * (Unicode NFC), entities of HTML turned into their characters, white space and control characters
 * into single spaces, invisible marks of direction and width gone, 500 UTF-16 units at most, and
 * nothing in them that could be taken for a code: its hyphens become strokes.
 *
 * In: any text. Out: words that stay as they are when put through this again.
 */
import { cutText } from '../../ground/id.ts';
import { longestWords } from '../answer.ts';
import { dashes, spansIn } from './scan.ts';

/** Read no further than this, UTF-16 units; what is kept is far shorter. */
const mostRead = 8000;

// Joiners stay: emoji and several scripts need them.
const invisible =
  /[\u00ad\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufeff\ufff9-\ufffb]/g;
const loneHalf = /\p{Cs}/gu;
const anyDash = new RegExp(`[${dashes}]`, 'g');

/** A viewer's words as an answer has them. */
export function wordsFrom(text: string): string {
  let words = text.slice(0, mostRead);
  for (;;) {
    const next = onceOver(words);
    if (next === words) return words;
    words = next;
  }
}

function onceOver(text: string): string {
  const line = plainText(text)
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .replace(/^[> ]+/, '');
  return cutText(disarmed(line).trim(), longestWords).trim();
}

/** Text with strokes instead of hyphens wherever it might be taken for a code. */
function disarmed(text: string): string {
  let result = '';
  let at = 0;
  for (const { start, end } of spansIn(text)) {
    result += text.slice(at, start) + text.slice(start, end).replace(anyDash, '/');
    at = end;
  }
  return result + text.slice(at);
}

/** A channel that writes HTML again for what is HTML already is met; one that does so for sport is not. */
const mostPasses = 4;

/**
 * Text as it was before a channel wrote it as HTML, composed and without what cannot be seen; it
 * keeps its line breaks.
 */
export function plainText(text: string): string {
  let plain = text;
  for (let pass = 0; pass < mostPasses; pass++) {
    const next = withoutEntities(plain)
      .replace(loneHalf, '')
      .replace(invisible, '')
      .normalize('NFC');
    if (next === plain) return plain;
    plain = next;
  }
  return plain;
}

const named: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  hyphen: '-',
  dash: '-',
  ndash: '–',
  mdash: '—',
  minus: '−',
  lsquo: '‘',
  rsquo: '’',
  ldquo: '“',
  rdquo: '”',
  hellip: '…',
  lbrack: '[',
  lsqb: '[',
  rbrack: ']',
  rsqb: ']',
};

// What was written as HTML again and again begins with a chain of ampersands.
const withoutEntities = (text: string): string =>
  text.replace(
    /&(?:amp;|#0{0,5}38;|#x0{0,4}26;)*(?:#(\d{1,7})|#x([\da-f]{1,6})|([a-z]{2,6}));/gi,
    (whole, ten, hex, name) => {
      if (name !== undefined) return named[String(name).toLowerCase()] ?? whole;
      const code = ten === undefined ? Number.parseInt(hex, 16) : Number(ten);
      // A line break written as an entity was no line of its own.
      return code < 32 || code > 0x10ffff ? ' ' : String.fromCodePoint(code);
    },
  );
