/**
 * How little can an accent balance cost to which some membership may still be added? What is certain
 * has a count n = Σ m and costs Σ m·c; every further bit of membership has a cost c of its own, and the
 * cheapest are taken first. The cost is convex piece by piece: each piece is least at its ends, or at
 * the root of its slope. Costs in halvings; being of one colour is left out.
 */
import { furtherAccentCost, secondAccentCost } from '../../score/judgement.ts';
import { balanceCost } from '../../score/six/accent.ts';

/** Pieces kept apart; the dearest beyond them are taken for as cheap as one that is kept. */
const mostPieces = 8;

/** Memberships that may be added, cheapest first. */
export class Filling {
  readonly #widths = new Float64Array(mostPieces);
  readonly #costs = new Float64Array(mostPieces);
  #size = 0;

  clear(): void {
    this.#size = 0;
  }

  /** Takes over the pieces of another, cheapest first, up to so much membership in all. */
  takeFrom(other: Filling, most: number): void {
    let left = most;
    for (let k = 0; k < other.#size && left > 0; k++) {
      this.add(Math.min(left, other.#widths[k]!), other.#costs[k]!);
      left -= other.#widths[k]!;
    }
  }

  /** Adds up to `width` of membership at a cost of `cost` for each 1. */
  add(width: number, cost: number): void {
    if (width <= 0) return;
    if (this.#size === mostPieces) {
      const last = mostPieces - 1;
      if (cost >= this.#costs[last]!) {
        this.#widths[last]! += width;
        return;
      }
      this.#widths[last - 1]! += this.#widths[last]!;
      this.#size--;
    }
    this.#widths[this.#size] = width;
    this.#costs[this.#size] = cost;
    this.#settle(this.#size++);
  }

  /** Moves a piece to its place by cost. */
  #settle(from: number): void {
    const [width, cost] = [this.#widths[from]!, this.#costs[from]!];
    let at = from;
    for (; at > 0 && this.#costs[at - 1]! > cost; at--) {
      this.#costs[at] = this.#costs[at - 1]!;
      this.#widths[at] = this.#widths[at - 1]!;
    }
    this.#costs[at] = cost;
    this.#widths[at] = width;
  }

  /** The least cost of a balance with `count` certain that cost `summed`. */
  least(count: number, summed: number, none: number): number {
    let least = balanceCost(count, summed, none, false);
    let [n, sum] = [count, summed];
    for (let k = 0; k < this.#size; k++) {
      least = Math.min(least, leastWithin(n, sum, this.#widths[k]!, this.#costs[k]!, none));
      n += this.#widths[k]!;
      sum += this.#widths[k]! * this.#costs[k]!;
    }
    return least;
  }
}

/** The least over counts from `count`, which costs `summed`, to `count + more`. */
function leastWithin(count: number, summed: number, more: number, each: number, none: number) {
  const most = count + more;
  const costAt = (n: number): number => {
    const within = Math.min(most, Math.max(count, n));
    return balanceCost(within, summed + each * (within - count), none, false);
  };
  const least = Math.min(costAt(1), costAt(2), costAt(most));
  // From 1 on the mean is each + fixed / n, and its slope −fixed / n².
  const fixed = summed - each * count;
  if (fixed <= 0) return least;
  const secondRoot = Math.min(2, Math.max(1, Math.sqrt(fixed / secondAccentCost)));
  const furtherRoot = Math.max(2, Math.sqrt(fixed / furtherAccentCost));
  return Math.min(least, costAt(secondRoot), costAt(furtherRoot));
}
