/**
 * What has to be chosen, and what does each choice cost? A cost network [Cooper2010]: variables that
 * each take one of their values, costs of single values and of pairs, costs of things used by several
 * (counted once), limits on such things, and a rest that is no sum.
 *
 * Costs are finite numbers ≥ 0 in one unit throughout; `never` forbids. Variables and values are
 * counted from 0.
 */

/** Cost of what may not be. Sums of real costs stay far below it. */
export const never = 1e9;

/** Costs of two variables together, `i < j`. */
export interface Edge {
  readonly i: number;
  readonly j: number;
  /** Cost of values a and b at [a × sizes[j] + b]. */
  readonly table: Float32Array;
}

/** At most so many of some things. */
export interface Limit {
  /** Whether it counts thing t, at [t]. */
  readonly counts: Uint8Array;
  readonly most: number;
}

/** Things that values use, such as bottles: however many use one, it is paid for once. */
export interface Things {
  /** Cost of the first use of thing t at [t]. */
  readonly cost: Float64Array;
  /** Things used by value a of variable i at [i][a], each once. */
  readonly usedBy: readonly (readonly (readonly number[])[])[];
  /** Things that are used and paid for whatever is chosen; limits count them. */
  readonly always: readonly number[];
  readonly limits: readonly Limit[];
}

/** Costs that are no sum over values, pairs and things. */
export interface Rest {
  /** Cost of a complete assignment; `never` or more where it may not be. */
  cost(values: Int32Array): number;
  /** Never more than `cost` of any way to complete this; -1 stands for a value not chosen yet. */
  bound(values: Int32Array): number;
}

export interface Network {
  /** Number of values of each variable. */
  readonly sizes: readonly number[];
  /** Cost of every assignment. */
  readonly base: number;
  /** Cost of value a of variable i at [i][a]. */
  readonly unary: readonly Float64Array[];
  /** At most one for each pair of variables. */
  readonly edges: readonly Edge[];
  readonly things?: Things;
  readonly rest?: Rest;
}

/** A complete assignment and what it costs. */
export interface Assigned {
  readonly values: Int32Array;
  readonly cost: number;
}

/** Cost of a complete assignment, rest included; `never` or more where it may not be. */
export function costOf(network: Network, values: Int32Array): number {
  const cost = summedCost(network, values);
  return cost >= never || network.rest === undefined ? cost : cost + network.rest.cost(values);
}

/** Cost of a complete assignment without the rest. */
export function summedCost({ base, unary, edges, sizes, things }: Network, values: Int32Array) {
  let cost = base;
  for (let i = 0; i < values.length; i++) cost += unary[i]![values[i]!]!;
  for (const { i, j, table } of edges) cost += table[values[i]! * sizes[j]! + values[j]!]!;
  return things === undefined || cost >= never ? cost : cost + thingsCost(things, values);
}

/** Cost of the things that an assignment uses beside those used always. */
function thingsCost({ cost, usedBy, always, limits }: Things, values: Int32Array): number {
  const used = new Set(always);
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    for (const thing of usedBy[i]![values[i]!]!) {
      if (used.has(thing)) continue;
      used.add(thing);
      sum += cost[thing]!;
    }
  }
  for (const { counts, most } of limits) {
    let count = 0;
    for (const thing of used) count += counts[thing]!;
    if (count > most) return never;
  }
  return sum;
}
