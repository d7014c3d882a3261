/**
 * How much of the cost is certain before anything is chosen? Costs are moved between tables and single
 * values, in the manner of sequential tree-reweighted message passing [Kolmogorov2006], so that as
 * much as possible gathers in `base`; whatever value then costs more than what is known already goes.
 * Sums over complete assignments stay as they are, but for the rounding of 32-bit tables.
 */
import type { Layout } from './layout.ts';

const mostSweeps = 40;
const leastSweeps = 4;
/** Sweeps end once one gains less than this share of what is still open. */
const leastGain = 0.02;
/** Tables are laid out anew once so much of all values has gone. */
const keptShare = 0.7;

/** Values left and what was moved out of each pair table. */
interface Moving {
  readonly layout: Layout;
  readonly counts: Int32Array;
  /** The first `counts[i]` are alive. */
  readonly lists: readonly Int32Array[];
  /** Taken from row a of the table of i with j at [i][j][a]. */
  readonly moved: (Float64Array | undefined)[][];
}

/**
 * Sweeps a layout in place; false where no assignment costs less than `threshold()`. `isOver` ends
 * sweeping early, which leaves the layout true.
 */
export function sweep(layout: Layout, threshold: () => number, isOver: () => boolean): boolean {
  let moving = begin(layout);
  let before = Number.NEGATIVE_INFINITY;
  for (let round = 0; round < mostSweeps && !isOver(); round++) {
    if (!pass(moving, 1, true, threshold()) || !pass(moving, -1, true, threshold())) return false;
    const all = layout.sizes.reduce((sum, size) => sum + size, 0);
    const alive = moving.counts.reduce((sum, count) => sum + count, 0);
    if (alive < keptShare * all) {
      settle(moving);
      moving = begin(layout);
    }
    const open = Math.max(0, threshold() - layout.base);
    if (round >= leastSweeps && layout.base - before < leastGain * open) break;
    before = layout.base;
  }
  if (!pass(moving, 1, false, threshold()) || !pass(moving, -1, false, threshold())) return false;
  settle(moving);
  return true;
}

function begin(layout: Layout): Moving {
  return {
    layout,
    counts: Int32Array.from(layout.sizes),
    lists: layout.sizes.map((size) => Int32Array.from({ length: size }, (_, a) => a)),
    moved: layout.tables.map((row, i) =>
      row.map((table) => (table === undefined ? undefined : new Float64Array(layout.sizes[i]!))),
    ),
  };
}

/** One pass over all variables, forwards or backwards, handing on what each gathers if `hands`. */
function pass(moving: Moving, way: 1 | -1, hands: boolean, threshold: number): boolean {
  const count = moving.counts.length;
  for (let step = 0; step < count; step++) {
    const i = way > 0 ? step : count - 1 - step;
    gather(moving, i);
    if (!normalise(moving, i, threshold)) return false;
    if (hands) handOn(moving, i, way);
  }
  return true;
}

/** Draws to each value of i the least that every pair table asks of it. */
function gather({ layout, counts, lists, moved }: Moving, i: number): void {
  const list = lists[i]!;
  const unary = layout.unary[i]!;
  for (const j of layout.neighbours[i]!) {
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
        for (let b = 0; b < width; b++) {
          const cost = table[row + b]! - others[b]!;
          if (cost < least) least = cost;
        }
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
function normalise({ layout, counts, lists }: Moving, i: number, threshold: number): boolean {
  const list = lists[i]!;
  const unary = layout.unary[i]!;
  let least = Number.POSITIVE_INFINITY;
  for (let x = 0; x < counts[i]!; x++) least = Math.min(least, unary[list[x]!]!);
  if (least === Number.POSITIVE_INFINITY) return false;
  layout.base += least;
  const most = threshold - layout.base;
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
function handOn({ layout, counts, lists, moved }: Moving, i: number, way: 1 | -1): void {
  const neighbours = layout.neighbours[i]!;
  const later = neighbours.filter((j) => (j - i) * way > 0);
  if (later.length === 0) return;
  const share = 1 / Math.max(later.length, neighbours.length - later.length);
  const list = lists[i]!;
  const unary = layout.unary[i]!;
  for (const j of later) {
    const own = moved[i]![j]!;
    for (let x = 0; x < counts[i]!; x++) own[list[x]!]! -= share * unary[list[x]!]!;
  }
  const left = 1 - later.length * share;
  for (let x = 0; x < counts[i]!; x++) unary[list[x]!]! *= left;
}

/** Lays the layout out anew with only the values alive and what was moved taken from the tables. */
function settle({ layout, counts, lists, moved }: Moving): void {
  const alive = lists.map((list, i) => list.subarray(0, counts[i]!));
  layout.tables = layout.tables.map((row, i) =>
    row.map((table, j) => {
      if (table === undefined) return undefined;
      const [rows, columns] = [alive[i]!, alive[j]!];
      const [own, others] = [moved[i]![j]!, moved[j]![i]!];
      const width = layout.sizes[j]!;
      const kept = new Float32Array(rows.length * columns.length);
      for (let x = 0; x < rows.length; x++) {
        const a = rows[x]!;
        for (let y = 0; y < columns.length; y++) {
          const b = columns[y]!;
          kept[x * columns.length + y] = table[a * width + b]! - own[a]! - others[b]!;
        }
      }
      return kept;
    }),
  );
  layout.unary = layout.unary.map((unary, i) => Float64Array.from(alive[i]!, (a) => unary[a]!));
  layout.origin = layout.origin.map((origin, i) => Int32Array.from(alive[i]!, (a) => origin[a]!));
  layout.sizes = Array.from(counts);
}
