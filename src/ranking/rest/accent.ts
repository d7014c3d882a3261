/**
 * What must the accent balance of an assignment cost at least? The cost of the sheet where everything
 * is decided; else a bound that no way to decide the rest can undercut.
 *
 * Every variable that is not decided can change one family at most, the one it comes to wear. So with
 * k of them all but k families stay as they stand: those that are accents now weigh what they weigh,
 * unless they are among the k; and no more than k others can become accents. A family that may change
 * has a least and a most membership m and a least cost c.
 *
 * The cost of the balance is a function of n = Σ m and Σ m·c alone, and Σ m·c is at least what the
 * certain memberships cost, plus the cheapest c for every further bit of membership. So for every
 * choice of accents that change, the least over n from the certain to the possible is a bound; it is
 * convex piece by piece, and each piece is least at its ends or at the root of its slope. Costs in
 * halvings.
 */
import { furtherAccentCost, secondAccentCost, unreadAccentCost } from '../../score/judgement.ts';
import { areOneColour, balanceCost, noAccentCostFor } from '../../score/six/accent.ts';
import type { Terms } from '../../score/terms.ts';
import type { Variables } from '../problem/variables.ts';
import { type Outlook, undecided } from './outlook.ts';
import { canBeAccent, type Prospect } from './prospect.ts';
import { Reads } from './reads.ts';

/** Accents up to which every choice of those that change is looked at. */
const mostChosenAmong = 6;

/** Sums over accents: of memberships, and of membership × cost. */
interface Accents {
  count: number;
  summed: number;
}

/** An accent that may change: as it stands, and what it may come to. */
interface Changing {
  membership: number;
  cost: number;
  least: number;
  most: number;
  costLater: number;
}

/** Families that are no accents yet: the most any can become, and the least it would cost. */
interface Others {
  most: number;
  cheapest: number;
}

export class AccentBound {
  readonly #terms: Terms;
  readonly #outlook: Outlook;
  readonly #reads: Reads;
  readonly #canBeAccent: Uint8Array;
  /** Filled anew for every assignment, from the first on. */
  readonly #changing: readonly Changing[];
  readonly #features: readonly number[];
  /** Whether the body may come to wear a loud family. */
  readonly #mayBodyBeLoud: boolean;

  constructor(terms: Terms, variables: Variables, outlook: Outlook) {
    const { families, scene, familyOf } = terms;
    this.#terms = terms;
    this.#outlook = outlook;
    this.#reads = new Reads(terms, variables);
    this.#canBeAccent = Uint8Array.from(families, (family) => (canBeAccent(family) ? 1 : 0));
    this.#changing = families.map(() => ({
      membership: 0,
      cost: 0,
      least: 0,
      most: 0,
      costLater: 0,
    }));
    this.#features = scene.surfaces.flatMap(({ role }, at) => (role === 'feature' ? [at] : []));
    this.#mayBodyBeLoud = variables.candidateOf[scene.main]!.some(
      (c) => families[familyOf[scene.main]![c]!]!.isLoud,
    );
  }

  /** The least cost of the assignment that the outlook has been shown. */
  least(values: Int32Array): number {
    const outlook = this.#outlook;
    const { familyAt } = outlook;
    const { main } = this.#terms.scene;
    const body = familyAt[main]!;
    const stay: Accents = { count: 0, summed: 0 };
    const changing = this.#changing;
    const others: Others = { most: 0, cheapest: Number.POSITIVE_INFINITY };
    let changingCount = 0;
    for (let k = 0; k < outlook.possibleCount; k++) {
      const family = outlook.possible[k]!;
      if (family === body || this.#canBeAccent[family] === 0) continue;
      const mayChange = outlook.mayChange(family);
      const now = outlook.asItStands(family);
      const membership = now.mostMembership;
      if (membership === 0 && !mayChange) continue;
      const cost = membership === 0 ? 0 : this.#cost(family, values, now, false);
      if (!mayChange) {
        stay.count += membership;
        stay.summed += membership * cost;
        continue;
      }
      const later = outlook.prospect(family);
      const costLater = later.mostMembership === 0 ? 0 : this.#cost(family, values, later, true);
      if (membership > 0) {
        const accent = changing[changingCount++]!;
        accent.membership = membership;
        accent.cost = cost;
        // What the body may yet wear need not be an accent.
        accent.least = outlook.mayCome(main, family) ? 0 : later.leastMembership;
        accent.most = later.mostMembership;
        accent.costLater = costLater;
      } else if (later.mostMembership > 0) {
        others.most = Math.max(others.most, later.mostMembership);
        others.cheapest = Math.min(others.cheapest, costLater);
      }
    }
    const least = this.#leastOver(stay, changingCount, others, this.#noneCost(body));
    return least + balanceCost(1, 0, 0, this.#isOneColour(body));
  }

  #cost(family: number, values: Int32Array, { leastPlaced }: Prospect, mayChange: boolean): number {
    const reads = this.#reads.best(family, values, this.#outlook, mayChange);
    return leastPlaced + unreadAccentCost * (1 - reads);
  }

  /** The least over every choice of accents that change, as many as there is to decide. */
  #leastOver(stay: Accents, changingCount: number, others: Others, none: number): number {
    const open = this.#outlook.openCount;
    const isTooMany = changingCount > mostChosenAmong;
    let least = Number.POSITIVE_INFINITY;
    // Bit k says that accent k changes; where there are too many to choose among, all may.
    const last = isTooMany ? 0 : 2 ** changingCount - 1;
    for (let chosen = 0; chosen <= last; chosen++) {
      let left = open;
      let { count, summed } = stay;
      let more = 0;
      let each = Number.POSITIVE_INFINITY;
      for (let k = 0; k < changingCount; k++) {
        const accent = this.#changing[k]!;
        if (!isTooMany && (chosen & (1 << k)) === 0) {
          count += accent.membership;
          summed += accent.membership * accent.cost;
          continue;
        }
        if (!isTooMany) left--;
        count += accent.least;
        summed += accent.least * accent.costLater;
        if (accent.most > accent.least) {
          more += accent.most - accent.least;
          each = Math.min(each, accent.costLater);
        }
      }
      if (left < 0) continue;
      if (left > 0 && others.most > 0) {
        more += left * others.most;
        each = Math.min(each, others.cheapest);
      }
      const cost =
        more === 0
          ? balanceCost(count, summed, none, false)
          : leastBalance(count, summed, more, each, none);
      if (cost < least) least = cost;
    }
    return least;
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
