/**
 * Many variables moved at once: of those whose edges among each other form no cycle all are chosen
 * together, exactly, by dynamic programming from the leaves of the forest to its roots, while the
 * others stay. Things and rest are left out, so whoever asks looks at what came out.
 */
import type { Draw } from '../../ground/draw.ts';
import type { Edge, Network } from '../network.ts';

/** A variable of the forest with the edge to its parent; none for a root. */
interface Branch {
  readonly i: number;
  readonly parent: number;
  readonly edge: Edge | undefined;
}

/** Sets a random forest of variables to its cheapest values, given the others. */
export function improveForest(network: Network, values: Int32Array, draw: Draw): void {
  const isFree = new Uint8Array(values.length);
  const branches = forestFrom(network, draw, isFree);
  const sums = network.unary.map((unary, i) => (isFree[i] === 1 ? unary.slice() : unary));
  for (const edge of network.edges) {
    if (isFree[edge.i] === 1 && isFree[edge.j] === 0)
      addColumn(sums[edge.i]!, edge, values[edge.j]!);
    if (isFree[edge.j] === 1 && isFree[edge.i] === 0) addRow(sums[edge.j]!, edge, values[edge.i]!);
  }
  const width = (edge: Edge): number => sums[edge.j]!.length;
  for (let k = branches.length - 1; k >= 0; k--) {
    const { i, parent, edge } = branches[k]!;
    if (edge !== undefined) addLeast(sums[parent]!, sums[i]!, edge, edge.i === parent);
  }
  for (const { i, parent, edge } of branches) {
    const sum = sums[i]!;
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let a = 0; a < sum.length; a++) {
      const pair =
        edge === undefined
          ? 0
          : edge.i === i
            ? edge.table[a * width(edge) + values[parent]!]!
            : edge.table[values[parent]! * width(edge) + a]!;
      if (sum[a]! + pair < least) {
        least = sum[a]! + pair;
        best = a;
      }
    }
    values[i] = best;
  }
}

/** A random forest, parents before children; marks its variables. */
function forestFrom({ sizes, edges }: Network, draw: Draw, isFree: Uint8Array): Branch[] {
  const tree = Int32Array.from(sizes.keys());
  const rootOf = (i: number): number => (tree[i] === i ? i : rootOf(tree[i]!));
  const taken: Edge[] = [];
  for (const i of shuffled(sizes.length, draw)) {
    const toFree = edges.filter(
      (edge) => (edge.i === i && isFree[edge.j] === 1) || (edge.j === i && isFree[edge.i] === 1),
    );
    const roots = toFree.map((edge) => rootOf(edge.i === i ? edge.j : edge.i));
    if (new Set(roots).size < roots.length) continue;
    isFree[i] = 1;
    for (const root of roots) tree[root] = i;
    taken.push(...toFree);
  }
  const branches: Branch[] = [];
  const isPlaced = new Uint8Array(sizes.length);
  const place = (i: number, parent: number, edge: Edge | undefined): void => {
    isPlaced[i] = 1;
    branches.push({ i, parent, edge });
    for (const next of taken) {
      const other = next.i === i ? next.j : next.j === i ? next.i : -1;
      if (other >= 0 && isPlaced[other] === 0) place(other, i, next);
    }
  };
  for (let i = 0; i < sizes.length; i++)
    if (isFree[i] === 1 && isPlaced[i] === 0) place(i, -1, undefined);
  return branches;
}

function shuffled(count: number, draw: Draw): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let k = count - 1; k > 0; k--) {
    const other = draw.below(k + 1);
    [order[k], order[other]] = [order[other]!, order[k]!];
  }
  return order;
}

/** Adds the column of a table that belongs to value b. */
function addColumn(sum: Float64Array, { table }: Edge, b: number): void {
  const width = table.length / sum.length;
  for (let a = 0; a < sum.length; a++) sum[a]! += table[a * width + b]!;
}

/** Adds the row of a table that belongs to value a. */
function addRow(sum: Float64Array, { table }: Edge, a: number): void {
  for (let b = 0; b < sum.length; b++) sum[b]! += table[a * sum.length + b]!;
}

/** Adds to each value of a parent the least that a child and their table ask. */
function addLeast(
  parent: Float64Array,
  child: Float64Array,
  { table }: Edge,
  parentIsRow: boolean,
): void {
  if (parentIsRow) {
    for (let a = 0; a < parent.length; a++) {
      const row = a * child.length;
      let least = Number.POSITIVE_INFINITY;
      for (let b = 0; b < child.length; b++) {
        const cost = table[row + b]! + child[b]!;
        if (cost < least) least = cost;
      }
      parent[a]! += least;
    }
    return;
  }
  const least = new Float64Array(parent.length).fill(Number.POSITIVE_INFINITY);
  for (let b = 0; b < child.length; b++) {
    const row = b * parent.length;
    const own = child[b]!;
    for (let a = 0; a < parent.length; a++) {
      const cost = table[row + a]! + own;
      if (cost < least[a]!) least[a] = cost;
    }
  }
  for (let a = 0; a < parent.length; a++) parent[a]! += least[a]!;
}
