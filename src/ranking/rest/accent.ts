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
 * certain memberships cost, plus the cheapest c for every further bit of membership (`filling`). The
 * least over every choice of accents that change is the bound. Costs in halvings.
 */
import { unreadAccentCost } from '../../score/judgement.ts';
import { areOneColour, balanceCost, noAccentCostFor } from '../../score/six/accent.ts';
import type { Terms } from '../../score/terms.ts';
import type { Variables } from '../problem/variables.ts';
import { Filling } from './filling.ts';
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

export class AccentBound {
  readonly #terms: Terms;
  readonly #outlook: Outlook;
  readonly #reads: Reads;
  readonly #canBeAccent: Uint8Array;
  /** Filled anew for every assignment: accents that may change, and what others may become. */
  readonly #changing: readonly Changing[];
  readonly #others = new Filling();
  readonly #filling = new Filling();
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
    const others = this.#others;
    others.clear();
    let mostOfOne = 0;
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
        others.add(later.mostMembership, costLater);
        mostOfOne = Math.max(mostOfOne, later.mostMembership);
      }
    }
    const none = this.#noneCost(body);
    const least = this.#leastOver(stay, changingCount, mostOfOne, none);
    return least + balanceCost(1, 0, 0, this.#isOneColour(body));
  }

  #cost(family: number, values: Int32Array, { leastPlaced }: Prospect, mayChange: boolean): number {
    // What is not worn yet may come to read.
    if (!this.#outlook.isWorn(family)) return leastPlaced;
    const reads = this.#reads.best(family, values, this.#outlook, mayChange);
    return leastPlaced + unreadAccentCost * (1 - reads);
  }

  /**
   * The least over every choice of accents that change; of the others no more can become accents than
   * is left to decide, each with a membership of `mostOfOne` at most.
   */
  #leastOver(stay: Accents, changingCount: number, mostOfOne: number, none: number): number {
    const open = this.#outlook.openCount;
    const filling = this.#filling;
    const isTooMany = changingCount > mostChosenAmong;
    let least = Number.POSITIVE_INFINITY;
    // Bit k says that accent k changes.
    const last = isTooMany ? 0 : 2 ** changingCount - 1;
    for (let chosen = 0; chosen <= last; chosen++) {
      let left = open;
      let { count, summed } = stay;
      filling.clear();
      for (let k = 0; k < changingCount; k++) {
        const accent = this.#changing[k]!;
        if (isTooMany) {
          // Changing or not, it has at least the lesser membership, at the lesser cost.
          const sure = Math.min(accent.membership, accent.least);
          const cost = Math.min(accent.cost, accent.costLater);
          count += sure;
          summed += sure * cost;
          filling.add(Math.max(accent.membership, accent.most) - sure, cost);
        } else if ((chosen & (1 << k)) === 0) {
          count += accent.membership;
          summed += accent.membership * accent.cost;
        } else {
          left--;
          count += accent.least;
          summed += accent.least * accent.costLater;
          filling.add(accent.most - accent.least, accent.costLater);
        }
      }
      if (left < 0) continue;
      filling.takeFrom(this.#others, left * mostOfOne);
      least = Math.min(least, filling.least(count, summed, none));
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
