/**
 * Every assignment of a network in turn, costs added step by step: the cheapest of them, nothing
 * bounded, nothing left out. For networks small enough to visit whole, and to hold others against.
 */
import { type Assigned, costOf, type Network } from './network.ts';
import { Pool } from './solve/pool.ts';

export interface Visited {
  /** Cheapest first. */
  readonly best: readonly Assigned[];
  readonly visited: number;
}

/** The `count` cheapest of all assignments. */
export function cheapest(network: Network, count: number): Visited {
  const { sizes, unary, edges, things, rest } = network;
  const pool = new Pool(count);
  const values = new Int32Array(sizes.length);
  const last = sizes.length - 1;
  const isSum = things === undefined && rest === undefined;
  /** Tables with variables that stand before each. */
  const before = sizes.map((_, j) => edges.filter((edge) => Math.max(edge.i, edge.j) === j));
  const costs = sizes.map((size) => new Float64Array(size));
  let visited = 0;
  const visit = (i: number, sum: number): void => {
    const row = costs[i]!;
    const own = unary[i]!;
    for (let a = 0; a < row.length; a++) row[a] = sum + own[a]!;
    for (const edge of before[i]!)
      addRow(row, edge.table, edge.i === i ? values[edge.j]! : values[edge.i]!, edge.i === i);
    if (i < last) {
      for (let a = 0; a < row.length; a++) {
        values[i] = a;
        visit(i + 1, row[a]!);
      }
      return;
    }
    visited += row.length;
    let { ceiling } = pool;
    for (let a = 0; a < row.length; a++) {
      // Things and rest only add.
      if (row[a]! >= ceiling) continue;
      values[i] = a;
      pool.add(isSum ? row[a]! : costOf(network, values), values);
      ceiling = pool.ceiling;
    }
  };
  if (sizes.every((size) => size > 0)) {
    if (sizes.length === 0) pool.add(costOf(network, values), values);
    else visit(0, network.base);
  }
  return { best: pool.best, visited };
}

/** Adds the row of a table that belongs to a value of the other variable. */
function addRow(row: Float64Array, table: Float32Array, other: number, isFirst: boolean): void {
  if (isFirst) {
    const width = table.length / row.length;
    for (let a = 0; a < row.length; a++) row[a]! += table[a * width + other]!;
  } else {
    const start = other * row.length;
    for (let a = 0; a < row.length; a++) row[a]! += table[start + a]!;
  }
}
