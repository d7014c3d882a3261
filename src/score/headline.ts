/**
 * What is to be said first of an alternative? The finding that takes most from its overall; where
 * none takes a point, that there is nothing to mend, with what is still to buy.
 *
 * In: a score sheet and the builder's weights. Out: a finding, or praise in words with the parts it
 * speaks of. A point is our judgement of what is worth a headline; bottles to buy are shopping, not
 * a fault.
 */
import type { Weights } from '../build/build.ts';
import type { ScoreSheet } from './comparison.ts';
import { type Evidence, scoreKeys } from './evidence.ts';
import { kappa } from './judgement.ts';

export type Headline =
  | { readonly finding: Evidence }
  | { readonly praise: string; readonly parts: readonly string[] };

/** Points of the overall from which a finding is worth a headline. */
const worthSaying = 1;

/** Points the overall would gain without this finding. */
export function gainWithout({ overall }: ScoreSheet, evidence: Evidence, weights: Weights): number {
  const total = scoreKeys.reduce((sum, key) => sum + weights[key], 0);
  return overall * (2 ** ((kappa * weights[evidence.score] * evidence.cost) / total) - 1);
}

/** The headline of a sheet, whose evidence stands worst first. */
export function headlineOf(sheet: ScoreSheet, weights: Weights): Headline {
  const isShopping = ({ score, kind }: Evidence): boolean =>
    score === 'readiness' && kind === 'to-buy';
  const finding = sheet.evidence.find(
    (one) => !isShopping(one) && gainWithout(sheet, one, weights) >= worthSaying,
  );
  if (finding !== undefined) return { finding };
  const toBuy = sheet.evidence.filter(isShopping);
  return {
    praise:
      toBuy.length === 0
        ? 'Nothing to mend, and nothing to buy.'
        : `Nothing to mend. To buy: ${toBuy.map(({ words }) => words.bottle).join('; ')}.`,
    parts: [...new Set(toBuy.flatMap(({ parts }) => parts))],
  };
}
