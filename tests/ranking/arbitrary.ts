/**
 * Seeded cost networks that look like no car: variables without edges or with one value, values that
 * may not be, several things to a value, things paid for always, several limits, and a rest that is no
 * sum, bounded tightly, loosely or not at all. Costs are whole numbers. Small enough to visit whole.
 */
import { type Draw, drawFrom } from '../../src/ground/draw.ts';
import {
  costOf,
  type Edge,
  type Network,
  never,
  type Rest,
  type Things,
} from '../../src/ranking/network.ts';

/** The network of a seed; a large one has so many assignments that values are swept before the search. */
export function arbitrary(seed: number, isLarge: boolean): Network {
  const draw = drawFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[draw.below(list.length)]!;
  const chance = (share: number): boolean => draw.uniform() < share;
  const most = pick([1, 100, 3000]);
  const cost = (): number => (chance(0.2) ? 0 : Math.round(most * draw.uniform()));
  const forbidden = pick([0, 0, 0.02, 0.1, 0.3]);
  const joined = pick([0, 0.3, 0.7, 1]);
  const sizes = isLarge
    ? Array.from({ length: 4 }, () => 20 + draw.below(3))
    : Array.from({ length: 1 + draw.below(5) }, () => 1 + draw.below(6));
  const unary = sizes.map((size) =>
    Float64Array.from({ length: size }, () => (chance(forbidden / 2) ? never : cost())),
  );
  const edges: Edge[] = [];
  for (let i = 0; i < sizes.length; i++) {
    for (let j = i + 1; j < sizes.length; j++) {
      if (!chance(joined)) continue;
      const cells = { length: sizes[i]! * sizes[j]! };
      const table = Float32Array.from(cells, () => (chance(forbidden) ? never : cost()));
      edges.push({ i, j, table });
    }
  }
  return {
    sizes,
    base: chance(0.5) ? 0 : cost(),
    unary,
    edges,
    ...(chance(0.6) && { things: thingsOf(sizes, draw, cost) }),
    ...(chance(0.5) && { rest: restOf(sizes, draw, cost() + most) }),
  };
}

function thingsOf(sizes: readonly number[], draw: Draw, cost: () => number): Things {
  const things = Array.from({ length: 1 + draw.below(7) }, (_, thing) => thing);
  const some = (share: number): number[] => things.filter(() => draw.uniform() < share);
  return {
    cost: Float64Array.from(things, cost),
    usedBy: sizes.map((size) => Array.from({ length: size }, () => some(0.3))),
    always: some(0.15),
    limits: Array.from({ length: draw.below(3) }, () => {
      const counted = some(0.7);
      return {
        counts: Uint8Array.from(things, (thing) => (counted.includes(thing) ? 1 : 0)),
        most: draw.below(4),
      };
    }),
  };
}

/** Grows as the product of what the values weigh falls; may forbid where that is high. */
function restOf(sizes: readonly number[], draw: Draw, most: number): Rest {
  const weights = sizes.map((size) => Array.from({ length: size }, () => draw.uniform()));
  const heaviest = weights.map((list) => Math.max(...list));
  const open = [undefined, () => 1, (i: number) => heaviest[i]!][draw.below(3)];
  const forbidsAbove = draw.below(3) === 0 ? 0.3 : 1;
  const product = (values: Int32Array): number =>
    weights.reduce((all, list, i) => all * (values[i]! < 0 ? open!(i) : list[values[i]!]!), 1);
  const costOfProduct = (all: number): number => Math.round(most * (1 - all));
  return {
    cost: (values) => {
      const all = product(values);
      return all > forbidsAbove ? never : costOfProduct(all);
    },
    bound: (values) => (open === undefined ? 0 : costOfProduct(product(values))),
  };
}

/** Costs of all assignments that may be, rising, each worked out from the start. */
export function everyCost(network: Network): number[] {
  const { sizes } = network;
  const values = new Int32Array(sizes.length);
  const costs: number[] = [];
  for (;;) {
    const cost = costOf(network, values);
    if (cost < never) costs.push(cost);
    let i = 0;
    while (i < sizes.length && ++values[i]! === sizes[i]) values[i++] = 0;
    if (i === sizes.length) return costs.sort((one, other) => one - other);
  }
}
