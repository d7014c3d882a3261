/**
 * Which rows does no other combination beat, in words? Exact where the whole set is known; else only
 * what the rows found say of one another, told as such.
 */
import { inWords } from '../../score/finding/scheme.ts';
import type { RankedRow } from '../ranking.ts';
import { unbeatenBy } from './beating.ts';
import { inNumerals } from './figures.ts';
import type { ParetoSet } from './pareto.ts';

type WholeSet = Extract<ParetoSet, { kind: 'whole' }>;

export interface UnbeatenRows {
  /** Places of the rows, from 0. */
  readonly places: readonly number[];
  /** Nothing at all beats them; otherwise no other row does, which is all that is known. */
  readonly isOfAll: boolean;
  readonly sentence: string;
}

/** The rows that nothing beats on every score, as far as that is known. */
export function unbeatenRows(rows: readonly RankedRow[], set: ParetoSet): UnbeatenRows {
  const sheets = rows.map(({ sheet }) => sheet);
  const isOfAll = set.kind === 'whole';
  const places = unbeatenBy(sheets, isOfAll ? set.points : sheets);
  const isAlone = set.kind === 'whole' && set.keeping < 2;
  if (rows.length === 0 || isAlone) return { places, isOfAll, sentence: '' };
  const numbers = places.map((at) => sheets[at]!.letter);
  const isAll = places.length === rows.length && rows.length > 1;
  const named = isAll
    ? `all ${inNumerals(rows.length)}`
    : `number${numbers.length === 1 ? '' : 's'} ${inWords(numbers)}`;
  return { places, isOfAll, sentence: isOfAll ? exact(set, named, places) : amongRows(set, named) };
}

const beaten = 'on every score and better on some';

function exact(set: WholeSet, named: string, places: readonly number[]): string {
  const count = set.points.reduce((sum, { level }) => sum + level, 0);
  return (
    `For ${inNumerals(count)} of ${inNumerals(set.keeping)} allowed combinations no other is as good ${beaten}; ` +
    'whatever the weights, the best is one of these. ' +
    `In this list: ${places.length === 0 ? 'none' : named}.`
  );
}

const amongRows = ({ kind }: ParetoSet, named: string): string =>
  `In this list no other is as good as ${named} ${beaten}. Beyond it there may be: ` +
  `${kind === 'too-many' ? 'there are too many combinations to look at all' : 'not all were looked at'}.`;
