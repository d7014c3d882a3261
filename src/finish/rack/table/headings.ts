/**
 * Which field of a finish does each column of a builder's own table hold? By its heading in the
 * words builders use, in British and American spelling; by what is in it where the heading leaves it
 * open (“Colour” may hold names, “Finish” may too) or where there are no headings.
 *
 * In: the rows of a table. Out: a meaning for each column, or none. The words are common practice,
 * no source.
 */
import type { Row, Table } from '../../text/table.ts';
import { chemistryIn, effectIn, howIn, sheenIn } from '../../text/words.ts';
import { kindOfColumn } from '../csv.ts';

/** What a column holds: one of our own fields by its path, or something that fields are made of. */
export type Meaning =
  | { readonly kind: 'field'; readonly path: string }
  /** Effect, sheen and paint in words, any of them. */
  | { readonly kind: 'words' }
  | { readonly kind: 'rgb'; readonly channel: 0 | 1 | 2 }
  | { readonly kind: 'lab'; readonly axis: 0 | 1 | 2 }
  /** The light that Lab values stand under. */
  | { readonly kind: 'light' };

export interface Column {
  readonly heading: string;
  readonly meaning: Meaning;
  readonly position: number;
}
export interface Headed {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** Headings of columns that nothing was made of. */
  readonly leftOut: readonly string[];
  readonly hasHeadings: boolean;
}

const field = (path: string): Meaning => ({ kind: 'field', path });
const words: Meaning = { kind: 'words' };

// Digits and marks are off before these are compared; see `plainHeading`.
const spellings: readonly (readonly [meaning: Meaning, headings: string])[] = [
  [field('id'), 'id'],
  [field('name'), 'name|finish name|colou?r name|paint|paint name|title|label'],
  [field('colour'), 'colou?r|shade|hex|hex code|hex colou?r|colou?r code|html|s?rgb hex|s?rgb'],
  [field('colour'), 'lab|cielab|l ?a ?b|cie ?l ?a ?b|spectrum|reflectance'],
  [words, 'finish|type|effect|kind|sort|category|paint type|surface|sheen'],
  [field('gloss60'), 'gloss|gloss gu|gu|gloss units?|gloss level|gloss at|sheen gu'],
  [field('provenance.how'), 'how|how obtained|provenance|measured|colou?r source|source|origin'],
  [field('provenance.deltaE'), 'delta ?e|δe|de|uncertainty|±|error'],
  [field('bottle.onHand'), 'on hand|have|have it|got|got it|owned?|in stock|stock|qty|quantity'],
  [field('bottle.leadDays'), 'days|lead days|lead time|days to come|delivery|delivery days'],
  [field('bottle.name'), 'bottle|bottle name|can|pot|jar'],
  [field('chemistry'), 'chemistry|base|paint base|medium|binder'],
  [field('coats'), 'coats|number of coats'],
  [field('face'), 'face'],
  [field('flop'), 'flop'],
  [field('flopIndex'), 'flop index'],
  [field('sampleGloss60'), 'sample gloss|gloss of sample'],
  [field('note'), 'notes?|remarks?|comments?|memo'],
  [{ kind: 'light' }, 'light|white|illuminant|white ?point'],
  [{ kind: 'rgb', channel: 0 }, 'r|red'],
  [{ kind: 'rgb', channel: 1 }, 'g|green'],
  [{ kind: 'rgb', channel: 2 }, 'b|blue'],
  [{ kind: 'lab', axis: 0 }, 'l|l star|lightness|lab l|cie l'],
  [{ kind: 'lab', axis: 1 }, 'a|a star|lab a|cie a'],
  [{ kind: 'lab', axis: 2 }, 'b|b star|lab b|cie b'],
];
const known = spellings.map(
  ([meaning, headings]) => [new RegExp(`^(?:${headings})$`, 'u'), meaning] as const,
);

/** A heading without case, marks and what stands in brackets: `Gloss (GU @ 60°)` is `gloss`. */
const plainHeading = (heading: string): string =>
  heading
    .slice(0, 200)
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[([].*?[)\]]/g, ' ')
    .replace(/[^\p{L}\p{N}±]+/gu, ' ')
    .trim();

/** The columns of a table by their meanings, and the rows beneath the headings. */
export function headed({ rows }: Table): Headed {
  const [first, ...beneath] = rows;
  if (first === undefined) return { columns: [], rows: [], leftOut: [], hasHeadings: false };
  if (first.cells.some(isColourCell)) return guessed(rows);
  const plain = first.cells.map(plainHeading);
  // A lone “b” is blue beside red and green, and an axis beside L and a.
  const isRgb = plain.includes('g') || plain.includes('green');
  const columns: Column[] = [];
  const unused: Omit<Column, 'meaning'>[] = [];
  first.cells.forEach((cell, position) => {
    const cells = filledAt(beneath, position);
    const heading = cell.trim();
    const meaning = meaningOf(heading, plain[position] ?? '', isRgb, cells);
    if (meaning !== undefined && !isRepeated(columns, meaning)) {
      columns.push({ heading, meaning, position });
    } else if (heading !== '' || cells.length > 0) {
      unused.push({ heading: heading === '' ? `column ${position + 1}` : heading, position });
    }
  });
  // “Colour” or “Finish” may be what the builder calls the name.
  const spare = unused.find(({ position }) => /^(colou?r|shade|finish)$/.test(plain[position]!));
  if (spare !== undefined && !isRepeated(columns, field('name'))) {
    columns.push({ ...spare, meaning: field('name') });
    unused.splice(unused.indexOf(spare), 1);
  }
  const leftOut = unused.map(({ heading }) => heading);
  return { columns, rows: beneath, leftOut, hasHeadings: true };
}

/** Whether a first row has names for columns of colours, whatever stands beneath them. */
export function namesColours(cells: readonly string[]): boolean {
  const named = cells
    .map(plainHeading)
    .flatMap((plain) => known.filter(([one]) => one.test(plain)));
  const meanings = new Set(named.map(([, meaning]) => meaning));
  const has = (is: (meaning: Meaning) => boolean): boolean =>
    known.filter(([, meaning]) => is(meaning)).every(([, meaning]) => meanings.has(meaning));
  return (
    [...meanings].some((meaning) => meaning.kind === 'field' && meaning.path === 'colour') ||
    has(({ kind }) => kind === 'rgb') ||
    has(({ kind }) => kind === 'lab')
  );
}

const filledAt = (rows: readonly Row[], position: number): string[] =>
  rows.map(({ cells }) => cells[position]?.trim() ?? '').filter(Boolean);

/** Whether a column has this meaning already; several may hold words, such as Type and Sheen. */
const isRepeated = (columns: readonly Column[], meaning: Meaning): boolean =>
  meaning.kind !== 'words' &&
  columns.some((column) => JSON.stringify(column.meaning) === JSON.stringify(meaning));

function meaningOf(
  heading: string,
  plain: string,
  isRgb: boolean,
  cells: readonly string[],
): Meaning | undefined {
  if (kindOfColumn(heading) !== undefined && heading !== 'colour') return field(heading);
  const fitting = known.filter(([spelling]) => spelling.test(plain)).map(([, meaning]) => meaning);
  const meaning = fitting.length > 1 ? fitting[isRgb ? 0 : 1] : fitting[0];
  if (meaning?.kind === 'words' && !cells.some(isWordCell)) {
    return plain === 'sheen' && cells.some(hasDigit) ? field('gloss60') : undefined;
  }
  const fits = meaning?.kind === 'field' ? contents.get(meaning.path) : undefined;
  return fits === undefined || cells.length === 0 || cells.some(fits) ? meaning : undefined;
}

/** Columns by what is in them, where the first row is a finish already. */
function guessed(rows: readonly Row[]): Headed {
  const width = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const positions = Array.from({ length: width }, (_, position) => position);
  const mostly = (is: (cell: string) => boolean) => (position: number) => {
    const cells = filledAt(rows, position);
    return 2 * cells.filter(is).length > cells.length;
  };
  const colour = positions.find(mostly(isColourCell));
  const texts = positions.filter((one) => one !== colour && mostly(hasLetter)(one));
  const wordy = texts.filter(mostly(isWordCell));
  // Names may hold words of finishes too, “Gloss black”, where no other column can be the name.
  const name = texts.find((one) => !wordy.includes(one)) ?? texts[0];
  const meanings = positions.map((one): Meaning | undefined => {
    if (one === colour) return field('colour');
    if (one === name) return field('name');
    return wordy.includes(one) ? words : undefined;
  });
  const headings = positions.map((position) => `column ${position + 1}`);
  return {
    columns: positions.flatMap((position) => {
      const meaning = meanings[position];
      return meaning === undefined ? [] : [{ heading: headings[position]!, meaning, position }];
    }),
    rows,
    leftOut: headings.filter(
      (_, position) => meanings[position] === undefined && filledAt(rows, position).length > 0,
    ),
    hasHeadings: false,
  };
}

const hasDigit = (cell: string): boolean => /\d/.test(cell);
const hasLetter = (cell: string): boolean => /\p{L}/u.test(cell);
/** A cell that can be nothing but a colour. */
export const isColourCell = (cell: string): boolean =>
  /^\s*(#[0-9a-f]{3}([0-9a-f]{3})?|(lab|lab-d50|spectrum|rgb)[\s(].*\d.*)\s*$/i.test(cell);
/** A cell that may be a colour, in a column that is called one. */
const maybeColour = (cell: string): boolean =>
  isColourCell(cell) || /^[0-9a-f]{6}$|^[\d\s.,;+\-\u2212]+$/i.test(cell);
const isWordCell = (cell: string): boolean =>
  cell.length <= 60 && (effectIn(cell) ?? sheenIn(cell) ?? chemistryIn(cell)) !== undefined;

/** What at least one cell of a column must hold, so that its heading is believed. */
const contents: ReadonlyMap<string, (cell: string) => boolean> = new Map([
  ['colour', maybeColour],
  ['chemistry', (cell: string) => chemistryIn(cell) !== undefined],
  ['provenance.how', (cell: string) => howIn(cell) !== undefined],
]);
