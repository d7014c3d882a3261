/**
 * A network with only some values of each variable, and what is kept of the whole seen from there.
 * `origin[i][a]` is the value of the whole behind value a of variable i.
 */
import type { Assigned, Network, Rest, Things } from '../network.ts';
import type { Keeping } from './pool.ts';

type Origin = readonly Int32Array[];

/** The same costs with these values alone. */
export function networkWithin(network: Network, origin: Origin): Network {
  const { things, rest } = network;
  const pick = <T>(list: readonly T[], i: number): T[] =>
    Array.from(origin[i]!, (value) => list[value]!);
  return {
    base: network.base,
    sizes: origin.map((values) => values.length),
    unary: network.unary.map((unary, i) => Float64Array.from(origin[i]!, (value) => unary[value]!)),
    edges: network.edges.map(({ i, j, table }) => {
      const [rows, columns, width] = [origin[i]!, origin[j]!, network.sizes[j]!];
      const kept = new Float32Array(rows.length * columns.length);
      let at = 0;
      for (const row of rows)
        for (const column of columns) kept[at++] = table[row * width + column]!;
      return { i, j, table: kept };
    }),
    ...(things && { things: { ...things, usedBy: things.usedBy.map(pick) } satisfies Things }),
    ...(rest && { rest: restWithin(rest, origin) }),
  };
}

function restWithin(rest: Rest, origin: Origin): Rest {
  const whole = new Int32Array(origin.length);
  const put = (values: Int32Array): Int32Array => {
    for (let i = 0; i < whole.length; i++) whole[i] = values[i]! < 0 ? -1 : origin[i]![values[i]!]!;
    return whole;
  };
  return { cost: (values) => rest.cost(put(values)), bound: (values) => rest.bound(put(values)) };
}

/** A pool of the whole network as one of the values within: others are not seen from there. */
export function poolWithin(pool: Keeping, origin: Origin): Keeping {
  const places = origin.map((values) => new Map(Array.from(values, (value, a) => [value, a])));
  const inside = ({ values, cost }: Assigned): Assigned[] => {
    const own = Int32Array.from(values, (value, i) => places[i]!.get(value) ?? -1);
    return own.includes(-1) ? [] : [{ values: own, cost }];
  };
  return {
    get best() {
      return pool.best.flatMap(inside);
    },
    get ceiling() {
      return pool.ceiling;
    },
    add: (cost, values) =>
      pool.add(
        cost,
        Int32Array.from(values, (a, i) => origin[i]![a]!),
      ),
  };
}
