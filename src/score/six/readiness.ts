/**
 * How soon could this scheme be on the model?
 *
 * In: what each surface would take: bottles to buy, days until it has cured, stripping. Out: a
 * cost in halvings. Bottles are counted once however many parts use them; parts wait for the
 * slowest. Our judgement; days late against the date wanted count up to a ceiling.
 */
import { bottleCost, lateCostPerDay, latestCost, stripCost } from '../judgement.ts';
import type { Candidate } from '../seen/candidate.ts';

/** What a whole choice takes. */
export interface Readiness {
  readonly bottles: ReadonlySet<string>;
  readonly days: number;
  /** Position of the surface that takes longest. */
  readonly slowest: number;
  readonly stripped: readonly number[];
}

/** Bottles, days and stripping of a choice. */
export function readinessOf(
  candidates: readonly (readonly Candidate[])[],
  choice: ArrayLike<number>,
): Readiness {
  const bottles = new Set<string>();
  const stripped: number[] = [];
  let days = 0;
  let slowest = 0;
  candidates.forEach((list, at) => {
    const { preparation } = list[choice[at]!]!;
    for (const bottle of preparation.toBuy) bottles.add(bottle);
    if (preparation.days > days) {
      days = preparation.days;
      slowest = at;
    }
    if (preparation.strips) stripped.push(at);
  });
  return { bottles, days, slowest, stripped };
}

/** Cost of being late by so many days. */
export const lateCost = (daysLate: number): number =>
  Math.min(latestCost, lateCostPerDay * Math.max(0, daysLate));

/** Cost in halvings of a choice, `daysWanted` being the days left to the date wanted. */
export function readinessCost(
  candidates: readonly (readonly Candidate[])[],
  choice: ArrayLike<number>,
  daysWanted: number | undefined,
): number {
  const { bottles, days, stripped } = readinessOf(candidates, choice);
  const late = daysWanted === undefined ? 0 : lateCost(days - daysWanted);
  return bottleCost * bottles.size + stripCost * stripped.length + late;
}
