/**
 * Alternatives side by side: named rows, one column each. Where the screen is too narrow for all
 * columns they are told in several tables under one another, so a line never runs over its edge.
 * Widths are counted in terminal columns, wide and combining characters included.
 */
import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';
import { type Screen, styled } from './screen.ts';

export interface Cell {
  readonly text: string;
  /** Drawn before the first line; following lines are set in by its width. */
  readonly mark?: string;
}
export interface Row {
  readonly title: string;
  readonly cells: readonly Cell[];
  readonly isHeading?: boolean;
  /** Set in, as one of several under the row before. */
  readonly isDetail?: boolean;
}

const leastColumn = 16;
const mostColumn = 34;
const gap = 2;

/** The table as lines; rows without any text are ruled lines. */
export function tableOf(screen: Screen, rows: readonly Row[]): string[] {
  const count = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const longestTitle = Math.max(...rows.map(({ title }) => stringWidth(title)));
  const titleWidth = Math.min(longestTitle, Math.floor(screen.width * 0.32));
  const room = screen.width - titleWidth;
  const across = Math.max(1, Math.min(count, Math.floor(room / (leastColumn + gap))));
  const columnWidth = Math.max(
    Math.min(leastColumn, room - gap),
    Math.min(mostColumn, Math.floor(room / across) - gap),
  );
  const blocks: string[][] = [];
  for (let first = 0; first < count; first += across) {
    const total = titleWidth + Math.min(across, count - first) * (columnWidth + gap);
    blocks.push(
      rows.flatMap((row) => {
        const cells = row.cells.slice(first, first + across);
        return linesOf(screen, { ...row, cells }, titleWidth, columnWidth, total);
      }),
    );
  }
  return blocks.flatMap((lines, at) => (at === 0 ? lines : ['', ...lines]));
}

function linesOf(
  screen: Screen,
  { title, cells, isHeading, isDetail }: Row,
  titleWidth: number,
  columnWidth: number,
  total: number,
): string[] {
  if (cells.length === 0 || (title === '' && cells.every(({ text }) => text === ''))) {
    return [styled(screen, 'dim', '─'.repeat(total))];
  }
  const columns = [
    wrapped(title, titleWidth),
    ...cells.map(({ text, mark = '' }) => {
      const indent = stringWidth(mark);
      return wrapped(text, columnWidth - indent).map(
        (line, at) => (at === 0 ? mark : ' '.repeat(indent)) + line,
      );
    }),
  ];
  const height = Math.max(...columns.map((lines) => lines.length));
  return Array.from({ length: height }, (_, at) =>
    columns
      .map((lines, column) => {
        const width = column === 0 ? titleWidth : columnWidth;
        const text = lines[at] ?? '';
        const isDim = column === 0 && isDetail === true;
        const style = isHeading === true ? 'bold' : isDim ? 'dim' : undefined;
        const shown = style === undefined ? text : styled(screen, style, text);
        return shown + ' '.repeat(Math.max(0, width - stringWidth(text)));
      })
      .join(' '.repeat(gap))
      .trimEnd(),
  );
}

const wrapped = (text: string, width: number): string[] =>
  wrapAnsi(text, Math.max(1, width), { hard: true, trim: true }).split('\n');

/** Less room than this beside a title is no room to read in. */
const leastParagraph = 28;
const narrowIndent = 4;

/**
 * A paragraph beside a title that takes the first `indent` columns; on a narrow screen below it.
 */
export function hanging(screen: Screen, title: string, indent: number, text: string): string[] {
  if (title !== '' && screen.width - indent < leastParagraph) {
    const lines = wrapped(text, screen.width - narrowIndent);
    return [title.trimEnd(), ...lines.map((line) => ' '.repeat(narrowIndent) + line)];
  }
  const lines = wrapped(text, screen.width - indent);
  const space = ' '.repeat(Math.max(0, indent - stringWidth(title)));
  return lines.map((line, at) => (at === 0 ? title + space : ' '.repeat(indent)) + line);
}
