/**
 * What stands in a picture besides cars, and what is its file called? Lines that fit, the
 * conditions in words, a name that every disk takes. In: text and a measure of its width. Out: text.
 */
import type { LightId } from '../../colour/illuminant.ts';

type Measure = (text: string) => number;

/** Characters that every file system takes; accents are dropped, all else is a hyphen. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');

const longestStem = 60;

/** `green-and-tan-abc-wide.png`; a name without a plain character falls back to the build's id. */
export function fileNameOf(
  build: { readonly id: string; readonly name: string },
  letters: readonly string[],
  shape?: string,
): string {
  const stem = plain(build.name).slice(0, longestStem).replace(/-+$/, '') || build.id;
  return `${[stem, plain(letters.join('')), ...(shape === undefined ? [] : [shape])].join('-')}.png`;
}

const lights: Readonly<Record<LightId, string>> = {
  D65: 'in daylight',
  D50: 'in warm daylight',
  A: 'by a warm lamp',
  'LED-B3': 'by LED light',
  FL11: 'by a shop tube',
};

/** `Seen in daylight from 0.4 m`. */
export const seenWords = (light: LightId, distanceMm: number): string =>
  `Seen ${lights[light]} from ${Number((distanceMm / 1000).toFixed(2))} m`;

/** The text in lines no wider than `width`, broken between words, or within one that is too long. */
export function linesOf(text: string, width: number, measure: Measure): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((some) => some !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (measure(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (line !== '' && measure(line + letter) > width) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** The first lines, the last of which ends in an ellipsis where some had to go. */
export function shortened(
  lines: readonly string[],
  most: number,
  width: number,
  measure: Measure,
): readonly string[] {
  if (lines.length <= most) return lines;
  let last = [...(lines[most - 1] ?? '')];
  while (last.length > 0 && measure(`${last.join('')}…`) > width) last = last.slice(0, -1);
  return [...lines.slice(0, most - 1), `${last.join('').trimEnd()}…`];
}
