/**
 * What do finishes cost by themselves and in pairs? Contrast, sheen, nearly same and steadiness of
 * the sheet, and paint to strip, weighted and written into a draft.
 */
import { type ScoreKey, scoreKeys } from '../../score/evidence.ts';
import { stripCost } from '../../score/judgement.ts';
import {
  costByItself,
  type PairTerm,
  pairCostCount,
  pairCosts,
  type Terms,
} from '../../score/terms.ts';
import type { Draft } from './draft.ts';
import type { Variables } from './variables.ts';

/** Share 0–1 of each score in the overall. */
export type Shares = Readonly<Record<ScoreKey, number>>;

export function sharesOf(weights: Readonly<Record<ScoreKey, number>>): Shares {
  const total = scoreKeys.reduce((sum, key) => sum + weights[key], 0);
  return Object.fromEntries(scoreKeys.map((key) => [key, weights[key] / total])) as Record<
    ScoreKey,
    number
  >;
}

/** Whether a pair can cost anything under these weights. */
export const isWeighed = ({ reading, delicate, sheen, group }: PairTerm, shares: Shares): boolean =>
  (reading !== undefined && shares.contrast > 0) ||
  (delicate && shares.steadiness > 0) ||
  (sheen !== undefined && shares.sheen > 0) ||
  (group !== undefined && shares.harmony > 0);

/** Adds everything that is a sum over surfaces and pairs of surfaces. */
export function addSums(draft: Draft, terms: Terms, variables: Variables, shares: Shares): void {
  const { scene, candidates, familyOf, pairs } = terms;
  const { of, candidateOf } = variables;
  scene.surfaces.forEach((_, at) => {
    draft.add(of[at]!, (a) => {
      const { worn, preparation } = candidates[at]![candidateOf[at]![a]!]!;
      const strips = preparation.strips ? stripCost : 0;
      return shares.sheen * costByItself(scene, at, worn) + shares.readiness * strips;
    });
  });
  const cell = new Float64Array(pairCostCount);
  for (const pair of pairs) {
    if (!isWeighed(pair, shares)) continue;
    const [inA, inB] = [candidateOf[pair.a]!, candidateOf[pair.b]!];
    const [wornA, wornB] = [pair.a, pair.b].map((at) => candidates[at]!.map(({ worn }) => worn));
    const [familyA, familyB] = [familyOf[pair.a]!, familyOf[pair.b]!];
    draft.addPair(of[pair.a]!, of[pair.b]!, (a, b) => {
      const ca = inA[a]!;
      const cb = inB[b]!;
      pairCosts(pair, wornA![ca]!, wornB![cb]!, familyA[ca] === familyB[cb], cell);
      return (
        shares.contrast * cell[0]! +
        shares.sheen * cell[1]! +
        shares.harmony * cell[2]! +
        shares.steadiness * cell[3]!
      );
    });
  }
}
