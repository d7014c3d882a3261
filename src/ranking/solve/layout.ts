/**
 * A network laid out for searching: every pair table in both orientations, only values that are still
 * alive, and the costs of things shared out among the variables that can use them.
 *
 * A thing of cost c that K variables can use adds c/K to each value that uses it. Whoever uses it first
 * in the search pays the rest, and the others get their share back, so sums stay true and bounds know
 * of things before any is used.
 */
import type { Network } from '../network.ts';

export interface Layout {
  /** Variables that are open, rising; whatever is told of others counts for nothing. */
  readonly open: readonly number[];
  /** Part of the cost that every assignment has. */
  readonly base: number;
  /** Number of values of each variable that are alive. */
  readonly sizes: readonly number[];
  /** Value of the network behind value a of variable i at [i][a]. */
  readonly origin: readonly Int32Array[];
  readonly unary: readonly Float64Array[];
  /** Costs of i with j at [i][j][a × sizes[j] + b]; undefined where they share no edge. */
  readonly tables: (Float32Array | undefined)[][];
  /** Open variables that share an edge with each. */
  readonly neighbours: readonly (readonly number[])[];
  /** Share of each thing's cost that its users carry already. */
  readonly shares: Float64Array;
}

/** The network as it stands, nothing left out. */
export function layoutOf(network: Network): Layout {
  const { base, sizes, edges } = network;
  const shares = sharesOf(network);
  const tables: (Float32Array | undefined)[][] = sizes.map(() => sizes.map(() => undefined));
  const neighbours: number[][] = sizes.map(() => []);
  for (const { i, j, table } of edges) {
    tables[i]![j] = table;
    tables[j]![i] = transposed(table, sizes[i]!, sizes[j]!);
    neighbours[i]!.push(j);
    neighbours[j]!.push(i);
  }
  const carried = (i: number, a: number): number =>
    network.things?.usedBy[i]?.[a]?.reduce((sum, thing) => sum + shares[thing]!, 0) ?? 0;
  const unary = network.unary.map((costs, i) =>
    Float64Array.from(costs, (cost, a) => cost + carried(i, a)),
  );
  return {
    open: Array.from(sizes.keys()),
    base,
    sizes: [...sizes],
    origin: sizes.map((size) => Int32Array.from({ length: size }, (_, a) => a)),
    unary,
    tables,
    neighbours,
    shares,
  };
}

/** Values left of some open variables, and what they cost beside `certain`. */
export interface Left {
  /** The first `counts[i]` of `lists[i]` are alive, positions in the layout; costs at the same places. */
  readonly counts: Int32Array;
  readonly lists: readonly Int32Array[];
  readonly costs: readonly Float64Array[];
}

function sharesOf({ things }: Network): Float64Array {
  if (things === undefined) return new Float64Array(0);
  const { cost, usedBy, always } = things;
  const users = new Int32Array(cost.length);
  for (const values of usedBy) for (const thing of new Set(values.flat())) users[thing]!++;
  const shares = cost.map((one, thing) => (users[thing]! > 0 ? one / users[thing]! : 0));
  for (const thing of always) shares[thing] = 0;
  return shares;
}

function transposed(table: Float32Array, rows: number, columns: number): Float32Array {
  const turned = new Float32Array(table.length);
  for (let a = 0; a < rows; a++) {
    for (let b = 0; b < columns; b++) turned[b * rows + a] = table[a * columns + b]!;
  }
  return turned;
}

/** Assignments up to which one search is quicker than any preparation; settled by trying. */
const fewAssignments = 1e5;

/** Whether variables with so many values each have few assignments. */
export const isFew = (sizes: readonly number[]): boolean =>
  sizes.reduce((product, size) => product * size, 1) <= fewAssignments;
