/**
 * Are two paints of one group too close to be meant as two? On screen: *kept apart*.
 *
 * In: what two parts of one group wear. Out: a cost in halvings, by CIEDE2000 [Sharma2005]
 * through a tent: under 1.5 they are one colour, from 3 to 8 a near miss, from 20 plainly two.
 * Our judgement; on 348 published historical combinations the falling side alone tells real from
 * shuffled with AUC 0.57, a weak signal. It is not a measure of harmony or of taste.
 */
import { ciede2000 } from '../../colour/difference.ts';
import {
  comparedChroma,
  comparedLightness,
  nearlySameChromatic,
  nearlySameElsewhere,
  nearlySameFactor,
  nearlySameNeutral,
  nearlySameSkin,
} from '../judgement.ts';
import { along, type Curve } from '../seen/curve.ts';
import type { Scene } from '../seen/scene.ts';
import type { Worn } from '../seen/worn.ts';

/** Two chosen parts of one group, compared as colours that belong together. */
export interface GroupPair {
  readonly a: number;
  readonly b: number;
  readonly weight: number;
}

/** Every pair of chosen surfaces within the skin, the cabin and the wheels. */
export function groupPairsOf(scene: Scene): GroupPair[] {
  const pairs: GroupPair[] = [];
  scene.surfaces.forEach((one, a) => {
    if (one.given !== undefined || one.group === 'trim') return;
    scene.surfaces.slice(a + 1).forEach((other, step) => {
      if (other.given !== undefined || other.group !== one.group) return;
      const weight = one.group === 'skin' ? nearlySameSkin : nearlySameElsewhere;
      pairs.push({ a, b: a + 1 + step, weight });
    });
  });
  return pairs;
}

/** Whether two finishes are of a kind that would be compared at all. */
export function areCompared(one: Worn, other: Worn): boolean {
  if (!one.isPaint || !other.isPaint || one.isFlake !== other.isFlake) return false;
  const bothColoured = one.chroma >= comparedChroma && other.chroma >= comparedChroma;
  const bothPale = one.lab[0] >= comparedLightness && other.lab[0] >= comparedLightness;
  return bothColoured || bothPale;
}

/** The tent two finishes are judged by: neutrals are told apart sooner than colours. */
export const nearlySameCurve = (one: Worn, other: Worn): Curve =>
  one.chroma < comparedChroma && other.chroma < comparedChroma
    ? nearlySameNeutral
    : nearlySameChromatic;

/** Cost in halvings of two finishes in one group. */
export function nearlySameCost(pair: GroupPair, one: Worn, other: Worn): number {
  if (one.ref === other.ref || !areCompared(one, other)) return 0;
  const cost = along(nearlySameCurve(one, other), ciede2000(one.lab, other.lab));
  return nearlySameFactor * pair.weight * cost;
}
