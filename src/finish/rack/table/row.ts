/**
 * What does one row of a builder's own table say of a finish? Cells by the meanings of their
 * columns in, a finish as it would stand in a file out, still unchecked, with what had to be taken
 * for granted; or the faults of the row, in the builder's headings.
 *
 * A cell that is not needed and says nothing in words of ours (effect, sheen, chemistry, stock, days,
 * how the colour was obtained) counts as empty, and is told. Where the row says nothing: solid paint; the gloss of semi-gloss, and for cloth, rubber, leather
 * and metal that of what they usually are; a guessed colour. Our judgement. Lab is under D65 unless
 * a column says D50. Where a row gives Lab and another colour, Lab counts.
 */
import { type Problem, shown } from '../../../ground/problem.ts';
import type { Effect } from '../../finish.ts';
import type { Row, Separator } from '../../text/table.ts';
import {
  answerIn,
  type ClassWord,
  chemistryIn,
  classGloss,
  daysIn,
  effectIn,
  howIn,
  sheenIn,
} from '../../text/words.ts';
import { kindOfColumn, put, valueFromCell } from '../csv.ts';
import { colourFrom, hexFrom, numberFrom } from './cells.ts';
import type { Column } from './headings.ts';

/** What was not said, and what was taken instead. */
export type Taken =
  | { readonly kind: 'gloss'; readonly as: ClassWord }
  | { readonly kind: 'effect' | 'how' | 'light' | 'lab-counts' | 'chemistry' | 'stock' | 'days' }
  /** Gloss was said by a word. */
  | { readonly kind: 'gloss-word'; readonly as: ClassWord }
  /** A cell that nobody needs could not be read, and counts as empty. */
  | { readonly kind: 'unread'; readonly heading: string; readonly cell: string };

/** A finish as it would stand in a file, still unchecked. */
export type Written = Record<string, unknown>;
export type RowValue =
  | { readonly faults: Problem[] }
  | { readonly value: Written; readonly taken: readonly Taken[] };

/** Sheen that is usual for what is not sprayed; all else is taken as semi-gloss. */
const usualSheen: Readonly<Partial<Record<Effect, ClassWord>>> = {
  ribbon: 'dead matt',
  flock: 'dead matt',
  rubber: 'matt',
  leather: 'eggshell',
  foil: 'gloss',
  'bare-metal': 'gloss',
  lens: 'gloss',
};

/** A finish from one row. */
export function valueFromRow(
  columns: readonly Column[],
  row: Row,
  separator: Separator,
  place: string,
): RowValue {
  const value: Written = {};
  const faults: Problem[] = [];
  const taken: Taken[] = [];
  const rgb: (number | string)[] = [];
  const lab: (number | string)[] = [];
  let light: string | undefined;
  let sheen: ClassWord | undefined;
  const numberIn = (cell: string): number | string => numberFrom(cell, separator);
  const fault = (heading: string, cell: string, expected: string): void => {
    faults.push({
      place: `${place} › ${heading}`,
      found: shown(cell),
      expected,
      mend: 'Correct it.',
    });
  };
  const passOver = (heading: string, cell: string): void => {
    taken.push({ kind: 'unread', heading, cell });
  };

  for (const { heading, meaning, position } of columns) {
    const cell = (row.cells[position] ?? '').trim();
    if (cell === '') continue;
    switch (meaning.kind) {
      case 'rgb':
        rgb[meaning.channel] = numberIn(cell);
        break;
      case 'lab':
        lab[meaning.axis] = numberIn(cell);
        break;
      case 'light':
        light = /\bd ?(50|65)\b/i.exec(cell)?.[1];
        if (light === undefined) fault(heading, cell, 'D65 or D50');
        else light = `D${light}`;
        break;
      case 'words': {
        const effect = effectIn(cell);
        const said = sheenIn(cell);
        const chemistry = chemistryIn(cell);
        value.effect ??= effect;
        value.chemistry ??= chemistry;
        sheen ??= said;
        if ((effect ?? said ?? chemistry) === undefined) passOver(heading, cell);
        break;
      }
      case 'field': {
        const read = fieldFrom(meaning.path, heading, cell, separator);
        if (read.kind === 'sheen') sheen = read.as;
        else if (read.kind === 'fault') fault(heading, cell, read.expected);
        else if (read.kind === 'unread') passOver(heading, cell);
        else put(value, meaning.path.split('.'), read.value);
      }
    }
  }
  if (Array.isArray(value.undercoats)) value.undercoats = value.undercoats.filter(Boolean);
  if (lab.length > 0) {
    if (value.colour !== undefined || rgb.length > 0) taken.push({ kind: 'lab-counts' });
    value.colour = labFrom(lab, light, taken, faults, place);
  } else if (rgb.length > 0 && value.colour === undefined) {
    value.colour = srgbFrom(rgb, faults, place);
  }
  if (faults.length > 0) return { faults };
  return { value: completed(value, sheen, taken), taken };
}

type FieldRead =
  | { readonly kind: 'value'; readonly value: unknown }
  | { readonly kind: 'sheen'; readonly as: ClassWord }
  | { readonly kind: 'unread' }
  | { readonly kind: 'fault'; readonly expected: string };

/** One cell of a column that holds a field of ours, in the builder's words or in ours. */
function fieldFrom(path: string, heading: string, cell: string, separator: Separator): FieldRead {
  const said = (value: unknown): FieldRead =>
    value === undefined ? { kind: 'unread' } : { kind: 'value', value };
  if (path === 'effect') return said(effectIn(cell));
  if (path === 'gloss60') {
    const as = sheenIn(cell);
    if (as !== undefined) return { kind: 'sheen', as };
    // Figures are meant to be read; a word that is no class of ours is not.
    return /\d/.test(cell) ? said(numberFrom(cell, separator)) : { kind: 'unread' };
  }
  if (path === 'provenance.how') return said(howIn(cell));
  if (path.endsWith('chemistry')) return said(chemistryIn(cell));
  if (path.endsWith('onHand')) return said(answerIn(cell));
  if (path.endsWith('leadDays')) return said(daysIn(cell));
  const kind = kindOfColumn(path) ?? 'text';
  if (kind === 'number') return { kind: 'value', value: numberFrom(cell, separator) };
  if (kind === 'colour') {
    const colour = colourFrom(heading, cell, separator);
    return typeof colour === 'string'
      ? { kind: 'fault', expected: 'a colour like #1a2b3c, or lab 54 -2 -5' }
      : { kind: 'value', value: colour };
  }
  return { kind: 'value', value: valueFromCell(cell, kind) };
}

function srgbFrom(channels: (number | string)[], faults: Problem[], place: string): unknown {
  const all = [0, 1, 2].map((at) => channels[at] ?? '');
  const hex = all.every((one) => typeof one === 'number') ? hexFrom(all) : undefined;
  if (hex !== undefined) return { srgb: hex };
  faults.push({
    place: `${place} › red, green, blue`,
    found: all.map((one) => (one === '' ? 'nothing' : shown(one))).join(', '),
    expected: 'three whole numbers from 0 to 255',
    mend: 'Correct them.',
  });
  return undefined;
}

function labFrom(
  axes: (number | string)[],
  light: string | undefined,
  taken: Taken[],
  faults: Problem[],
  place: string,
): unknown {
  const all = [0, 1, 2].map((at) => axes[at] ?? '');
  if (light === undefined) taken.push({ kind: 'light' });
  const [lightness, a, b] = all;
  const isLab =
    all.every((one) => typeof one === 'number') &&
    Number(lightness) >= 0 &&
    Number(lightness) <= 100 &&
    Math.max(Math.abs(Number(a)), Math.abs(Number(b))) <= 160;
  if (isLab) return { lab: all, light: light ?? 'D65' };
  faults.push({
    place: `${place} › L, a, b`,
    found: all.map((one) => (one === '' ? 'nothing' : shown(one))).join(', '),
    expected: 'L from 0 to 100, a and b from −160 to 160',
    mend: 'Correct them.',
  });
  return undefined;
}

/** The row with what it does not say filled in, and noted in `taken`. */
function completed(value: Written, sheen: ClassWord | undefined, taken: Taken[]): Written {
  const effect = (value.effect ?? 'solid') as Effect;
  if (value.effect === undefined) taken.push({ kind: 'effect' });
  if (value.gloss60 === undefined) {
    const as = sheen ?? usualSheen[effect] ?? 'semi-gloss';
    taken.push({ kind: sheen === undefined ? 'gloss' : 'gloss-word', as });
    value.gloss60 = classGloss[as];
  }
  const provenance = (value.provenance ?? {}) as Written;
  if (provenance.how === undefined) taken.push({ kind: 'how' });
  const bottle = value.bottle as Written | undefined;
  if (bottle !== undefined && bottle.onHand === undefined) {
    taken.push({ kind: 'stock' });
    bottle.onHand = false;
  }
  if (bottle?.onHand === false && bottle.leadDays === undefined) taken.push({ kind: 'days' });
  if (value.chemistry === undefined) {
    taken.push({ kind: 'chemistry' });
    delete value.chemistry;
  }
  return { ...value, effect, provenance: { ...provenance, how: provenance.how ?? 'guess' } };
}
