/**
 * Do the small features still read under other lights and to colour-deficient eyes?
 *
 * In: a reading of a feature under 3 mm and what both sides wear. Out: a cost in halvings: half
 * for the worst of D65, A and LED-B3, half for the worse of ordinary eyes and the mean of protan
 * and deutan viewers [Machado2009]. Two colours that drift together earn nothing by it; two that
 * look the same by day already are one colour everywhere and cost nothing here.
 *
 * Limits: dichromat simulation and lifted spectra are indicative; tritan is not scored.
 */

import { leastVisibilityElsewhere, steadinessBelowMm, steadinessFactor } from '../judgement.ts';
import { along } from '../seen/curve.ts';
import type { Scene } from '../seen/scene.ts';
import { visibility } from '../seen/visibility.ts';
import type { Worn } from '../seen/worn.ts';
import { quietness, type Reading, sheenVisibility } from './contrast.ts';

/** Whether this reading is of a feature thin enough to depend on one channel of contrast. */
export function isDelicate(scene: Scene, reading: Reading): boolean {
  const thickness = scene.surfaces[reading.feature]!.thicknessMm;
  return thickness !== undefined && thickness < steadinessBelowMm && !reading.isTooSmall;
}

/** v of a reading under each light and to each eye, the first being D65. */
export function visibilitiesElsewhere(reading: Reading, feature: Worn, neighbour: Worn) {
  const bySheen = sheenVisibility(feature, neighbour);
  const seen = (one: Worn['lab'], other: Worn['lab']): number =>
    Math.max(bySheen, visibility(one, other, reading.thresholds));
  return {
    lights: feature.underLights.map((lab, k) => seen(lab, neighbour.underLights[k]!)),
    eyes: feature.toEyes.map((lab, k) => seen(lab, neighbour.toEyes[k]!)),
  };
}

/** Cost in halvings of one reading under other lights and eyes. */
export function steadinessCost(reading: Reading, feature: Worn, neighbour: Worn): number {
  if (feature.ref === neighbour.ref) return 0;
  const quiet = quietness(feature, neighbour, reading.isSkin);
  if (quiet === 0) return 0;
  const { lights, eyes } = visibilitiesElsewhere(reading, feature, neighbour);
  const lossAt = (v: number): number => along(reading.curve, v);
  const inDaylight = lossAt(lights[0]!);
  const floor = Math.min(leastVisibilityElsewhere, lights[0]!);
  const elsewhere = (v: number): number => lossAt(Math.max(floor, v));
  const acrossLights = Math.max(inDaylight, ...lights.slice(1).map(elsewhere));
  const deficient = eyes.reduce((sum, v) => sum + elsewhere(v), 0) / eyes.length;
  const acrossEyes = Math.max(inDaylight, deficient);
  return steadinessFactor * reading.weight * quiet * 0.5 * (acrossLights + acrossEyes);
}
