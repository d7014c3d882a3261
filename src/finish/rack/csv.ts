/**
 * How does a rack get into a spreadsheet and back? One row a finish, one column a field, nested
 * fields by their path: `clear.tint`, `undercoats.1.colour`, `bottle.leadDays`.
 *
 * CSV after [RFC4180], read by papaparse (comma, semicolon or tab, found out by itself). Good
 * rows come in; bad rows are listed by row and reason and stay out. Writing and reading gives the
 * same rack. Colours in a cell: see `text/cell.ts`. Numbers take a decimal point.
 */
import Papa from 'papaparse';
import * as v from 'valibot';
import { InputError, type Problem, shown } from '../../ground/problem.ts';
import { type Finish, finishSchema } from '../finish.ts';
import { hasHidden, problemsFrom } from '../parse.ts';
import {
  answerFromCell,
  cellFromColour,
  cellFromText,
  colourFromCell,
  numberFromCell,
  textFromCell,
} from '../text/cell.ts';
import { type Table, tableFrom } from '../text/table.ts';
import { type Rack, rackCheck, rackVersion } from './rack.ts';

export type Kind = 'text' | 'word' | 'number' | 'answer' | 'colour';
type Columns = readonly (readonly [path: string, kind: Kind])[];

const bottleColumns = (path: string): Columns => [
  [`${path}.id`, 'word'],
  [`${path}.name`, 'text'],
  [`${path}.onHand`, 'answer'],
  [`${path}.leadDays`, 'number'],
];
const undercoatColumns = (path: string): Columns => [
  [`${path}.name`, 'text'],
  [`${path}.role`, 'word'],
  [`${path}.effect`, 'word'],
  [`${path}.colour`, 'colour'],
  [`${path}.chemistry`, 'word'],
  [`${path}.coats`, 'number'],
  ...bottleColumns(`${path}.bottle`),
];
const columns: Columns = [
  ['id', 'word'],
  ['name', 'text'],
  ['effect', 'word'],
  ['colour', 'colour'],
  ['gloss60', 'number'],
  ['provenance.how', 'word'],
  ['provenance.deltaE', 'number'],
  ['provenance.note', 'text'],
  ['face', 'colour'],
  ['flop', 'colour'],
  ['flopIndex', 'number'],
  ['sampleGloss60', 'number'],
  ['coats', 'number'],
  ['chemistry', 'word'],
  ...bottleColumns('bottle'),
  ['clear.name', 'text'],
  ['clear.chemistry', 'word'],
  ['clear.coats', 'number'],
  ['clear.tint', 'colour'],
  ...bottleColumns('clear.bottle'),
  ...[1, 2, 3, 4, 5, 6].flatMap((film) => undercoatColumns(`undercoats.${film}`)),
  ['note', 'text'],
];
const kinds = new Map(columns);
/** What a column of ours holds; undefined where none is called so. */
export const kindOfColumn = (path: string): Kind | undefined => kinds.get(path);
const needed = ['id', 'name', 'effect', 'colour', 'gloss60', 'provenance.how'];

/** Whether a first row names every column that our own CSV needs. */
export const isOurHeader = (cells: readonly string[]): boolean =>
  needed.every((path) => cells.some((cell) => cell.trim() === path));

/** The rack as CSV text with CRLF line ends; only the columns that some finish fills. */
export function csvFromRack(rack: Rack): string {
  const rows = rack.finishes.map(cellsOf);
  const used = columns.filter(
    ([path]) => needed.includes(path) || rows.some((row) => row.has(path)),
  );
  const header = used.map(([path]) => path);
  const body = rows.map((row) => header.map((path) => row.get(path) ?? ''));
  return `${Papa.unparse([header, ...body], { newline: '\r\n' })}\r\n`;
}

/**
 * The good rows of a CSV text as a rack, and a problem for each thing wrong. Throws `InputError`
 * only where no row can be read: too much text, no usable header, over 20,000 rows.
 */
export function rackFromCsv(
  text: string,
  { id, name }: { id: string; name: string },
): { rack: Rack; problems: Problem[] } {
  return rackFromTable(tableFrom(text, id), { id, name });
}

/** The rack in a table whose first row names our own columns; throws and tells as `rackFromCsv`. */
export function rackFromTable(
  table: Table,
  { id, name }: { id: string; name: string },
): { rack: Rack; problems: Problem[] } {
  const [first, ...rows] = table.rows;
  const paths = (first?.cells ?? []).map((cell) => cell.trim());
  const problems = [...table.problems, ...headerFaults(paths, id)];

  const finishes: Finish[] = [];
  const faultsBeside = rackCheck();
  rows.forEach(({ cells, number }) => {
    const place = `row ${number}`;
    const read = finishFromRow(paths, cells, place);
    const faults = 'faults' in read ? read.faults : faultsBeside(read.finish, place);
    problems.push(...faults);
    if ('finish' in read && faults.length === 0) finishes.push(read.finish);
  });
  return { rack: { format: 'testspoon-rack', version: rackVersion, id, name, finishes }, problems };
}

function headerFaults(paths: readonly string[], source: string): Problem[] {
  const missing = needed.filter((path) => !paths.includes(path));
  if (missing.length > 0) {
    throw new InputError(
      [
        {
          place: 'row 1',
          found: `no column ${missing.join(', ')}`,
          expected: `columns ${needed.join(', ')} at least`,
          mend: 'Name the columns in the first row.',
        },
      ],
      source,
    );
  }
  return paths.flatMap((path, position) => {
    const isKnown = kinds.has(path);
    if (path === '' || (isKnown && paths.indexOf(path) === position)) return [];
    return [
      {
        place: `row 1, column ${position + 1}`,
        found: shown(path),
        expected: isKnown ? 'each column once' : 'a column we know',
        mend: 'Its cells were left out; correct the name of the column if they matter.',
      },
    ];
  });
}

type RowRead = { readonly finish: Finish } | { readonly faults: Problem[] };

function finishFromRow(paths: readonly string[], row: readonly string[], place: string): RowRead {
  if (row.length > paths.length && row.slice(paths.length).some((cell) => cell !== '')) {
    return { faults: [longRow(row.length, paths.length, place)] };
  }
  const hidden = row.findIndex(hasHidden);
  if (hidden >= 0) return { faults: [hiddenText(paths[hidden] ?? '', row[hidden]!, place)] };
  const value: Record<string, unknown> = {};
  paths.forEach((path, position) => {
    const kind = kinds.get(path);
    const cell = row[position] ?? '';
    if (kind === undefined || paths.indexOf(path) !== position) return;
    if (cell.trim() === '') return;
    put(value, path.split('.'), valueFromCell(cell, kind));
  });
  if (Array.isArray(value.undercoats)) value.undercoats = value.undercoats.filter(Boolean);
  const result = v.safeParse(finishSchema, value);
  return result.success
    ? { finish: result.output }
    : { faults: problemsFrom(result.issues, place) };
}

/** What one cell of a column of ours says, still unchecked. */
export function valueFromCell(cell: string, kind: Kind): unknown {
  switch (kind) {
    case 'text':
      return textFromCell(cell);
    case 'word':
      return cell.trim();
    case 'number':
      return numberFromCell(cell);
    case 'answer':
      return answerFromCell(cell);
    case 'colour':
      return colourFromCell(cell);
  }
}

/** Puts a value at its path; `undercoats.1` is the first entry of a list. */
export function put(into: Record<string, unknown>, path: readonly string[], value: unknown): void {
  const [step = '', next, ...rest] = path;
  if (next === undefined) {
    into[step] = value;
  } else if (/^\d$/.test(next)) {
    into[step] ??= [];
    const list = into[step] as Record<string, unknown>[];
    list[Number(next) - 1] ??= {};
    put(list[Number(next) - 1]!, rest, value);
  } else {
    into[step] ??= {};
    put(into[step] as Record<string, unknown>, [next, ...rest], value);
  }
}

/** Every filled cell of one finish by its column. */
function cellsOf(finish: Finish): Map<string, string> {
  const cells = new Map<string, string>();
  for (const [path, kind] of columns) {
    const value = path
      .split('.')
      .reduce<unknown>(
        (inner, step) =>
          (inner as Record<string, unknown> | undefined)?.[
            /^\d$/.test(step) ? Number(step) - 1 : step
          ],
        finish,
      );
    if (value !== undefined) cells.set(path, cellFrom(value, kind));
  }
  return cells;
}

function cellFrom(value: unknown, kind: Kind): string {
  if (kind === 'colour') return cellFromColour(value as Finish['colour']);
  if (kind === 'answer') return value === true ? 'yes' : 'no';
  return kind === 'text' ? cellFromText(String(value)) : String(value);
}

export const longRow = (cells: number, expected: number, place: string): Problem => ({
  place,
  found: `${cells} cells`,
  expected: `${expected}, as many as the first row`,
  mend: 'Put text that holds the separator in quotation marks; numbers take a decimal point.',
});
export const hiddenText = (path: string, cell: string, place: string): Problem => ({
  place: `${place} › ${path}`,
  found: shown(cell),
  expected: 'text without control or direction-changing characters',
  mend: 'Type the text afresh.',
});
