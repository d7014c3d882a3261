/**
 * A comparison as a page of text: what is open and what each alternative would wear, the scores
 * side by side, then the reasons of each alternative, worst first, and how close the race is.
 */
import { assignmentOf, type Build, finishesByRef, isOpen } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { appearanceOf } from '../../finish/appearance.ts';
import {
  beating,
  type Closeness,
  type Comparison,
  type ScoreSheet,
} from '../../score/comparison.ts';
import { scoreKeys } from '../../score/evidence.ts';
import { scoreNames } from '../../score/name.ts';
import { closenessExplained, closenessSentence } from '../../score/sentence.ts';
import { lightNames } from '../argument.ts';
import { reasonLines } from './reason.ts';
import { harmless, type Screen, styled } from './screen.ts';
import { swatch } from './swatch.ts';
import { type Cell, hanging, type Row, tableOf } from './table.ts';

const rule: Row = { title: '', cells: [{ text: '' }] };

/** Lines of the whole comparison. */
export function comparisonLines(
  screen: Screen,
  build: Build,
  carName: string,
  comparison: Comparison,
): string[] {
  const { alternatives, closeness } = comparison;
  const heading = [
    ...hanging(screen, '', 0, styled(screen, 'bold', harmless(build.name))),
    ...hanging(screen, '', 0, conditions(build, carName, comparison)),
  ];
  if (alternatives.length === 0) {
    return [...heading, '', 'There are no alternatives to compare yet; add some to the file.'];
  }
  return [
    ...heading,
    '',
    ...tableOf(screen, [
      {
        title: '',
        cells: alternatives.map(({ letter, name }) => ({ text: `${letter}  ${harmless(name)}` })),
        isHeading: true,
      },
      rule,
      ...wornRows(screen, build, comparison.light as LightId),
      rule,
      ...scoreRows(alternatives),
    ]),
    '',
    ...reasonLines(screen, build, alternatives),
    ...closenessLines(screen, alternatives, closeness),
  ];
}

const conditions = (
  { scale }: Build,
  carName: string,
  { light, distanceMm, today }: Comparison,
): string =>
  `${harmless(carName)} at 1:${scale}, seen from ${Math.round(distanceMm)} mm under ` +
  `${lightNames[light as LightId]}; readiness counted from ${today}. ` +
  'Scores run from 0 to 100; higher is better.';

/** The open parts, and what each alternative puts on them. */
function wornRows(screen: Screen, build: Build, light: LightId): Row[] {
  const finishes = finishesByRef(build);
  const cells = new Map<string, Cell>();
  const cellOf = (ref: string): Cell => {
    const finish = finishes.get(ref);
    if (finish === undefined) return { text: harmless(ref) };
    const known = cells.get(ref);
    if (known !== undefined) return known;
    const mark = swatch(screen, appearanceOf(finish, light));
    const cell: Cell = { text: harmless(finish.name), mark };
    cells.set(ref, cell);
    return cell;
  };
  const worn = build.alternatives.map((alternative) => assignmentOf(build, alternative));
  return build.parts
    .filter((part) => isOpen(part) && !part.absent)
    .map(({ id, name }) => ({
      title: harmless(name),
      cells: worn.map((assignment) => cellOf(assignment.get(id) ?? '')),
    }));
}

function scoreRows(alternatives: readonly ScoreSheet[]): Row[] {
  const numbers = (title: string, of: (sheet: ScoreSheet) => number, isHeading = false): Row => ({
    title,
    isHeading,
    cells: alternatives.map((sheet) => gauge(of(sheet))),
  });
  return [
    numbers('Overall', ({ overall }) => overall, true),
    numbers('Without readiness', ({ overallWithoutReadiness }) => overallWithoutReadiness),
    {
      title: 'Ahead of',
      cells: alternatives.map(({ aheadOfOrdinary = 0 }) => ({
        text: `${Math.round(aheadOfOrdinary)} of 100 ordinary`,
      })),
    },
    ...scoreKeys.map((key) => numbers(scoreNames[key], ({ scores }) => scores[key])),
    {
      title: 'Beaten by',
      cells: alternatives.map((sheet) => ({ text: beatenBy(sheet, alternatives) })),
    },
    {
      title: 'Rules',
      cells: alternatives.map(({ broken }) => ({
        text: broken.length === 0 ? 'all kept' : `${broken.length} broken`,
      })),
    },
  ];
}

const gaugeWidth = 10;
const eighths = ['', '▏', '▎', '▍', '▌', '▋', '▊', '▉'];

/** A score as a whole number and a bar of ten columns. */
function gauge(score: number): Cell {
  const filled = Math.round((score / 100) * gaugeWidth * 8);
  const tip = eighths[filled % 8] ?? '';
  return {
    mark: `${String(Math.round(score)).padStart(3)} `,
    text: '█'.repeat(Math.floor(filled / 8)) + tip,
  };
}

/** The Pareto mark in words: who is at least as good on all six scores and better on one. */
function beatenBy(sheet: ScoreSheet, all: readonly ScoreSheet[]): string {
  if (sheet.pareto) return 'no other';
  return `${beating(sheet, all)
    .map(({ letter }) => letter)
    .join(', ')}, nowhere worse`;
}

function closenessLines(
  screen: Screen,
  alternatives: readonly ScoreSheet[],
  closeness: readonly Closeness[],
): string[] {
  if (closeness.length === 0) return [];
  const letters = new Map(alternatives.map(({ id, letter }) => [id, letter]));
  const told = (text: string): string[] => hanging(screen, '   ', 3, harmless(text));
  return [
    '',
    styled(screen, 'bold', 'How sure is the order?'),
    ...told(closenessExplained),
    ...closeness.flatMap((pair) => told(closenessSentence(pair, (id) => letters.get(id) ?? id))),
  ];
}
