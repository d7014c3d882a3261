/**
 * Which colour is the accent, and does it show again?
 *
 * In: a scene, and the family and finish each surface wears. Out: for each accent its zones, how
 * often two of its places are seen together, its share of the car, how well it reads, and a cost
 * in halvings for the scheme. Our judgement throughout; a lone accent is a remark,
 * since coloured calipers alone are a liked choice.
 *
 * Quantities: areas mm² at scale, shares percent of the visible car, together 0–1 over looks.
 */
import { zones } from '../../car/table.ts';
import {
  accentShareFades,
  bodyEchoShare,
  detailMm2,
  fullImportanceMm2,
  furtherAccentCost,
  noAccentBodyEchoed,
  noAccentCost,
  noAccentTonal,
  oneColourCost,
  oneColourExceptions,
  oneColourFrom,
  orphanCost,
  secondAccentCost,
  seenTogetherMm2,
  togetherEnough,
  unreadAccentCost,
  zoneColourShare,
  zoneOccupiedMm2,
} from '../judgement.ts';
import type { Family } from '../seen/family.ts';
import type { Scene } from '../seen/scene.ts';

/** What one family shows of itself on the car. */
export interface Showing {
  readonly family: number;
  /** Surfaces that wear it, features first counted by `features`. */
  readonly surfaces: readonly number[];
  readonly hasFeature: boolean;
  readonly sharePercent: number;
  /** mm² in the look that shows most. */
  readonly areaMm2: number;
  /** Zones (positions in `zones`) it occupies. */
  readonly zones: readonly number[];
  /** Share 0–1 of looks, by weight, in which two of its zones are seen at once. */
  readonly together: number;
  /** Zones where it takes so much that it is the zone's own colour. */
  readonly ownZones: readonly number[];
}

/** A showing that counts as an accent, with its cost. */
export interface Accent extends Showing {
  /** 1 an accent, fading to 0 as it grows too large to be one. */
  readonly membership: number;
  /** 0–1, how well it reads against its neighbours. */
  readonly reads: number;
  readonly cost: number;
}

export interface AccentBalance {
  readonly cost: number;
  readonly accents: readonly Accent[];
  readonly showings: readonly Showing[];
  /** Sum of memberships. */
  readonly count: number;
  /** Cost there would be for having no accent. */
  readonly noneCost: number;
  readonly bodyEchoPercent: number;
  readonly isOneColour: boolean;
}

export interface AccentInput {
  readonly scene: Scene;
  readonly families: readonly Family[];
  /** Family of each surface, -1 for given surfaces. */
  readonly familyAt: ArrayLike<number>;
  /** 0–1: how well the features of a family read against what is not of it. */
  readonly readsOf: (family: number) => number;
  readonly tonal: boolean;
}

/** mm² painted in each zone, by look weights: what a zone's own colour is measured against. */
export function paintedZones(scene: Scene): Float64Array {
  const looks = scene.lookWeights.length;
  const painted = new Float64Array(zones.length);
  for (const surface of scene.surfaces) {
    if (surface.given !== undefined) continue;
    for (let z = 0; z < zones.length; z++) {
      for (let k = 0; k < looks; k++) {
        painted[z]! += scene.lookWeights[k]! * surface.zoneLookMm2[z * looks + k]!;
      }
    }
  }
  return painted;
}

/** What a family shows when these surfaces wear it. */
export function showingOf(
  scene: Scene,
  family: number,
  surfaces: readonly number[],
  painted: Float64Array,
): Showing {
  const looks = scene.lookWeights.length;
  let sharePercent = 0;
  let hasFeature = false;
  for (const at of surfaces) {
    const surface = scene.surfaces[at]!;
    sharePercent += surface.sharePercent;
    hasFeature ||= surface.role === 'feature';
  }
  const sums = zoneLookSums(scene, surfaces);
  const { lookWeights } = scene;
  const shown: number[] = [];
  const occupied: number[] = [];
  const own: number[] = [];
  for (let z = 0; z < zones.length; z++) {
    let most = 0;
    let mean = 0;
    for (let k = z * looks; k < (z + 1) * looks; k++) {
      const area = sums[k]!;
      if (area > most) most = area;
      mean += lookWeights[k - z * looks]! * area;
    }
    if (most === 0) continue;
    shown.push(z);
    if (most >= zoneOccupiedMm2) occupied.push(z);
    if (mean > 0 && mean >= zoneColourShare * painted[z]!) own.push(z);
  }
  let areaMm2 = 0;
  let together = 0;
  for (let k = 0; k < looks; k++) {
    let total = 0;
    let first = 0;
    let second = 0;
    for (let s = 0; s < shown.length; s++) {
      const area = sums[shown[s]! * looks + k]!;
      total += area;
      if (area > first) {
        second = first;
        first = area;
      } else if (area > second) second = area;
    }
    if (total > areaMm2) areaMm2 = total;
    together += lookWeights[k]! * Math.min(1, second / seenTogetherMm2);
  }
  return {
    family,
    surfaces,
    hasFeature,
    sharePercent,
    areaMm2,
    zones: occupied,
    together,
    ownZones: own,
  };
}

/** mm² at [zone × looks + look] of surfaces together. */
function zoneLookSums({ surfaces: all, lookWeights }: Scene, surfaces: readonly number[]) {
  if (surfaces.length === 1) return all[surfaces[0]!]!.zoneLookMm2;
  const sums = new Float64Array(zones.length * lookWeights.length);
  for (const at of surfaces) {
    const { zoneLookMm2 } = all[at]!;
    for (let k = 0; k < sums.length; k++) sums[k]! += zoneLookMm2[k]!;
  }
  return sums;
}

/** 1 for a small showing, fading to 0 where it covers too much of the car to be an accent. */
export function membershipOf(sharePercent: number): number {
  const [from, to] = accentShareFades;
  return Math.min(1, Math.max(0, (to - sharePercent) / (to - from)));
}

/** Cost in halvings of one accent. */
export function accentCost(showing: Showing, reads: number): number {
  const placed =
    showing.zones.length < 2
      ? orphanCost * Math.min(1, Math.sqrt(showing.areaMm2 / fullImportanceMm2))
      : 1 - Math.min(1, showing.together / togetherEnough);
  return placed + unreadAccentCost * (1 - reads);
}

/** Whether a showing counts among the accents at all. */
export function isAccent(showing: Showing, family: Family, bodyFamily: number): boolean {
  if (showing.family === bodyFamily || !showing.hasFeature) return false;
  if (showing.ownZones.length > 0 || showing.areaMm2 < detailMm2) return false;
  return family.isLoud || (family.isQuiet && showing.zones.length > 1);
}

/** The accent balance of one scheme. */
export function accentBalance(input: AccentInput, painted: Float64Array): AccentBalance {
  const { scene, families, familyAt, readsOf, tonal } = input;
  const wearers = new Map<number, number[]>();
  for (let at = 0; at < scene.surfaces.length; at++) {
    const family = familyAt[at]!;
    if (family < 0) continue;
    const list = wearers.get(family);
    if (list === undefined) wearers.set(family, [at]);
    else list.push(at);
  }
  const bodyFamily = familyAt[scene.main]!;
  const showings: Showing[] = [];
  const accents: Accent[] = [];
  for (const [family, surfaces] of wearers) {
    if (!families[family]!.isLoud && !families[family]!.isQuiet && family !== bodyFamily) continue;
    const showing = showingOf(scene, family, surfaces, painted);
    showings.push(showing);
    if (!isAccent(showing, families[family]!, bodyFamily)) continue;
    const membership = membershipOf(showing.sharePercent);
    if (membership === 0) continue;
    const reads = readsOf(family);
    accents.push({ ...showing, membership, reads, cost: accentCost(showing, reads) });
  }
  const isLoud = families[bodyFamily]!.isLoud;
  const bodyEchoPercent = isLoud
    ? Math.max(
        0,
        ...carriedInPercents(scene, wearers.get(bodyFamily)!, painted).filter(countsAsCarriedIn),
      )
    : 0;
  const noneCost = noAccentCostFor(tonal, bodyEchoPercent > 0);
  const isOneColour = isLoud && wearsOneColour(scene, familyAt, bodyFamily);
  const count = accents.reduce((sum, accent) => sum + accent.membership, 0);
  const summed = accents.reduce((sum, accent) => sum + accent.membership * accent.cost, 0);
  const cost = balanceCost(count, summed, noneCost, isOneColour);
  return { cost, accents, showings, count, noneCost, bodyEchoPercent, isOneColour };
}

/** Cost in halvings of having no accent. */
export const noAccentCostFor = (tonal: boolean, isBodyEchoed: boolean): number =>
  tonal ? noAccentTonal : isBodyEchoed ? noAccentBodyEchoed : noAccentCost;

/**
 * Cost in halvings of a scheme from the sum of its accents' memberships and of their costs times
 * membership.
 */
export const balanceCost = (
  count: number,
  summed: number,
  noneCost: number,
  isOneColour: boolean,
): number =>
  (count >= 1 ? summed / count : summed + (1 - count) * noneCost) +
  secondAccentCost * Math.min(1, Math.max(0, count - 1)) +
  furtherAccentCost * Math.max(0, count - 2) +
  (isOneColour ? oneColourCost : 0);

/** Percent of the cabin, and of the wheels, that these surfaces take; skin is left out. */
export function carriedInPercents(
  scene: Scene,
  surfaces: readonly number[],
  painted: Float64Array,
): number[] {
  const looks = scene.lookWeights.length;
  return [zones.indexOf('cabin'), zones.indexOf('wheels')].map((zone) => {
    let area = 0;
    for (const at of surfaces) {
      const surface = scene.surfaces[at]!;
      if (surface.group === 'skin') continue;
      for (let k = 0; k < looks; k++) {
        area += scene.lookWeights[k]! * surface.zoneLookMm2[zone * looks + k]!;
      }
    }
    return painted[zone]! > 0 ? (100 * area) / painted[zone]! : 0;
  });
}

/** Whether so much of cabin or wheels counts as body colour carried in. */
export const countsAsCarriedIn = (percent: number): boolean =>
  percent >= bodyEchoShare[0] && percent <= bodyEchoShare[1];

/** All but at most two features wear body's colour. */
function wearsOneColour(scene: Scene, familyAt: ArrayLike<number>, bodyFamily: number): boolean {
  let features = 0;
  let others = 0;
  scene.surfaces.forEach((surface, at) => {
    if (surface.role !== 'feature') return;
    features++;
    if (familyAt[at] !== bodyFamily) others++;
  });
  return areOneColour(features, others);
}

/** Whether so many features, so many of them in another colour than the body, read as one colour. */
export const areOneColour = (features: number, others: number): boolean =>
  features > oneColourFrom && others <= oneColourExceptions;
