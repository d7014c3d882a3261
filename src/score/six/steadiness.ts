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
  const { curve, thresholds } = reading;
  const bySheen = sheenVisibility(feature, neighbour);
  // Looped over without a list of all v: tables of whole racks are filled by this.
  const seen = (one: Worn['lab'], other: Worn['lab']): number =>
    Math.max(bySheen, visibility(one, other, thresholds));
  const byDay = seen(feature.underLights[0]!, neighbour.underLights[0]!);
  const inDaylight = along(curve, byDay);
  const floor = Math.min(leastVisibilityElsewhere, byDay);
  let acrossLights = inDaylight;
  for (let k = 1; k < feature.underLights.length; k++) {
    const v = seen(feature.underLights[k]!, neighbour.underLights[k]!);
    acrossLights = Math.max(acrossLights, along(curve, Math.max(floor, v)));
  }
  let deficient = 0;
  for (let k = 0; k < feature.toEyes.length; k++) {
    const v = seen(feature.toEyes[k]!, neighbour.toEyes[k]!);
    deficient += along(curve, Math.max(floor, v));
  }
  const acrossEyes = Math.max(inDaylight, deficient / feature.toEyes.length);
  return steadinessFactor * reading.weight * quiet * 0.5 * (acrossLights + acrossEyes);
}
