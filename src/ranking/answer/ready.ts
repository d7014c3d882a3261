/**
 * What makes one row readier than another? Bottles, parts to strip and days late, counted on the two
 * sheets: `one bottle fewer`, `two bottles more and three days later`.
 */
import type { ScoreSheet } from '../../score/comparison.ts';
import { inWords } from '../../score/finding/scheme.ts';
import { scoreNames } from '../../score/name.ts';
import { counted } from './figures.ts';

/** How the first differs from the second in what it takes; the name of the score where it does not. */
export function readinessInWords(one: ScoreSheet, other: ScoreSheet): string {
  const bottles = countOf(one, 'to-buy') - countOf(other, 'to-buy');
  const strips = countOf(one, 'to-strip') - countOf(other, 'to-strip');
  const days = daysLate(one) - daysLate(other);
  const told = [
    ...(bottles === 0 ? [] : [`${counted(Math.abs(bottles), 'bottle')} ${moreOrFewer(bottles)}`]),
    ...(strips === 0
      ? []
      : [`${counted(Math.abs(strips), 'part')} ${moreOrFewer(strips)} to strip`]),
    ...(days === 0 ? [] : [`${counted(Math.abs(days), 'day')} ${days > 0 ? 'later' : 'sooner'}`]),
  ];
  return told.length === 0 ? scoreNames.readiness.toLowerCase() : inWords(told);
}

const moreOrFewer = (difference: number): string => (difference > 0 ? 'more' : 'fewer');

const countOf = ({ evidence }: ScoreSheet, kind: string): number =>
  evidence.filter((one) => one.score === 'readiness' && one.kind === kind).length;

/** Days past the date wanted. */
const daysLate = ({ evidence }: ScoreSheet): number =>
  evidence.find(({ score, kind }) => score === 'readiness' && kind === 'late')?.numbers.late
    ?.value ?? 0;
