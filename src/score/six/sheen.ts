/**
 * Do the sheens pair as if they were meant?
 *
 * In: two touching surfaces and what they wear. Out: a cost in halvings. Gloss units at 60°
 * [ISO2813] become steps that look about equally far apart (our judgement: no agreed scale of
 * gloss differences exists); equal or clearly apart is deliberate, nearly equal reads as a
 * mistake. Cloth, rubber and bare metal are exempt. What a surface is made of can be wrong by
 * itself: flake without gloss clear on the skin, a material where nobody would put it.
 */

import {
  flakeUnclearedElsewhere,
  flakeUnclearedOnMain,
  glossClearGu,
  leastBorderShare,
  nearMiss,
  outOfPlace,
  sheenBorderShare,
  sheenElsewhere,
  sheenFactor,
  sheenWithinFamily,
  sheenWithinSkin,
} from '../judgement.ts';
import { along } from '../seen/curve.ts';
import { isOutOfPlace } from '../seen/material.ts';
import type { Scene } from '../seen/scene.ts';
import type { Worn } from '../seen/worn.ts';

/** Two surfaces whose sheens are seen side by side. */
export interface SheenPair {
  readonly a: number;
  readonly b: number;
  /** 0–1, by how much of their border touches. */
  readonly weight: number;
  readonly isSkin: boolean;
}

/** Every pair of chosen surfaces that really touch. */
export function sheenPairsOf(scene: Scene): SheenPair[] {
  return scene.borders.flatMap(({ a, b, shareOfA, shareOfB, touching }) => {
    const [one, other] = [scene.surfaces[a]!, scene.surfaces[b]!];
    if (one.given !== undefined || other.given !== undefined) return [];
    const share = touching * (one.areaMm2 < other.areaMm2 ? shareOfA : shareOfB);
    if (share < leastBorderShare) return [];
    const isSkin = one.group === 'skin' && other.group === 'skin';
    return [{ a, b, weight: Math.min(1, share / sheenBorderShare), isSkin }];
  });
}

/** How much a near miss between two finishes matters, 0 where none is seen as one. */
export function sheenConcern(
  one: Worn,
  other: Worn,
  isSkin: boolean,
  isOneFamily: boolean,
): number {
  if (!one.isPaint || !other.isPaint) return 0;
  if (isSkin) return sheenWithinSkin;
  if (one.isFlake !== other.isFlake) return 0;
  return isOneFamily ? sheenWithinFamily : sheenElsewhere;
}

/** Cost in halvings of two touching finishes. */
export function sheenCost(pair: SheenPair, one: Worn, other: Worn, isOneFamily: boolean): number {
  if (one.ref === other.ref) return 0;
  const concern = sheenConcern(one, other, pair.isSkin, isOneFamily);
  if (concern === 0) return 0;
  const steps = Math.abs(one.sheenStep - other.sheenStep);
  return sheenFactor * pair.weight * concern * along(nearMiss, steps);
}

/** Cost in halvings of flake on the skin that has no gloss clear over it. */
export function unclearedFlakeCost(scene: Scene, at: number, worn: Worn): number {
  const surface = scene.surfaces[at]!;
  if (surface.group !== 'skin' || surface.given !== undefined) return 0;
  if (!worn.isFlake || worn.gloss60 >= glossClearGu) return 0;
  return sheenFactor * (at === scene.main ? flakeUnclearedOnMain : flakeUnclearedElsewhere);
}

/** Cost in halvings of a material where nobody would put it. */
export function outOfPlaceCost(scene: Scene, at: number, worn: Worn): number {
  const surface = scene.surfaces[at]!;
  if (surface.given !== undefined || !isOutOfPlace(worn.effect, surface.group)) return 0;
  return sheenFactor * outOfPlace * surface.importance;
}
