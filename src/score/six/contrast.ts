/**
 * Does each part read against its neighbours at the viewing distance?
 *
 * In: two surfaces that share a border and what they wear. Out: a cost in halvings, to be summed
 * over borders. Thresholds [Stone2014] [Szafir2018]; the curve and the weights are our judgement.
 *
 * The same finish on both sides is a choice and costs nothing. A border between two features is
 * charged once, to the one that shows less. Limits: v mixes web-crowd thresholds with our own
 * rule for joining the axes, so it says *likely to read*, no more.
 */

import {
  contrastFactor,
  leastBorderShare,
  lossByVisibility,
  lossInTonalScheme,
  lossWhereItMustRead,
  mirrorsFromGu,
  mirrorVisibility,
  quietClothOnHard,
  quietNeutrals,
  sheenTellsApart,
  sheenVisibilityCeiling,
  smallestJudgedDegrees,
} from '../judgement.ts';
import { along, type Curve } from '../seen/curve.ts';
import type { Border, Scene, Surface } from '../seen/scene.ts';
import { type Thresholds, thresholdsFor, visibility } from '../seen/visibility.ts';
import type { Worn } from '../seen/worn.ts';

/** One border on which one feature has to read. */
export interface Reading {
  /** Position of the feature that is charged, and of the neighbour it is seen against. */
  readonly feature: number;
  readonly neighbour: number;
  /** Importance × share of the feature's border. */
  readonly weight: number;
  readonly thresholds: Thresholds;
  readonly curve: Curve;
  readonly mustRead: boolean;
  /** Both are the main skin and its markings, where neutral metals still count. */
  readonly isSkin: boolean;
  /** Too small at this distance to be judged at all. */
  readonly isTooSmall: boolean;
}

/** Every reading of a scene: features against neighbours, small borders dropped. */
export function readingsOf(
  scene: Scene,
  { tonal, mustRead }: { tonal: boolean; mustRead: readonly string[] },
): Reading[] {
  return scene.borders.flatMap((border) => {
    const sides = chargedSides(scene, border);
    if (sides === undefined) return [];
    const { feature, neighbour, share } = sides;
    const surface = scene.surfaces[feature]!;
    if (share < leastBorderShare) return [];
    const isPinned = mustRead.includes(surface.id);
    return [
      {
        feature,
        neighbour,
        weight: surface.importance * share,
        thresholds: thresholdsFor(surface.sizeDegrees, surface.isStrip),
        curve: isPinned ? lossWhereItMustRead : tonal ? lossInTonalScheme : lossByVisibility,
        mustRead: isPinned,
        isSkin: surface.group === 'skin' && scene.surfaces[neighbour]!.group === 'skin',
        isTooSmall: surface.sizeDegrees < smallestJudgedDegrees,
      },
    ];
  });
}

function chargedSides(scene: Scene, border: Border) {
  const a = scene.surfaces[border.a]!;
  const b = scene.surfaces[border.b]!;
  const isFeature = (surface: Surface): boolean => surface.role === 'feature';
  if (!isFeature(a) && !isFeature(b)) return undefined;
  const chargeA = isFeature(a) && (!isFeature(b) || a.areaMm2 < b.areaMm2);
  return chargeA
    ? { feature: border.a, neighbour: border.b, share: border.shareOfA }
    : { feature: border.b, neighbour: border.a, share: border.shareOfB };
}

/** v of a reading; two hard surfaces of clearly different sheen read whatever their colours. */
export function visibilityOf(reading: Reading, feature: Worn, neighbour: Worn): number {
  const byColour = visibility(feature.lab, neighbour.lab, reading.thresholds);
  return Math.max(byColour, sheenVisibility(feature, neighbour));
}

/** 0–1: how well a reading reads; from v 2 on it reads. */
export const readsWell = (reading: Reading, feature: Worn, neighbour: Worn): number =>
  Math.min(1, Math.max(0, visibilityOf(reading, feature, neighbour) - 1));

/**
 * v that a difference in sheen alone is worth; 0 where it does not tell two surfaces apart.
 * Mirror-bright metal beside anything else reads by what it mirrors.
 */
export function sheenVisibility(one: Worn, other: Worn): number {
  if (one.isMetal !== other.isMetal && (one.isMetal ? one : other).gloss60 >= mirrorsFromGu) {
    return mirrorVisibility;
  }
  if (one.isCloth || other.isCloth) return 0;
  const steps = Math.abs(one.sheenStep - other.sheenStep);
  return steps >= sheenTellsApart ? Math.min(sheenVisibilityCeiling, steps) : 0;
}

/** How much a pair of finishes matters: neutrals beside neutrals are no flaw to lose sleep over. */
export function quietness(one: Worn, other: Worn, isSkin: boolean): number {
  if (!one.isNeutral || !other.isNeutral) return 1;
  if (one.isMetalLike && other.isMetalLike && !isSkin) return 0;
  return one.isCloth !== other.isCloth ? quietClothOnHard : quietNeutrals;
}

/** Cost in halvings of one reading under two finishes. */
export function contrastCost(reading: Reading, feature: Worn, neighbour: Worn): number {
  if (reading.isTooSmall) return 0;
  if (feature.ref === neighbour.ref) {
    return reading.mustRead ? contrastFactor * reading.weight * along(reading.curve, 0) : 0;
  }
  const quiet = quietness(feature, neighbour, reading.isSkin);
  if (quiet === 0) return 0;
  const v = visibilityOf(reading, feature, neighbour);
  return contrastFactor * reading.weight * quiet * along(reading.curve, v);
}
