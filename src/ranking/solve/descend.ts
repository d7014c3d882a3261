/**
 * A good start: what does improving one variable at a time come to, from many beginnings? Fills the
 * pool with cheap assignments, so that the search can leave out what costs more. Nothing found here
 * is ever called best.
 */
import { type Draw, drawFrom } from '../../ground/draw.ts';
import { costOf, type Network, never, summedCost } from '../network.ts';
import { improveForest } from './forest.ts';
import { isFew } from './layout.ts';
import type { Keeping } from './pool.ts';

const seed = 41;
const mostRounds = 50;
// Settled by trying on generated car graphs: more found little, fewer left the ceiling high.
/** Beginnings where there are many assignments, and where there are few. */
const manyBeginnings = 12;
const fewBeginnings = 4;
/** Descents from near the best few, and how many variables are moved before each. */
const kicks = 24;
const kickedFrom = 3;
const kickedVariables = 3;
/** Forests moved in vain before one gives up. */
const idleForests = 8;
/** Values of one variable for which the rest is asked, cheapest sums first. */
const mostAsked = 24;

/** Descends from seeded beginnings, then tries every change of one variable on the best. */
export function descend(network: Network, pool: Keeping, isOver: () => boolean): void {
  const isMany = !isFew(network.sizes);
  const beginnings = isMany ? manyBeginnings : fewBeginnings;
  const draw = drawFrom(seed);
  const sums = sumsOf(network);
  const values = new Int32Array(network.sizes.length);
  for (let k = 0; k < beginnings && !isOver(); k++) {
    for (let i = 0; i < values.length; i++) {
      values[i] = k === 0 ? cheapestOf(network.unary[i]!) : draw.below(network.sizes[i]!);
    }
    improve(network, sums, values);
    pool.add(costOf(network, values), values);
  }
  if (isMany) lookRound(network, pool, sums, false, isOver);
}

/** Moves forests of variables, then a few variables at random, of the best found; looks round the best. */
export function descendAgain(network: Network, pool: Keeping, isOver: () => boolean): void {
  const draw = drawFrom(seed + 1);
  const sums = sumsOf(network);
  moveForests(network, pool, sums, draw, isOver);
  for (let k = 0; k < kicks && pool.best.length > 0 && !isOver(); k++) {
    const values = pool.best[draw.below(Math.min(kickedFrom, pool.best.length))]!.values.slice();
    for (let moved = 0; moved < kickedVariables; moved++) {
      const i = draw.below(values.length);
      values[i] = draw.below(network.sizes[i]!);
    }
    improve(network, sums, values);
    pool.add(costOf(network, values), values);
  }
  lookRound(network, pool, sums, true, isOver);
}

/** Moves random forests of variables of the best together for as long as that mends it. */
function moveForests(
  network: Network,
  pool: Keeping,
  sums: Sums,
  draw: Draw,
  isOver: () => boolean,
): void {
  for (let idle = 0; idle < idleForests && pool.best.length > 0 && !isOver(); idle++) {
    const { cost, values: best } = pool.best[0]!;
    const values = best.slice();
    improveForest(network, values, draw);
    improve(network, sums, values);
    const now = costOf(network, values);
    pool.add(now, values);
    if (now < cost) idle = 0;
  }
}

const cheapestOf = (costs: Float64Array): number =>
  costs.reduce((best, cost, a) => (cost < costs[best]! ? a : best), 0);

/** Costs of every value of one variable while the others stay, the rest left out. */
type Sums = (values: Int32Array, i: number) => Float64Array;

function sumsOf(network: Network): Sums {
  const { sizes, unary, edges, things } = network;
  const rows = sizes.map((size) => new Float64Array(size));
  const edgesOf = sizes.map((_, i) => edges.filter((edge) => edge.i === i || edge.j === i));
  const used = new Int32Array(things?.cost.length ?? 0);
  return (values, i) => {
    const row = rows[i]!;
    row.set(unary[i]!);
    for (const { i: one, j: other, table } of edgesOf[i]!) {
      const width = sizes[other]!;
      if (one === i) {
        const b = values[other]!;
        for (let a = 0; a < row.length; a++) row[a]! += table[a * width + b]!;
      } else {
        const start = values[one]! * width;
        for (let a = 0; a < row.length; a++) row[a]! += table[start + a]!;
      }
    }
    if (things === undefined) return row;
    used.fill(0);
    for (const thing of things.always) used[thing] = 1;
    for (let j = 0; j < sizes.length; j++) {
      if (j !== i) for (const thing of things.usedBy[j]![values[j]!]!) used[thing] = 1;
    }
    const room = things.limits.map(({ counts, most }) => {
      let count = 0;
      for (let thing = 0; thing < used.length; thing++) count += used[thing]! * counts[thing]!;
      return most - count;
    });
    for (let a = 0; a < row.length; a++) {
      const fresh = things.usedBy[i]![a]!.filter((thing) => used[thing] === 0);
      for (const thing of fresh) row[a]! += things.cost[thing]!;
      things.limits.forEach(({ counts }, k) => {
        const more = fresh.reduce((sum, thing) => sum + counts[thing]!, 0);
        if (more > 0 && more > room[k]!) row[a]! += never;
      });
    }
    return row;
  };
}

/** Moves one variable after the other to its cheapest value until none moves. */
function improve(network: Network, sums: Sums, values: Int32Array): void {
  const { rest, sizes } = network;
  let isMoved = true;
  for (let round = 0; isMoved && round < mostRounds; round++) {
    isMoved = false;
    for (let i = 0; i < sizes.length; i++) {
      const row = sums(values, i);
      const before = values[i]!;
      const best = cheapestOf(row);
      if (row[best]! < row[before]!) {
        values[i] = best;
        isMoved = true;
      }
    }
  }
  if (rest === undefined) return;
  for (let round = 0, isBetter = true; isBetter && round < mostRounds; round++) {
    isBetter = false;
    for (let i = 0; i < sizes.length; i++) {
      isBetter = improveWithRest(network, sums(values, i), values, i) || isBetter;
    }
  }
}

/** Moves variable i to the value whose sum and rest are least; whether it moved. */
function improveWithRest({ rest }: Network, row: Float64Array, values: Int32Array, i: number) {
  const before = values[i]!;
  let best = before;
  let least = row[before]! + rest!.cost(values);
  const order = Array.from(row.keys()).sort((a, b) => row[a]! - row[b]!);
  for (const a of order.slice(0, mostAsked)) {
    if (row[a]! >= least) break;
    values[i] = a;
    const cost = row[a]! + rest!.cost(values);
    if (cost < least) {
      least = cost;
      best = a;
    }
  }
  values[i] = best;
  return best !== before;
}

/** Tries every change of one variable, and of two that share an edge if `inPairs`, on the best found. */
function lookRound(
  network: Network,
  pool: Keeping,
  sums: Sums,
  inPairs: boolean,
  isOver: () => boolean,
): void {
  for (let again = 0; again < 3 && !isOver(); again++) {
    const best = pool.best[0];
    if (best === undefined) return;
    const values = best.values.slice();
    const rows = network.sizes.map((_, i) => sums(values, i).slice());
    const summed = summedCost(network, values);
    const tryOut = (): void => {
      if (summedCost(network, values) < pool.ceiling) pool.add(costOf(network, values), values);
    };
    rows.forEach((row, i) => {
      const stays = values[i]!;
      let { ceiling } = pool;
      for (let a = 0; a < row.length; a++) {
        if (summed + row[a]! - row[stays]! >= ceiling) continue;
        values[i] = a;
        tryOut();
        ceiling = pool.ceiling;
      }
      values[i] = stays;
    });
    const isSum = inPairs && network.things === undefined && network.rest === undefined;
    if (isSum) lookRoundPairs(network, pool, rows, summed, values, tryOut);
    if (pool.best[0]!.cost >= best.cost) return;
  }
}

function lookRoundPairs(
  { edges, sizes }: Network,
  pool: Keeping,
  rows: readonly Float64Array[],
  summed: number,
  values: Int32Array,
  tryOut: () => void,
): void {
  for (const { i, j, table } of edges) {
    const [stayI, stayJ, width] = [values[i]!, values[j]!, sizes[j]!];
    const [rowI, rowJ] = [rows[i]!, rows[j]!];
    const without = summed - rowI[stayI]! - rowJ[stayJ]! + table[stayI * width + stayJ]!;
    for (let a = 0; a < rowI.length; a++) {
      const withA = without + rowI[a]! - table[a * width + stayJ]!;
      let { ceiling } = pool;
      for (let b = 0; b < rowJ.length; b++) {
        const cost = withA + rowJ[b]! - table[stayI * width + b]! + table[a * width + b]!;
        if (cost >= ceiling) continue;
        values[i] = a;
        values[j] = b;
        tryOut();
        ceiling = pool.ceiling;
      }
    }
    values[i] = stayI;
    values[j] = stayJ;
  }
}
