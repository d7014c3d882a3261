/**
 * How does one value stand in one cell of a spreadsheet? Colours become a short text, and text
 * that a spreadsheet would run as a formula is made harmless and read back unchanged.
 *
 * Colours: `#1a2b3c`; `lab 52.1 -3 10.4` (D65) or `lab-d50 …`; `spectrum 400:0.05 410:0.06 …` in
 * nm and reflectance. Text that starts like a formula (= + - @, also after blanks) gets an
 * apostrophe in front, as spreadsheets themselves mark text; reading takes it off again.
 */
import type { Colour } from '../finish.ts';

const likeFormula = /^(?:$|'|\s*[=+\-@\uff0b\uff0d\uff1d\uff20|%])/u;

/** Text as it may stand in a cell: never run as a formula, never lost when empty. */
export const cellFromText = (text: string): string => (likeFormula.test(text) ? `'${text}` : text);

/** Text back from a cell. */
export const textFromCell = (cell: string): string => (cell.startsWith("'") ? cell.slice(1) : cell);

/** A colour as the text of one cell. */
export function cellFromColour(colour: Colour): string {
  if ('srgb' in colour) return colour.srgb;
  if ('lab' in colour) {
    return `${colour.light === 'D50' ? 'lab-d50' : 'lab'} ${colour.lab.join(' ')}`;
  }
  const { nm, reflectance } = colour.spectrum;
  return `spectrum ${nm.map((wavelength, band) => `${wavelength}:${reflectance[band]}`).join(' ')}`;
}

/** What a colour cell says, still unchecked: the schema judges it. */
export function colourFromCell(cell: string): unknown {
  const [kind = '', ...rest] = cell.trim().split(/[\s,;]+/);
  if (kind.startsWith('#')) return { srgb: cell.trim() };
  const word = kind.toLowerCase();
  if (word === 'lab' || word === 'lab-d50') {
    return { lab: rest.map(numberFromCell), light: word === 'lab' ? 'D65' : 'D50' };
  }
  if (word !== 'spectrum') return cell;
  const pairs = rest.map((pair) => pair.split(':'));
  return {
    spectrum: {
      nm: pairs.map(([nm]) => numberFromCell(nm ?? '')),
      reflectance: pairs.map(([, value]) => numberFromCell(value ?? '')),
    },
  };
}

/** A number where the cell holds one, else its text, so that the message can show it. */
export const numberFromCell = (cell: string): number | string =>
  /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(cell.trim()) ? Number(cell) : cell;

/** Yes or no where the cell says so, else its text. */
export const answerFromCell = (cell: string): boolean | string => {
  const word = cell.trim().toLowerCase();
  if (word === 'yes' || word === 'true') return true;
  return word === 'no' || word === 'false' ? false : cell;
};
