/**
 * A measurement was copied from an instrument's program or a spreadsheet: what spectrum is it, and
 * if it is none, in which line does it go wrong?
 *
 * In: text in two columns (nm, reflectance), in two rows, or values alone with the wavelength of
 * the first and the step; blanks, tabs, commas or semicolons between, decimal points or commas.
 * Reflectance 0–1, or percent where the largest value passes 1.5. Out: nm ascending with
 * reflectance 0–1.5, and what was made of the text; or every fault with its line. A table must
 * cover 400–700 nm in steps of 50 nm or less, as everywhere (`colour/resample`).
 */
import { type Problem, shown } from '../../ground/problem.ts';

export interface Spectrum {
  readonly nm: number[];
  readonly reflectance: number[];
}

export type SpectrumRead =
  | { readonly spectrum: Spectrum; readonly remarks: readonly string[] }
  | { readonly problems: readonly Problem[] };

/** Where values come without wavelengths: that of the first, and the step, nm. */
export interface Grid {
  readonly firstNm: number;
  readonly stepNm: number;
}

const mostPercent = 150;
const mostFactor = 1.5;
const [lowestNm, highestNm] = [300, 900];
const [mustStartNm, mustReachNm, widestGapNm] = [400, 700, 50];
const [fewest, most] = [8, 601];
const mostProblems = 12;

interface Line {
  /** From 1. */
  readonly number: number;
  readonly cells: readonly string[];
}

interface Entry {
  readonly line: number;
  readonly nm: number;
  readonly value: number;
}

const numeral = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const isNumeral = (cell: string): boolean => numeral.test(cell);

/** The spectrum in a pasted text. */
export function spectrumFromText(text: string, grid: Grid): SpectrumRead {
  const lines = linesOf(text);
  const remarks: string[] = [];
  const [head] = lines;
  const hasHead = head !== undefined && lines.length > 1 && !head.cells.some(isNumeral);
  if (hasHead) remarks.push('The first line holds words and was left out.');
  const body = hasHead ? lines.slice(1) : lines;
  const problems: Problem[] = [];
  const entries = entriesOf(body, grid, problems, remarks);
  if (problems.length > 0) return { problems };
  const ordered = inOrder(entries, remarks);
  const isPercent = ordered.some(({ value }) => value > mostFactor);
  if (isPercent) remarks.push('Values above 1.5 were taken for percent.');
  checkEntries(ordered, isPercent, problems);
  if (problems.length > 0) return { problems: problems.slice(0, mostProblems) };
  return {
    spectrum: {
      nm: ordered.map(({ nm }) => nm),
      reflectance: ordered.map(({ value }) => (isPercent ? value / 100 : value)),
    },
    remarks,
  };
}

/** Lines that hold something, cut into cells. */
function linesOf(text: string): Line[] {
  return text
    .split(/\r\n|\r|\n/)
    .map((line, at) => ({ number: at + 1, cells: cellsOf(line) }))
    .filter(({ cells }) => cells.length > 0);
}

/** Cells of a line; a comma parts cells where nothing else does, else it is a decimal comma. */
function cellsOf(line: string): string[] {
  const plain = line
    .replace(/\u2212/g, '-')
    .replace(/%/g, ' ')
    .trim();
  const parted = /[\t;]/.test(plain)
    ? plain.split(/\s*[\t;]\s*/)
    : /\s/.test(plain) && !/,\s/.test(plain)
      ? plain.split(/\s+/)
      : plain.split(/\s*,\s*/);
  return parted
    .map((cell) => (/^[+-]?\d*,\d+$/.test(cell) ? cell.replace(',', '.') : cell.trim()))
    .filter((cell) => cell !== '');
}

function entriesOf(
  lines: readonly Line[],
  grid: Grid,
  problems: Problem[],
  remarks: string[],
): Entry[] {
  const [first, second] = lines;
  if (first === undefined) {
    problems.push(
      problem('', 'nothing', 'a table of wavelengths and reflectances', 'Paste it here.'),
    );
    return [];
  }
  const width = first.cells.length;
  if (lines.length === 2 && second !== undefined && width > 2 && second.cells.length === width) {
    return numbersOf([first], problems).flatMap(({ value: nm }, at) => {
      const [cell] = [second.cells[at] ?? ''];
      const [read] = numbersOf([{ number: second.number, cells: [cell] }], problems);
      return read === undefined ? [] : [{ line: second.number, nm, value: read.value }];
    });
  }
  const isPairs = lines.some(({ cells }) => cells.length === 2) && width <= 2;
  if (!isPairs) {
    const values = numbersOf(lines, problems);
    const last = grid.firstNm + (values.length - 1) * grid.stepNm;
    remarks.push(
      `${values.length} values without wavelengths: taken as ${grid.firstNm} to ${last} nm in steps of ${grid.stepNm} nm.`,
    );
    return values.map(({ line, value }, at) => ({
      line,
      nm: grid.firstNm + at * grid.stepNm,
      value,
    }));
  }
  return lines.flatMap((line) => {
    if (line.cells.length !== 2) {
      problems.push(
        problem(
          `line ${line.number}`,
          line.cells.length === 1 ? 'one number' : `${line.cells.length} columns`,
          'two columns: nm and reflectance',
          'Copy only the column of wavelengths and one column of reflectances.',
        ),
      );
      return [];
    }
    const [nm, value] = numbersOf([line], problems);
    return nm === undefined || value === undefined
      ? []
      : [{ line: line.number, nm: nm.value, value: value.value }];
  });
}

function numbersOf(
  lines: readonly Line[],
  problems: Problem[],
): { readonly line: number; readonly value: number }[] {
  return lines.flatMap(({ number: line, cells }) =>
    cells.flatMap((cell) => {
      if (isNumeral(cell)) return [{ line, value: Number(cell) }];
      if (problems.length < mostProblems) {
        problems.push(
          problem(`line ${line}`, shown(cell), 'a number', 'Write it like 0.42, or take it out.'),
        );
      }
      return [];
    }),
  );
}

/** Ascending, where the whole table runs down. */
function inOrder(entries: readonly Entry[], remarks: string[]): readonly Entry[] {
  const isFalling =
    entries.length > 1 && entries.every(({ nm }, at) => at === 0 || nm < entries[at - 1]!.nm);
  if (!isFalling) return entries;
  remarks.push('The table ran from long to short waves and was turned round.');
  return entries.toReversed();
}

function checkEntries(entries: readonly Entry[], isPercent: boolean, problems: Problem[]): void {
  const highest = isPercent ? mostPercent : mostFactor;
  entries.forEach(({ line, nm, value }, at) => {
    const place = `line ${line}`;
    const before = entries[at - 1];
    if (nm < lowestNm || nm > highestNm) {
      const wanted = `a wavelength from ${lowestNm} to ${highestNm} nm`;
      problems.push(problem(place, `${nm} nm`, wanted, 'Wavelengths come first, in nm.'));
    } else if (before !== undefined && nm <= before.nm) {
      const found = `${nm} nm after ${before.nm} nm`;
      const mend = 'Sort the table by wavelength and keep each wavelength once.';
      problems.push(problem(place, found, 'wavelengths that rise', mend));
    } else if (before !== undefined && nm - before.nm > widestGapNm) {
      const found = `a gap from ${before.nm} to ${nm} nm`;
      const mend = 'Export the measurement in finer steps; 10 nm is usual.';
      problems.push(problem(place, found, `steps of ${widestGapNm} nm or less`, mend));
    }
    if (value < 0 || value > highest) {
      const wanted = isPercent ? `0 to ${mostPercent} percent` : 'a reflectance from 0 to 1.5';
      problems.push(problem(place, String(value), wanted, 'Correct this value.'));
    }
  });
  if (problems.length > 0) return;
  const [start, end] = [entries[0], entries.at(-1)];
  if (entries.length < fewest || entries.length > most) {
    const wanted = `${fewest} to ${most}`;
    problems.push(problem('', `${entries.length} values`, wanted, 'Paste the whole table.'));
  } else if (start!.nm > mustStartNm || end!.nm < mustReachNm) {
    problems.push(
      problem(
        '',
        `${start!.nm} to ${end!.nm} nm`,
        `a table that covers at least ${mustStartNm}–${mustReachNm} nm`,
        'Paste the whole visible range, or tell the colour by Lab.',
      ),
    );
  }
}

const problem = (place: string, found: string, expected: string, mend: string): Problem => ({
  place,
  found,
  expected,
  mend,
});
