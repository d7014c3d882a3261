/**
 * Which rows and cells does a pasted or saved table hold? Text in, rows out with the numbers a
 * spreadsheet shows beside them; the separator is read off the first line that is not blank: a tab
 * where there is one, else whichever of semicolon and comma it holds more of.
 *
 * Quoting after [RFC4180], read by papaparse. Limits: at most 20,000 rows beneath the first and 200
 * columns; text that is empty, is a workbook or holds no text at all is refused with what to do.
 */
import Papa from 'papaparse';
import { InputError, type Problem } from '../../ground/problem.ts';
import { mostEntries, refuseOversize } from '../parse.ts';

export type Separator = '\t' | ';' | ',';

export interface Row {
  /** As a spreadsheet numbers it, from 1. */
  readonly number: number;
  readonly cells: readonly string[];
}
export interface Table {
  readonly separator: Separator;
  /** Rows with something in them, the first of them with the names of the columns, as a rule. */
  readonly rows: readonly Row[];
  /** Faults of the quoting. */
  readonly problems: readonly Problem[];
}

const mostColumns = 200;
/** Share of control and broken characters above which it is no text; in text there are next to none. */
const mostStrange = 0.05;

/** The table in a text. Throws `InputError` where there is none, or too much of one. */
export function tableFrom(text: string, source: string): Table {
  refuseOversize(text, source);
  const fault = faultOf(text);
  if (fault !== undefined) throw new InputError([fault], source);
  const plain = text.replace(/^\ufeff/, '');
  const separator = separatorOf(plain);
  const { data, errors } = Papa.parse<string[]>(plain, {
    delimiter: separator,
    // Far enough to tell that there are too many, and no further.
    preview: 2 * mostEntries,
  });
  const rows = data
    .map((cells, position) => ({ number: position + 1, cells }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (rows.length > mostEntries + 1) throw new InputError([tooManyRows], source);
  const widest = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  if (widest > mostColumns) throw new InputError([tooManyColumns(widest)], source);
  const unclosed = errors.filter(({ code }) => code === 'MissingQuotes');
  return { separator, rows, problems: unclosed.map(({ row = 0 }) => openQuote(row + 1)) };
}

function separatorOf(text: string): Separator {
  const [first = ''] = /\S[^\r\n]*/.exec(text.slice(0, 100_000)) ?? [];
  const bare = first.replace(/"[^"]*"/g, '');
  const line = /^\t/.test(text) || bare.includes('\t') ? '\t' : bare;
  if (line.includes('\t')) return '\t';
  return line.split(';').length > line.split(',').length ? ';' : ',';
}

/** What makes a text no table at all, if anything does. */
function faultOf(text: string): Problem | undefined {
  const beginning = text.slice(0, 4000);
  // The first bytes of a ZIP archive, which is what workbooks are.
  if (beginning.startsWith('PK\u0003\u0004')) return isWorkbook;
  const strange = beginning.match(/(?![\t\n\r])[\p{Cc}\ufffd]/gu) ?? [];
  if (strange.length > mostStrange * beginning.length) return notText;
  return /\S/.test(text) ? undefined : isEmpty;
}

export const isEmpty: Problem = {
  place: '',
  found: 'nothing: there is no text in it',
  expected: 'finishes, one a row, beneath the names of the columns',
  mend: 'Check that this is the file you meant, and that it was saved.',
};
const isWorkbook: Problem = {
  place: '',
  found: 'a packed file, such as a workbook',
  expected: 'a table as text',
  mend: 'Save the sheet as CSV, or copy its cells and paste them.',
};
const notText: Problem = {
  place: '',
  found: 'bytes that are no text',
  expected: 'a rack as JSON, or a table as CSV or text with tabs',
  mend: 'Check that this is the file you meant.',
};
const tooManyRows: Problem = {
  place: '',
  found: `more than ${mostEntries.toLocaleString('en-GB')} rows`,
  expected: `at most ${mostEntries.toLocaleString('en-GB')}`,
  mend: 'Split the table over several racks.',
};
const tooManyColumns = (count: number): Problem => ({
  place: '',
  found: `${count} columns`,
  expected: `at most ${mostColumns}`,
  mend: 'Check that this is the table you meant, one finish a row.',
});
const openQuote = (row: number): Problem => ({
  place: `row ${row}`,
  found: 'a quotation mark that is never closed',
  expected: 'quotation marks in pairs',
  mend: 'Close it or take it out; every row after it was read as part of this cell.',
});
