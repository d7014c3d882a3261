/** Which things are used by what is chosen, what does their first use still cost, and what do limits bar? */
import { type Limit, type Network, never } from '../network.ts';

export class ThingsInUse {
  readonly #cost: Float64Array;
  readonly #shares: Float64Array;
  readonly #uses: Int32Array;
  readonly #limits: readonly Limit[];
  /** How many more things each limit allows. */
  readonly #room: Int32Array;
  /** Things used by value a of variable i at [i][a]. */
  readonly #usedBy: readonly (readonly (readonly number[])[])[];
  /** Values of variable j that use thing t at [t][j]. */
  readonly #users: readonly (readonly number[][])[];
  /** What values of variable j get back for things just taken, at [j][b]. */
  readonly #refunds: readonly Float64Array[];
  #isRefunding = false;
  /** Most things any value uses: with more room than that nothing is barred. */
  readonly #mostUsed: number;
  /** Things whose first use is the latest choice, by depth of choice. */
  readonly #taken: number[][] = [];

  constructor(network: Network, shares: Float64Array) {
    const { cost, usedBy, always, limits } = network.things!;
    this.#cost = cost;
    this.#shares = shares;
    this.#uses = new Int32Array(cost.length);
    for (const thing of always) this.#uses[thing] = 1;
    this.#limits = limits;
    this.#room = Int32Array.from(
      limits,
      ({ counts, most }) => most - always.reduce((sum, thing) => sum + counts[thing]!, 0),
    );
    this.#usedBy = usedBy;
    this.#users = Array.from(cost, () => usedBy.map((): number[] => []));
    usedBy.forEach((values, i) => {
      values.forEach((used, a) => {
        for (const thing of used) this.#users[thing]![i]!.push(a);
      });
    });
    this.#refunds = network.sizes.map((size) => new Float64Array(size));
    this.#mostUsed = Math.max(0, ...this.#usedBy.flat().map((used) => used.length));
  }

  /** Takes what a value uses; what its first uses cost beyond its shares, `never` beyond a limit. */
  take(i: number, a: number): number {
    let pays = 0;
    const first: number[] = [];
    for (const thing of this.#usedBy[i]![a]!) {
      if (this.#uses[thing]!++ > 0) continue;
      first.push(thing);
      pays += this.#cost[thing]! - this.#shares[thing]!;
      this.#limits.forEach(({ counts }, k) => {
        this.#room[k]! -= counts[thing]!;
      });
    }
    this.#taken.push(first);
    if (this.#isRefunding) for (const refunds of this.#refunds) refunds.fill(0);
    this.#isRefunding = false;
    for (const thing of first) {
      const share = this.#shares[thing]!;
      if (share === 0) continue;
      this.#isRefunding = true;
      this.#users[thing]!.forEach((values, j) => {
        for (const b of values) this.#refunds[j]![b]! += share;
      });
    }
    return this.#room.some((room) => room < 0) ? never : pays;
  }

  /** Undoes the latest `take`. */
  giveBack(i: number, a: number): void {
    for (const thing of this.#usedBy[i]![a]!) this.#uses[thing]!--;
    for (const thing of this.#taken.pop()!) {
      this.#limits.forEach(({ counts }, k) => {
        this.#room[k]! += counts[thing]!;
      });
    }
  }

  /** What values of j get back for the things just taken; undefined where nothing. */
  refundsOf(j: number): Float64Array | undefined {
    return this.#isRefunding ? this.#refunds[j] : undefined;
  }

  /** Whether value b of variable j would pass a limit. */
  isBarred(j: number, b: number): boolean {
    for (let k = 0; k < this.#limits.length; k++) {
      const room = this.#room[k]!;
      if (room >= this.#mostUsed) continue;
      const { counts } = this.#limits[k]!;
      let more = 0;
      for (const thing of this.#usedBy[j]![b]!) {
        if (this.#uses[thing] === 0) more += counts[thing]!;
      }
      if (more > room) return true;
    }
    return false;
  }
}
