/**
 * Depth-first branch and bound over a layout: which assignments cost less than the worst of the pool?
 *
 * Every value of an open variable i is bounded by a star: what is certain so far, its own cost, and the
 * least that each other open variable and its table with i must add. Values beyond the threshold go;
 * the variable with least slack over its values is branched on, its values by rising bound.
 */
import { costOf, type Network, never, type Rest } from '../network.ts';
import type { Layout, Left } from './layout.ts';
import type { Pool } from './pool.ts';
import { sweptWithin } from './sweep.ts';
import { ThingsInUse } from './things.ts';

/** Values alive at one depth, and what they cost beside what is certain. */
interface Level extends Left {
  /** Star bounds, certain cost included. */
  readonly stars: readonly Float64Array[];
}

/** How the search is watched and stopped. */
export interface Control {
  /** Below the ceiling by so much is not worth finding. */
  readonly tolerance: number;
  isOver(): boolean;
  /** Hears of steps taken and of what nothing open can cost less than. */
  tell(steps: number, bound: number): void;
}

/** What is left open when the search ends. */
export interface Searched {
  readonly isWhole: boolean;
  /** No assignment that has not been visited costs less; the ceiling where all have been. */
  readonly bound: number;
  readonly steps: number;
}

/** Steps between two looks at the clock. */
const stepsBetween = 32;
/** Down to this depth what is left is swept before it is searched, where it has so many pairs. */
const deepestSwept = 1;
const leastSwept = 2000;
const sweepsWithin = 6;

/** What all depths of one search share. */
interface Shared {
  readonly network: Network;
  readonly pool: Pool;
  readonly control: Control;
  readonly things: ThingsInUse | undefined;
  /** Value of each variable in the network, -1 while it is open. */
  readonly values: Int32Array;
  /** Least star among values not tried yet, by depth. */
  readonly open: Float64Array;
  steps: number;
  isOver: boolean;
  /** What the node at which the search was stopped cannot cost less than. */
  stoppedAt: number;
}

/** Searches the whole layout; what is found goes into the pool. */
export function search(network: Network, layout: Layout, pool: Pool, control: Control): Searched {
  const { things, sizes } = network;
  const shared: Shared = {
    network,
    pool,
    control,
    things: things && new ThingsInUse(network, layout.shares),
    values: new Int32Array(sizes.length).fill(-1),
    open: new Float64Array(sizes.length + 1).fill(Number.POSITIVE_INFINITY),
    steps: 0,
    isOver: false,
    stoppedAt: Number.POSITIVE_INFINITY,
  };
  new Search(shared, layout, 0).run();
  return {
    isWhole: !shared.isOver,
    bound: Math.min(shared.stoppedAt, leastOpen(shared), pool.ceiling),
    steps: shared.steps,
  };
}

const leastOpen = ({ open }: Shared): number => open.reduce((least, one) => Math.min(least, one));

/** Search of one layout, `above` variables being chosen already. */
class Search {
  readonly #shared: Shared;
  readonly #layout: Layout;
  readonly #above: number;
  readonly #rest: Rest | undefined;
  readonly #levels: Level[] = [];

  constructor(shared: Shared, layout: Layout, above: number) {
    this.#shared = shared;
    this.#layout = layout;
    this.#above = above;
    this.#rest = shared.network.rest;
  }

  run(): void {
    const { open, sizes, unary, base } = this.#layout;
    const top = this.#level(this.#above);
    for (const i of open) {
      top.counts[i] = sizes[i]!;
      for (let a = 0; a < sizes[i]!; a++) {
        top.lists[i]![a] = a;
        top.costs[i]![a] = unary[i]![a]!;
      }
    }
    this.#visit(this.#above, open, base);
  }

  get #threshold(): number {
    return this.#shared.pool.ceiling - this.#shared.control.tolerance;
  }

  #level(depth: number): Level {
    this.#levels[depth - this.#above] ??= {
      counts: new Int32Array(this.#layout.sizes.length),
      lists: this.#layout.sizes.map((size) => new Int32Array(size)),
      costs: this.#layout.sizes.map((size) => new Float64Array(size)),
      stars: this.#layout.sizes.map((size) => new Float64Array(size)),
    };
    return this.#levels[depth - this.#above]!;
  }

  /** Searches below what is chosen; `certain` is what it costs at least, the rest left out. */
  #visit(depth: number, open: readonly number[], certain: number): void {
    const shared = this.#shared;
    if (++shared.steps % stepsBetween === 0 && this.#stops(certain)) return;
    if (open.length === 0) {
      shared.pool.add(costOf(shared.network, shared.values), shared.values);
      return;
    }
    const restLeast = this.#rest?.bound(shared.values) ?? 0;
    const level = this.#level(depth);
    const next = this.#star(level, open, certain, restLeast);
    if (next < 0) return;
    const others = open.filter((j) => j !== next);
    const stars = level.stars[next]!;
    const list = level.lists[next]!;
    const order = Array.from({ length: level.counts[next]! }, (_, x) => x);
    order.sort((x, y) => stars[x]! - stars[y]!);
    for (let k = 0; k < order.length; k++) {
      const x = order[k]!;
      if (stars[x]! + restLeast > this.#threshold) break;
      const after = order[k + 1];
      shared.open[depth] =
        after === undefined ? Number.POSITIVE_INFINITY : stars[after]! + restLeast;
      this.#choose(depth, next, list[x]!, x, others, certain);
      if (shared.isOver) return;
    }
    shared.open[depth] = Number.POSITIVE_INFINITY;
    shared.values[next] = -1;
  }

  /** Whether the search has been stopped; what it was at counts as open. */
  #stops(certain: number): boolean {
    const shared = this.#shared;
    shared.isOver ||= shared.control.isOver();
    if (shared.isOver) shared.stoppedAt = Math.min(shared.stoppedAt, certain);
    else {
      const bound = Math.min(certain, leastOpen(shared), shared.pool.ceiling);
      shared.control.tell(shared.steps, bound);
    }
    return shared.isOver;
  }

  /**
   * Bounds every value, drops those beyond the threshold, and returns the variable to branch on: one
   * with a single value left, else the one with least slack for the edges it would settle. -1 where
   * some variable is left with none.
   */
  #star(level: Level, open: readonly number[], certain: number, restLeast: number): number {
    const { tables, sizes } = this.#layout;
    const most = this.#threshold - restLeast;
    let next = -1;
    let leastSlack = Number.POSITIVE_INFINITY;
    for (const i of open) {
      const [list, costs, stars] = [level.lists[i]!, level.costs[i]!, level.stars[i]!];
      const count = level.counts[i]!;
      for (let x = 0; x < count; x++) stars[x] = certain + costs[x]!;
      let edges = 0;
      for (const j of open) {
        const table = tables[i]![j];
        if (table === undefined) continue;
        edges++;
        addLeast(stars, list, count, most, table, sizes[j]!, level, j);
      }
      let kept = 0;
      let slack = 0;
      for (let x = 0; x < count; x++) {
        const star = stars[x]!;
        if (star > most) continue;
        slack += most - star;
        stars[kept] = star;
        costs[kept] = costs[x]!;
        list[kept++] = list[x]!;
      }
      level.counts[i] = kept;
      if (kept === 0) return -1;
      slack = kept === 1 ? -1 : slack / (1 + edges);
      if (slack < leastSlack) {
        leastSlack = slack;
        next = i;
      }
    }
    return next;
  }

  /** Chooses value a of variable i, works out what is left for the others, and searches on. */
  #choose(
    depth: number,
    i: number,
    a: number,
    x: number,
    others: readonly number[],
    certain: number,
  ): void {
    const level = this.#level(depth);
    const below = this.#level(depth + 1);
    const { things, values } = this.#shared;
    const value = this.#layout.origin[i]![a]!;
    const pays = things === undefined ? 0 : things.take(i, value);
    if (pays < never / 2) {
      values[i] = value;
      const now = this.#narrow(level, below, i, a, others, certain + level.costs[i]![x]! + pays);
      if (now < never / 2) this.#goOn(depth + 1, others, now);
    }
    things?.giveBack(i, value);
  }

  /** Searches what is left below; where that is much, as a layout of its own, swept first. */
  #goOn(depth: number, open: readonly number[], certain: number): void {
    const below = this.#level(depth);
    if (!this.#isMuch(depth, open, below)) {
      this.#visit(depth, open, certain);
      return;
    }
    const { control, values } = this.#shared;
    const restLeast = this.#rest?.bound(values) ?? 0;
    const within = sweptWithin(this.#layout, open, below, certain, {
      threshold: () => this.#threshold - restLeast,
      isOver: control.isOver,
      mostSweeps: sweepsWithin,
    });
    if (within !== undefined) new Search(this.#shared, within, depth).run();
  }

  /** Whether there is so much left that sweeping it first pays. */
  #isMuch(depth: number, open: readonly number[], { counts }: Level): boolean {
    if (depth > deepestSwept || open.length < 3) return false;
    let cells = 0;
    for (const i of open)
      for (const j of this.#layout.neighbours[i]!) cells += counts[i]! * counts[j]!;
    return cells > leastSwept;
  }

  /** Costs of the others' values once a is chosen; what is certain then, or `never` where none can be. */
  #narrow(
    level: Level,
    below: Level,
    i: number,
    a: number,
    others: readonly number[],
    certain: number,
  ): number {
    const { tables, sizes } = this.#layout;
    const { things } = this.#shared;
    let now = certain;
    for (const j of others) {
      const [list, costs] = [level.lists[j]!, level.costs[j]!];
      const [listBelow, costsBelow] = [below.lists[j]!, below.costs[j]!];
      const origin = this.#layout.origin[j]!;
      const table = tables[i]![j];
      const row = a * sizes[j]!;
      const refunds = things?.refundsOf(j);
      const count = level.counts[j]!;
      let kept = 0;
      let least = Number.POSITIVE_INFINITY;
      for (let y = 0; y < count; y++) {
        const b = list[y]!;
        if (things?.isBarred(j, origin[b]!)) continue;
        let cost = costs[y]!;
        if (table !== undefined) cost += table[row + b]!;
        if (refunds !== undefined) cost -= refunds[origin[b]!]!;
        listBelow[kept] = b;
        costsBelow[kept++] = cost;
        if (cost < least) least = cost;
      }
      if (kept === 0) return never;
      below.counts[j] = kept;
      for (let y = 0; y < kept; y++) costsBelow[y]! -= least;
      now += least;
    }
    const most = this.#threshold - now;
    if (most < 0) return never;
    for (const j of others) {
      const [list, costs] = [below.lists[j]!, below.costs[j]!];
      let kept = 0;
      for (let y = 0; y < below.counts[j]!; y++) {
        if (costs[y]! > most) continue;
        list[kept] = list[y]!;
        costs[kept++] = costs[y]!;
      }
      below.counts[j] = kept;
    }
    return now;
  }
}

/** Adds to each star the least that variable j and its table must add. */
function addLeast(
  stars: Float64Array,
  list: Int32Array,
  count: number,
  most: number,
  table: Float32Array,
  width: number,
  level: Level,
  j: number,
): void {
  const [others, costs] = [level.lists[j]!, level.costs[j]!];
  const otherCount = level.counts[j]!;
  for (let x = 0; x < count; x++) {
    if (stars[x]! > most) continue;
    const row = list[x]! * width;
    let least = Number.POSITIVE_INFINITY;
    for (let y = 0; y < otherCount; y++) {
      const cost = table[row + others[y]!]! + costs[y]!;
      if (cost < least) least = cost;
    }
    stars[x]! += least;
  }
}
