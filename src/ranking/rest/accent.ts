/**
 * What must the accent balance of an assignment cost at least? The cost of the sheet where everything
 * is decided; else a bound that no way to decide the rest can undercut.
 *
 * Every family has a least and a most membership m and a least cost c. The cost of the balance is a
 * function of n = Σ m and Σ m·c alone, and Σ m·c is at least what the certain memberships cost, plus
 * the cheapest c for every further bit of membership. So the least over n from the certain to the
 * possible is a bound; it is convex piece by piece, and each piece is least at its ends or at the root
 * of its slope. Costs in halvings.
 */
import { furtherAccentCost, secondAccentCost, unreadAccentCost } from '../../score/judgement.ts';
import { areOneColour, balanceCost, noAccentCostFor } from '../../score/six/accent.ts';
import type { Terms } from '../../score/terms.ts';
import type { Variables } from '../problem/variables.ts';
import { type Outlook, undecided } from './outlook.ts';
import { canBeAccent } from './prospect.ts';
import { Reads } from './reads.ts';

export class AccentBound {
  readonly #terms: Terms;
  readonly #outlook: Outlook;
  readonly #reads: Reads;
  readonly #canBeAccent: Uint8Array;
  readonly #features: readonly number[];
  /** Whether the body may come to wear a loud family. */
  readonly #mayBodyBeLoud: boolean;

  constructor(terms: Terms, variables: Variables, outlook: Outlook) {
    const { families, scene, familyOf } = terms;
    this.#terms = terms;
    this.#outlook = outlook;
    this.#reads = new Reads(terms, variables);
    this.#canBeAccent = Uint8Array.from(families, (family) => (canBeAccent(family) ? 1 : 0));
    this.#features = scene.surfaces.flatMap(({ role }, at) => (role === 'feature' ? [at] : []));
    this.#mayBodyBeLoud = variables.candidateOf[scene.main]!.some(
      (c) => families[familyOf[scene.main]![c]!]!.isLoud,
    );
  }

  /** The least cost of the assignment that the outlook has been shown. */
  least(values: Int32Array): number {
    const outlook = this.#outlook;
    const { scene } = this.#terms;
    const body = outlook.familyAt[scene.main]!;
    let count = 0;
    let summed = 0;
    let more = 0;
    let cheapest = Number.POSITIVE_INFINITY;
    for (let k = 0; k < outlook.possibleCount; k++) {
      const family = outlook.possible[k]!;
      if (family === body || this.#canBeAccent[family] === 0) continue;
      const { leastMembership, mostMembership, leastPlaced } = outlook.prospect(family);
      if (mostMembership === 0) continue;
      // What the body may yet wear need not be an accent.
      const sure = outlook.mayCome(scene.main, family) ? 0 : leastMembership;
      const reads = this.#reads.best(family, values, outlook);
      const cost = leastPlaced + unreadAccentCost * (1 - reads);
      count += sure;
      summed += sure * cost;
      if (mostMembership > sure) {
        more += mostMembership - sure;
        if (cost < cheapest) cheapest = cost;
      }
    }
    const none = this.#noneCost(body);
    const isOneColour = this.#isOneColour(body);
    if (more === 0) return balanceCost(count, summed, none, isOneColour);
    return leastBalance(count, summed, more, cheapest, none) + balanceCost(1, 0, 0, isOneColour);
  }

  #noneCost(body: number): number {
    const mayBeCarriedIn =
      body === undecided
        ? this.#mayBodyBeLoud
        : this.#terms.families[body]!.isLoud && this.#outlook.prospect(body).mayBeCarriedIn;
    return noAccentCostFor(this.#terms.tonal, mayBeCarriedIn);
  }

  /** Whether it is certain that nearly every feature wears the body's loud colour. */
  #isOneColour(body: number): boolean {
    if (body === undecided || !this.#terms.families[body]!.isLoud) return false;
    let others = 0;
    const { familyAt } = this.#outlook;
    for (let k = 0; k < this.#features.length; k++) {
      if (familyAt[this.#features[k]!] !== body) others++;
    }
    return areOneColour(this.#features.length, others);
  }
}

/**
 * The least of the balance's cost over counts from `count` to `count + more`, when `count` costs
 * `summed` and every further one costs `each`; being of one colour left out.
 */
function leastBalance(count: number, summed: number, more: number, each: number, none: number) {
  const most = count + more;
  const costAt = (n: number): number => {
    const within = Math.min(most, Math.max(count, n));
    return balanceCost(within, summed + each * (within - count), none, false);
  };
  let least = Math.min(costAt(count), costAt(1), costAt(2), costAt(most));
  // From 1 on the mean is each + fixed / n, and its slope −fixed / n².
  const fixed = summed - each * count;
  if (fixed > 0) {
    const atSlope = (slope: number, from: number, to: number): number =>
      costAt(Math.min(to, Math.max(from, Math.sqrt(fixed / slope))));
    least = Math.min(
      least,
      atSlope(secondAccentCost, 1, 2),
      atSlope(furtherAccentCost, 2, Number.POSITIVE_INFINITY),
    );
  }
  return least;
}
