/**
 * What number or colour does a cell of a builder's own table hold? Decimal points, and decimal commas
 * where no comma separates cells; `79828a`, `#abc`, `rgb(121, 130, 138)`, `54 -2 -5` beneath Lab, and
 * all that our own CSV writes. What is no number or colour comes back as its text.
 */
import { colourFromCell } from '../../text/cell.ts';
import type { Separator } from '../../text/table.ts';

/** A number with a decimal point, or a decimal comma where no comma separates cells. */
export function numberFrom(cell: string, separator: Separator): number | string {
  const plain = cell
    .trim()
    .replace(/\u2212/g, '-')
    .replace(/\s*(gu|%|°)$/i, '');
  const pointed =
    separator === ',' || plain.includes('.') ? plain : plain.replace(/^([^,]*),([^,]*)$/, '$1.$2');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(pointed) ? Number(pointed) : cell;
}

/** A colour as builders write it: `79828a`, `#abc`, `rgb(121, 130, 138)`, `54 -2 -5`, or as ours. */
export function colourFrom(heading: string, cell: string, separator: Separator): unknown {
  const [, digits] = /^#?([0-9a-f]{6}|[0-9a-f]{3})$/i.exec(cell) ?? [];
  if (digits !== undefined && (digits.length === 6 || cell.startsWith('#'))) {
    return { srgb: `#${digits.length === 6 ? digits : digits.replace(/./g, '$&$&')}` };
  }
  const [, said = '', light = '', rest = ''] =
    /^(rgb|lab)?(-d50|-d65)?[\s(:]*([\d\s.,;+\-\u2212]+)\)?$/i.exec(cell) ?? [];
  const numbers = numbersIn(rest, separator);
  if (numbers.length !== 3) return colourFromCell(cell);
  const word = (said === '' ? (/rgb|lab/i.exec(heading)?.[0] ?? '') : said).toLowerCase();
  if (word === 'rgb') {
    const hex = hexFrom(numbers);
    return hex === undefined ? cell : { srgb: hex };
  }
  // Three whole numbers that nothing calls Lab may be either.
  if (word === '' && numbers.every((one) => one >= 0 && Number.isInteger(one))) return cell;
  return { lab: numbers, light: light.toLowerCase() === '-d50' ? 'D50' : 'D65' };
}

/** Numbers in one cell; a comma is a decimal one where blanks or semicolons stand between them. */
function numbersIn(text: string, separator: Separator): number[] {
  const isDecimal = separator !== ',' && /\d,\d/.test(text) && /\d[\s;]/.test(text.trim());
  const parts = text.trim().split(isDecimal && !/,\s/.test(text) ? /[\s;]+/ : /[\s,;]+/);
  return parts.map((part) => numberFrom(part, separator)).filter((one) => typeof one === 'number');
}

export const hexFrom = (channels: readonly number[]): string | undefined =>
  channels.every((one) => Number.isInteger(one) && one >= 0 && one <= 255)
    ? `#${channels.map((one) => one.toString(16).padStart(2, '0')).join('')}`
    : undefined;
