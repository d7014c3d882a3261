/**
 * What do finishes cost by themselves and in pairs? Contrast, sheen, nearly same and steadiness of
 * the sheet, and paint to strip, weighted and written into a draft.
 */
import { stripCost } from '../../score/judgement.ts';
import { costByItself, type Terms } from '../../score/terms.ts';
import type { Draft } from './draft.ts';
import { isWeighed, pairCostsOf } from './pairs.ts';
import type { Shares } from './shares.ts';
import type { Variables } from './variables.ts';

/** Adds everything that is a sum over surfaces and pairs of surfaces. */
export function addSums(draft: Draft, terms: Terms, variables: Variables, shares: Shares): void {
  const { scene, candidates, pairs } = terms;
  const { of, candidateOf } = variables;
  for (const at of scene.surfaces.keys()) {
    draft.add(of[at]!, (a) => {
      const { worn, preparation } = candidates[at]![candidateOf[at]![a]!]!;
      const strips = preparation.strips ? stripCost : 0;
      return shares.sheen * costByItself(scene, at, worn) + shares.readiness * strips;
    });
  }
  const costsOf = pairCostsOf(terms, shares);
  for (const pair of pairs) {
    if (!isWeighed(pair, shares)) continue;
    const costOf = costsOf(pair);
    const [inA, inB] = [candidateOf[pair.a]!, candidateOf[pair.b]!];
    draft.addPair(of[pair.a]!, of[pair.b]!, (a, b) => costOf(inA[a]!, inB[b]!));
  }
}
