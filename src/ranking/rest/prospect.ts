/**
 * What can a colour family still come to on this car, while some parts are undecided? Found by the
 * same measures as the sheet (`score/six/accent`), for the fewest and the most surfaces that may yet
 * wear it. Areas, zones and how often places are seen together only grow with what wears a family, and
 * membership only falls.
 *
 * Where nothing is undecided, least and most are what is. Shares are percent of the visible car,
 * memberships 0–1, costs halvings.
 */
import { bodyEchoShare, detailMm2 } from '../../score/judgement.ts';
import type { Family } from '../../score/seen/family.ts';
import {
  accentCost,
  carriedInPercents,
  isAccent,
  membershipOf,
  type Showing,
  showingOf,
} from '../../score/six/accent.ts';
import type { Terms } from '../../score/terms.ts';
import type { Variables } from '../problem/variables.ts';

export interface Prospect {
  readonly leastSharePercent: number;
  readonly mostZones: number;
  /**
   * As an accent, should the body wear another family and, where there is something that may come to
   * wear it, some of that do.
   */
  readonly leastMembership: number;
  readonly mostMembership: number;
  /** Cost of where it shows, were it an accent; reading well. */
  readonly leastPlaced: number;
  /** As the body's family: whether cabin or wheels may carry it in. */
  readonly mayBeCarriedIn: boolean;
}

/** Whether a family can be an accent at all; others are the neutrals that go with anything. */
export const canBeAccent = ({ isLoud, isQuiet }: Family): boolean => isLoud || isQuiet;

/** Whether a variable's surfaces wear a family. */
export const wearsNot = 0;
export const mayWear = 1;
export const wears = 2;

/** What family `family` can come to, `stateOf` telling of each variable whether it wears it. */
export function prospectOf(
  terms: Terms,
  variables: Variables,
  family: number,
  stateOf: (variable: number) => number,
): Prospect {
  const { scene, families, painted, familyOf } = terms;
  const bodyVariable = variables.of[scene.main]!;
  const sure: number[] = [];
  const possible: number[] = [];
  const besideBody: number[] = [];
  /** Percent of the car that each variable which may come to wear it would add. */
  const joining = new Map<number, number>();
  scene.surfaces.forEach((surface, at) => {
    if (surface.given !== undefined) return;
    const variable = variables.of[at]!;
    const isCertain = variable < 0;
    const state = isCertain
      ? familyOf[at]![variables.candidateOf[at]![0]!] === family
        ? wears
        : wearsNot
      : stateOf(variable);
    if (state === wearsNot) return;
    possible.push(at);
    if (state === wears) sure.push(at);
    // What is decided with the body wears the body's family, which is no accent.
    if (state === wears || variable !== bodyVariable) besideBody.push(at);
    if (state === mayWear && variable !== bodyVariable) {
      joining.set(variable, (joining.get(variable) ?? 0) + surface.sharePercent);
    }
  });
  const showing = (surfaces: readonly number[]): Showing =>
    showingOf(scene, family, surfaces, painted);
  const least = showing(sure);
  const all = possible.length === sure.length ? least : showing(possible);
  const most = besideBody.length === possible.length ? all : showing(besideBody);
  const { isLoud, isQuiet } = families[family]!;
  const mayBeAccent =
    most.hasFeature &&
    most.areaMm2 >= detailMm2 &&
    least.ownZones.length === 0 &&
    (isLoud || (isQuiet && most.zones.length > 1));
  const isSurelyAccent = isAccent(least, families[family]!, -1) && most.ownZones.length === 0;
  return {
    leastSharePercent: least.sharePercent,
    mostZones: all.zones.length,
    leastMembership: isSurelyAccent ? membershipOf(most.sharePercent) : 0,
    mostMembership: mayBeAccent ? membershipOf(least.sharePercent + leastOf(joining)) : 0,
    leastPlaced: leastPlaced(least, most, isLoud),
    mayBeCarriedIn: isLoud && mayBeCarriedIn(terms, sure, possible),
  };
}

const leastOf = (amounts: ReadonlyMap<number, number>): number =>
  amounts.size === 0 ? 0 : Math.min(...amounts.values());

/** The least an accent between two showings can cost for where it shows. */
function leastPlaced(least: Showing, most: Showing, mayBeAlone: boolean): number {
  const echoed = most.zones.length > 1 ? accentCost(most, 1) : Number.POSITIVE_INFINITY;
  if (least.zones.length > 1 || !mayBeAlone) return echoed;
  const areaMm2 = Math.max(detailMm2, least.areaMm2);
  return Math.min(echoed, accentCost({ ...least, areaMm2 }, 1));
}

function mayBeCarriedIn(terms: Terms, sure: readonly number[], possible: readonly number[]) {
  const [low, high] = bodyEchoShare;
  const least = carriedInPercents(terms.scene, sure, terms.painted);
  const most = carriedInPercents(terms.scene, possible, terms.painted);
  return least.some((percent, k) => percent <= high && most[k]! >= low);
}
