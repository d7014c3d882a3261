/** Reads a table of this folder: source lines start with #, then one header row. */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';

/** One row, by column name; every cell as it is printed. */
export type Row = Readonly<Record<string, string>>;

/** All rows of a table in this folder. Throws if the file is missing, empty or ragged. */
export function rowsOf(name: string): Row[] {
  const text = readFileSync(new URL(`./${name}.csv`, import.meta.url), 'utf8');
  const { data, errors } = Papa.parse<Row>(text, {
    header: true,
    comments: '#',
    skipEmptyLines: true,
  });
  if (errors.length > 0 || data.length === 0) {
    throw new Error(`${name}.csv: ${errors[0]?.message ?? 'no rows'}`);
  }
  return data;
}

/** The number in a cell; throws where the table has none. */
export function numberIn(row: Row, column: string): number {
  const cell = row[column];
  const value = Number(cell);
  if (cell === undefined || cell.trim() === '' || !Number.isFinite(value)) {
    throw new Error(`no number under ${column}: ${JSON.stringify(row)}`);
  }
  return value;
}

/** The numbers in several cells, in the order asked for. */
export const numbersIn = (row: Row, columns: readonly string[]): number[] =>
  columns.map((column) => numberIn(row, column));
