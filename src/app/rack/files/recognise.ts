/**
 * Is a text that was pasted anywhere on the page a table of finishes, or a letter, a list, a piece of
 * code that only happens to hold commas? It is one where its first row names columns of colours, or
 * where at least half of its first rows hold a cell that can be nothing but a colour (our judgement:
 * a table that is passed over can still be pasted into the rack's own box, which takes any).
 */
import { isColourCell, namesColours } from '../../../finish/rack/table/headings.ts';
import { type Row, tableFrom } from '../../../finish/text/table.ts';

/** So much of it is looked at, rows and characters. */
const mostRows = 20;
const mostCharacters = 20_000;

/** Whether the page should speak of it. */
export function isTableOfFinishes(text: string): boolean {
  const rows = firstRows(text);
  const [first, second] = rows;
  if (first === undefined || second === undefined || first.cells.length < 2) return false;
  const coloured = rows.filter(({ cells }) => cells.some(isColourCell)).length;
  return namesColours(first.cells) || 2 * coloured >= rows.length;
}

function firstRows(text: string): readonly Row[] {
  const lines = text.slice(0, mostCharacters).split(/\r?\n|\r/);
  try {
    return tableFrom(lines.slice(0, mostRows).join('\n'), 'what was pasted').rows;
  } catch {
    // No text, or more columns than any table of finishes has.
    return [];
  }
}
