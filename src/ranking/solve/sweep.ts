/**
 * How much of the cost is certain before anything is chosen? Costs are moved between tables and single
 * values, in the manner of sequential tree-reweighted message passing [Kolmogorov2006], so that as
 * much as possible gathers in `base`; whatever value then costs more than what is known already goes.
 * Sums over complete assignments stay as they are, but for the rounding of 32-bit tables.
 */
import type { Layout, Left } from './layout.ts';

/** Sweeps end once one gains less than this share of what is still open. */
const leastGain = 0.2;
/** Tables are laid out anew once so much of all values has gone. */
const keptShare = 0.5;

/** Values left, what they cost, and what was moved out of each pair table. */
interface Moving {
  /** Its tables are read, never written. */
  readonly layout: Layout;
  readonly open: readonly number[];
  /** Open variables that share an edge with each open one. */
  readonly neighbours: readonly (readonly number[])[];
  base: number;
  readonly unary: readonly Float64Array[];
  readonly counts: Int32Array;
  /** The first `counts[i]` are alive. */
  readonly lists: readonly Int32Array[];
  /** Taken from row a of the table of i with j at [i][j][a]. */
  readonly moved: (Float64Array | undefined)[][];
}

/** How far sweeping goes. */
export interface Sweeping {
  /** What is not cheaper than this is of no use. */
  threshold(): number;
  /** Ends sweeping early, which leaves costs true. */
  isOver(): boolean;
  readonly mostSweeps: number;
}

/**
 * The layout of what is left of another, swept; undefined where nothing in it is below the threshold.
 * `certain` is what it costs beside the values left.
 */
export function sweptWithin(
  layout: Layout,
  open: readonly number[],
  left: Left,
  certain: number,
  { threshold, isOver, mostSweeps }: Sweeping,
): Layout | undefined {
  const moving = begin(layout, open, left, certain);
  let before = Number.NEGATIVE_INFINITY;
  for (let round = 0; round < mostSweeps && !isOver(); round++) {
    if (!pass(moving, 1, true, threshold()) || !pass(moving, -1, true, threshold()))
      return undefined;
    const { base } = moving;
    if (base - before < leastGain * Math.max(0, threshold() - base)) break;
    before = base;
    if (isThinned(moving)) {
      const rest = { threshold, isOver, mostSweeps: mostSweeps - round - 1 };
      return swept(settled(moving), rest);
    }
  }
  if (!pass(moving, 1, false, threshold()) || !pass(moving, -1, false, threshold()))
    return undefined;
  return settled(moving);
}

/** A whole layout, swept; undefined where nothing in it is below the threshold. */
export function swept(layout: Layout, sweeping: Sweeping): Layout | undefined {
  const left = {
    counts: Int32Array.from(layout.sizes),
    lists: layout.sizes.map((size) => Int32Array.from({ length: size }, (_, a) => a)),
    costs: layout.unary,
  };
  return sweptWithin(layout, layout.open, left, layout.base, sweeping);
}

/** Whether so many values have gone that tables laid out anew pay. */
function isThinned({ layout, open, counts }: Moving): boolean {
  let all = 0;
  let alive = 0;
  for (const i of open) {
    all += layout.sizes[i]!;
    alive += counts[i]!;
  }
  return alive < keptShare * all;
}

function begin(layout: Layout, open: readonly number[], left: Left, certain: number): Moving {
  const isOpen = layout.sizes.map((_, i) => open.includes(i));
  const neighbours = layout.neighbours.map((all, i) =>
    isOpen[i] ? all.filter((j) => isOpen[j]) : [],
  );
  return {
    layout,
    open,
    neighbours,
    base: certain,
    unary: layout.sizes.map((size, i) => {
      const unary = new Float64Array(isOpen[i] ? size : 0);
      const count = isOpen[i] ? left.counts[i]! : 0;
      for (let x = 0; x < count; x++) unary[left.lists[i]![x]!] = left.costs[i]![x]!;
      return unary;
    }),
    counts: Int32Array.from(left.counts, (count, i) => (isOpen[i] ? count : 0)),
    lists: left.lists.map((list) => list.slice()),
    moved: layout.sizes.map((size, i) => {
      const row: (Float64Array | undefined)[] = layout.sizes.map(() => undefined);
      for (const j of neighbours[i]!) row[j] = new Float64Array(size);
      return row;
    }),
  };
}

/** One pass over all variables, forwards or backwards, handing on what each gathers if `hands`. */
function pass(moving: Moving, way: 1 | -1, hands: boolean, threshold: number): boolean {
  const { open } = moving;
  for (let step = 0; step < open.length; step++) {
    const i = open[way > 0 ? step : open.length - 1 - step]!;
    gather(moving, i, way);
    if (!normalise(moving, i, threshold)) return false;
    if (hands) handOn(moving, i, way);
  }
  return true;
}

/**
 * Draws to each value of i the least that its pair tables ask of it, those shared with variables that
 * came before on this way; the others have been drawn on the way back, and have not changed since.
 */
function gather(
  { layout, neighbours, unary: all, counts, lists, moved }: Moving,
  i: number,
  way: 1 | -1,
): void {
  const list = lists[i]!;
  const unary = all[i]!;
  for (const j of neighbours[i]!) {
    if ((j - i) * way > 0) continue;
    const table = layout.tables[i]![j]!;
    const [own, others] = [moved[i]![j]!, moved[j]![i]!];
    const width = layout.sizes[j]!;
    const other = lists[j]!;
    const count = counts[j]!;
    const isWhole = count === width;
    for (let x = 0; x < counts[i]!; x++) {
      const a = list[x]!;
      const row = a * width;
      let least = Number.POSITIVE_INFINITY;
      if (isWhole) {
        // Four at a time, since each waits for none of the others.
        let [one, two, three] = [least, least, least];
        let b = 0;
        for (; b + 3 < width; b += 4) {
          const first = table[row + b]! - others[b]!;
          const second = table[row + b + 1]! - others[b + 1]!;
          const third = table[row + b + 2]! - others[b + 2]!;
          const fourth = table[row + b + 3]! - others[b + 3]!;
          if (first < least) least = first;
          if (second < one) one = second;
          if (third < two) two = third;
          if (fourth < three) three = fourth;
        }
        for (; b < width; b++) least = Math.min(least, table[row + b]! - others[b]!);
        least = Math.min(least, one, two, three);
      } else {
        for (let y = 0; y < count; y++) {
          const b = other[y]!;
          const cost = table[row + b]! - others[b]!;
          if (cost < least) least = cost;
        }
      }
      least -= own[a]!;
      unary[a]! += least;
      own[a]! += least;
    }
  }
}

/** Moves what every value of i costs into `base`, and drops values beyond the threshold. */
function normalise(moving: Moving, i: number, threshold: number): boolean {
  const { counts } = moving;
  const list = moving.lists[i]!;
  const unary = moving.unary[i]!;
  let least = Number.POSITIVE_INFINITY;
  for (let x = 0; x < counts[i]!; x++) least = Math.min(least, unary[list[x]!]!);
  if (least === Number.POSITIVE_INFINITY) return false;
  moving.base += least;
  const most = threshold - moving.base;
  let kept = 0;
  for (let x = 0; x < counts[i]!; x++) {
    const a = list[x]!;
    const cost = unary[a]! - least;
    if (cost > most) continue;
    unary[a] = cost;
    list[kept++] = a;
  }
  counts[i] = kept;
  return kept > 0;
}

/** Shares what i has gathered among the neighbours that come later on this way. */
function handOn(moving: Moving, i: number, way: 1 | -1): void {
  const { counts, lists, moved } = moving;
  const neighbours = moving.neighbours[i]!;
  const later = neighbours.filter((j) => (j - i) * way > 0);
  if (later.length === 0) return;
  const share = 1 / Math.max(later.length, neighbours.length - later.length);
  const list = lists[i]!;
  const unary = moving.unary[i]!;
  for (const j of later) {
    const own = moved[i]![j]!;
    for (let x = 0; x < counts[i]!; x++) own[list[x]!]! -= share * unary[list[x]!]!;
  }
  const left = 1 - later.length * share;
  for (let x = 0; x < counts[i]!; x++) unary[list[x]!]! *= left;
}

/** A layout of the values alive, with what was moved taken from the tables. */
function settled({ layout, open, neighbours, base, unary, counts, lists, moved }: Moving): Layout {
  const alive = lists.map((list, i) => list.subarray(0, counts[i]!));
  const tables: Layout['tables'] = layout.sizes.map(() => layout.sizes.map(() => undefined));
  for (const i of open) {
    for (const j of neighbours[i]!) {
      const [table, width] = [layout.tables[i]![j]!, layout.sizes[j]!];
      const [rows, columns] = [alive[i]!, alive[j]!];
      const [own, others] = [moved[i]![j]!, moved[j]![i]!];
      const kept = new Float32Array(rows.length * columns.length);
      let at = 0;
      for (let x = 0; x < rows.length; x++) {
        const row = rows[x]! * width;
        const taken = own[rows[x]!]!;
        for (let y = 0; y < columns.length; y++) {
          const b = columns[y]!;
          kept[at++] = table[row + b]! - taken - others[b]!;
        }
      }
      tables[i]![j] = kept;
    }
  }
  return {
    open,
    base,
    sizes: Array.from(counts),
    origin: layout.origin.map((origin, i) => Int32Array.from(alive[i]!, (a) => origin[a]!)),
    unary: unary.map((costs, i) => Float64Array.from(alive[i]!, (a) => costs[a]!)),
    tables,
    neighbours,
    shares: layout.shares,
  };
}
