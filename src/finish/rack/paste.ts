/**
 * What finishes does a builder's own spreadsheet hold? A table whose columns are called what its
 * owner calls them (Name, Colour, Hex, L, a, b, Gloss, Finish, Have, Days, Notes …), pasted or saved
 * as CSV or text with tabs. Our own CSV is read as `csv.ts` reads it.
 *
 * Out: the good rows as a rack; each bad row by its number, its paint's name and the reason; and, in
 * sentences, all that was taken for granted. Ids are made from names. Decimal commas pass wherever
 * the separator is no comma. Throws `InputError` only where no row can be read. Text is never
 * changed, save that blanks around a cell come off; formulas, hidden characters, figures out of
 * range and rows without a name or a colour stay out, while an unknown word counts as empty.
 */
import * as v from 'valibot';
import { idFrom, idGiver } from '../../ground/id.ts';
import { InputError, type Problem, shown } from '../../ground/problem.ts';
import { type Finish, finishSchema } from '../finish.ts';
import { hasHidden, problemsFrom } from '../parse.ts';
import { type Row, type Table, tableFrom } from '../text/table.ts';
import { hiddenText, isOurHeader, longRow, rackFromTable } from './csv.ts';
import { type Rack, rackCheck, rackVersion } from './rack.ts';
import { Granted } from './table/granted.ts';
import { type Column, type Headed, headed, type Meaning } from './table/headings.ts';
import { type RowValue, valueFromRow, type Written } from './table/row.ts';

export interface RackReading {
  readonly rack: Rack;
  /** What is wrong with the rows that were left out. */
  readonly problems: readonly Problem[];
  /** What was taken for granted, in sentences. */
  readonly granted: readonly string[];
}

/** The rack in a table of any headings; `id` and `name` become the rack's. */
export function rackFromText(
  text: string,
  { id, name }: { readonly id: string; readonly name: string },
): RackReading {
  const table = tableFrom(text, name);
  if (isOurHeader(table.rows[0]?.cells ?? [])) {
    return { ...rackFromTable(table, { id, name }), granted: [] };
  }
  const head = headed(table);
  refuseUseless(table, head, name);
  const granted = new Granted(head);
  const problems: Problem[] = [...table.problems];
  const finishes: Finish[] = [];
  const idColumn = head.columns.find(({ meaning }) => holds(meaning, 'id'));
  const idOf = idGiver(head.rows.map(({ cells }) => cells[idColumn?.position ?? -1]?.trim() ?? ''));
  const nameColumn = head.columns.find(({ meaning }) => holds(meaning, 'name'));
  const faultsBeside = rackCheck();
  for (const row of head.rows) {
    const place = `row ${row.number}`;
    const name = row.cells[nameColumn?.position ?? -1]?.trim() ?? '';
    const tell = (faults: readonly Problem[]): void => {
      problems.push(
        ...faults.map((fault) => named(inTheirWords(fault, head.columns), place, name)),
      );
    };
    const read = valueFrom(head.columns, row, table, place);
    if ('faults' in read) {
      tell(read.faults);
      continue;
    }
    const result = v.safeParse(finishSchema, withIds(read.value));
    if (!result.success) {
      tell(problemsFrom(result.issues, place));
      continue;
    }
    const isNamed = read.value.id !== undefined;
    const finish = isNamed ? result.output : withId(result.output, idOf(result.output.name));
    const faults = faultsBeside(finish, place);
    tell(faults);
    if (faults.length > 0) continue;
    finishes.push(finish);
    granted.note(finish, read.taken, row.number);
  }
  return {
    rack: { format: 'testspoon-rack', version: rackVersion, id, name, finishes },
    problems,
    granted: granted.sentences(),
  };
}

function valueFrom(columns: readonly Column[], row: Row, table: Table, place: string): RowValue {
  const width = table.rows[0]?.cells.length ?? 0;
  if (row.cells.slice(width).some((cell) => cell.trim() !== '')) {
    return { faults: [longRow(row.cells.length, width, place)] };
  }
  const faults = columns.flatMap(({ heading, position }) => {
    const cell = row.cells[position] ?? '';
    if (hasHidden(cell)) return [hiddenText(heading, cell, place)];
    return isFormula(cell) ? [formula(heading, cell, place)] : [];
  });
  return faults.length > 0 ? { faults } : valueFromRow(columns, row, table.separator, place);
}

/** A formula instead of its value, or what a spreadsheet shows where one failed. */
const isFormula = (cell: string): boolean =>
  /^\s*(=|@\w|#(N\/A|REF!|VALUE!|NAME\?|DIV\/0!|NUM!|NULL!))/.test(cell);
const formula = (heading: string, cell: string, place: string): Problem => ({
  place: `${place} › ${heading}`,
  found: shown(cell),
  expected: 'a value',
  mend: 'Copy what the cell shows, not the formula behind it.',
});

/** The row with ids made from its names, so that it can be checked. */
function withIds(value: Written): Written {
  const { name, bottle } = value;
  const id = value.id ?? idFrom(String(name), 'finish');
  if (bottle === undefined) return { ...value, id };
  const told = bottle as Written;
  // A bottle with a name of its own may be shared; one without is the finish's.
  const own =
    told.name === undefined
      ? { id, name: name ?? id }
      : { id: idFrom(String(told.name), 'bottle') };
  return { ...value, id, bottle: { ...own, ...told } };
}

/** The finish, and the bottle that is only its own, under this id. */
function withId(finish: Finish, id: string): Finish {
  const { bottle } = finish;
  const isOwn = bottle?.id === finish.id && bottle.name === finish.name;
  return { ...finish, id, ...(isOwn && { bottle: { ...bottle, id } }) };
}

const holds = (meaning: Meaning, ...paths: string[]): boolean =>
  meaning.kind === 'field' && paths.includes(meaning.path);

/** A fault at `row 4 › gloss60` stands at `row 4 › Gloss` where the builder calls it so. */
function inTheirWords(fault: Problem, columns: readonly Column[]): Problem {
  const [row = '', ...steps] = fault.place.split(' › ');
  const path = steps.join('.');
  const column = columns.find(
    ({ meaning }) =>
      meaning.kind === 'field' && (path === meaning.path || path.startsWith(`${meaning.path}.`)),
  );
  return column === undefined ? fault : { ...fault, place: `${row} › ${column.heading}` };
}

/** A fault at `row 4 › Gloss` stands at `row 4, “Sky” › Gloss`, unless the name is what is wrong. */
function named(fault: Problem, row: string, name: string): Problem {
  if (name === '' || fault.found === shown(name)) return fault;
  return { ...fault, place: `${row}, ${shown(name)}${fault.place.slice(row.length)}` };
}

/** Throws where nothing can be made of the table as a whole. */
function refuseUseless(table: Table, head: Headed, source: string): void {
  const { columns, rows } = head;
  const refuse = (problem: Problem): never => {
    throw new InputError([problem], source);
  };
  const has = (path: string): boolean => columns.some(({ meaning }) => holds(meaning, path));
  const hasColour =
    has('colour') ||
    columns.some(({ meaning }) => meaning.kind === 'rgb' || meaning.kind === 'lab');
  const missing = [has('name') ? [] : ['names'], hasColour ? [] : ['colours']].flat();
  if (missing.length > 0) {
    const cells = table.rows[0]?.cells.filter((cell) => cell.trim() !== '') ?? [];
    refuse({
      place: `row ${table.rows[0]?.number ?? 1}`,
      found: cells.length === 0 ? 'nothing' : cells.slice(0, 8).map(shown).join(', '),
      expected: `the names of the columns, one with the ${missing.join(' and one with the ')} of the finishes`,
      mend: 'Call them Name and Hex, or Name, L, a and b.',
    });
  }
  if (rows.length === 0) {
    refuse({
      place: '',
      found: 'the names of the columns and nothing beneath them',
      expected: 'finishes, one a row',
      mend: 'Check that this is the file you meant, and that it was saved.',
    });
  }
}
