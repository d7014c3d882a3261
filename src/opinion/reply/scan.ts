/**
 * Where in a text do codes stand? Finds whatever may be meant as one, whole or not, so that nothing
 * that looks like an answer is passed over in silence; `grammar.ts` then says whether it is sound.
 *
 * In: text without invisible characters (see `words.ts`). Out: places, in order, without overlap.
 * Time grows with the length of the text alone.
 */

/** Something that may be meant as a code. */
export interface Span {
  /** First character, UTF-16 units from the start of the text. */
  readonly start: number;
  /** Behind the last character. */
  readonly end: number;
  /** Its groups in upper case, without dashes and white space. */
  readonly groups: readonly string[];
  /** Whether it breaks off: a bracket was opened and not closed, or a dash comes last. */
  readonly isCut: boolean;
}

/** Hyphens and dashes that channels make of a hyphen, and the minus sign. */
export const dashes = '\\-\u2010-\u2015\u2212\ufe58\ufe63\uff0d';

const anyDash = new RegExp(`[${dashes}]`, 'g');
// A channel may mark the bracket as a plain one with a stroke before it.
const bracketed = /\\?[[\uff3b\u3010]([^[\]\uff3b\uff3d\u3010\u3011]{1,2000})[\]\uff3d\u3011]/g;
// A mark that lost or gained a character is still seen, as damage.
const shape = /^[0-9A-Z]{3,5}-[0-9A-Z]{1,2}(?:-[0-9A-Z]+)+$/;

/** Every span of a text; those without brackets only behind this mark, or any where none is given. */
export function spansIn(text: string, mark?: string): Span[] {
  const spans: Span[] = [];
  for (const match of text.matchAll(bracketed)) {
    // What marks up a text leaves its signs between the characters.
    const inner = (match[1] ?? '')
      .replace(/[\s\\*_`>]/g, '')
      .replace(anyDash, '-')
      .toUpperCase();
    if (!shape.test(inner)) continue;
    const end = match.index + match[0].length;
    spans.push({ start: match.index, end, groups: inner.split('-'), isCut: false });
  }
  const whole = [...spans];
  let at = 0;
  for (const match of text.matchAll(bare(mark))) {
    const { index } = match;
    while ((whole[at]?.end ?? Infinity) <= index) at++;
    if ((whole[at]?.start ?? Infinity) <= index) continue;
    const groups = match[0].replace(anyDash, '-').toUpperCase().split('-');
    const opened = /[[\uff3b\u3010]\s?$/.exec(text.slice(Math.max(0, index - 2), index))?.[0] ?? '';
    const isCut = opened !== '' || groups.at(-1) === '';
    if (groups.length < 3 && opened === '') continue;
    const start = index - opened.length;
    spans.push({ start, end: index + match[0].length, groups, isCut });
  }
  return spans.sort((one, other) => one.start - other.start);
}

function bare(mark: string | undefined): RegExp {
  const typed = mark?.replace(/0/g, '[0O]').replace(/1/g, '[1IL]') ?? '[0-9A-Z]{4}';
  const dash = `[${dashes}]`;
  return new RegExp(
    `(?<![0-9A-Z${dashes}])${typed}${dash}[0-9A-Z](?:${dash}[0-9A-Z]+)*(?![0-9A-Z])${dash}?`,
    'gi',
  );
}
