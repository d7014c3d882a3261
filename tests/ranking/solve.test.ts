import { describe, expect, it } from 'vitest';
import { drawFrom } from '../../src/ground/draw.ts';
import { cheapest } from '../../src/ranking/enumerate.ts';
import { costOf, type Network, never } from '../../src/ranking/network.ts';
import { layoutOf } from '../../src/ranking/solve/layout.ts';
import { Pool } from '../../src/ranking/solve/pool.ts';
import { search } from '../../src/ranking/solve/search.ts';
import { best } from '../../src/ranking/solve/solve.ts';
import { arbitrary, everyCost } from './arbitrary.ts';
import { generated, networkOf, type Shape } from './generated.ts';

/** Costs are whole numbers: whatever is cheaper is so by one at least. */
const tolerance = 0.9;
const costs = (found: { best: readonly { cost: number }[] }): number[] =>
  found.best.map(({ cost }) => cost);

function shapeOf(seed: number): Shape {
  const draw = drawFrom(900 + seed);
  const size = draw.below(3);
  return {
    parts: [4, 5, 6][size]!,
    candidates: [8, 6, 4][size]!,
    graph: (['car', 'fan', 'full'] as const)[draw.below(3)]!,
    unary: (['strong', 'mid', 'weak'] as const)[draw.below(3)]!,
    withRules: draw.below(4) > 0,
    withGlobals: draw.below(2) === 1,
    finishes: 12,
    seed,
  };
}

describe('the cheapest of a cost network', () => {
  // Oracle: every assignment visited, itself held against plain objects in enumerate.test.ts.
  it('are the first twenty of all, rules, bottles and echo included, on 240 seeded ones', () => {
    for (let seed = 0; seed < 240; seed++) {
      const network = networkOf(generated(shapeOf(seed)));
      const found = best(network, { count: 20, tolerance });
      expect(found.isProved, `seed ${seed}`).toBe(true);
      expect(costs(found), `seed ${seed}`).toEqual(costs(cheapest(network, 20)));
      for (const { values, cost } of found.best) expect(costOf(network, values)).toBe(cost);
      expect(new Set(found.best.map(({ values }) => values.join())).size).toBe(found.best.length);
    }
  });

  it('are the same where many are open and sweeping begins anew beneath choices', () => {
    // Five variables of 24 make eight million: beyond what is searched without preparation.
    for (let seed = 0; seed < 6; seed++) {
      const network = networkOf(
        generated({ parts: 5, candidates: 24, graph: 'full', unary: 'weak', seed }),
      );
      const found = best(network, { count: 20, tolerance });
      expect(found.isProved).toBe(true);
      expect(costs(found)).toEqual(costs(cheapest(network, 20)));
    }
  });

  // Oracle: every assignment, its cost worked out from the start.
  it('are the first of all, and bounded from both sides when stopped, on 300 of no pattern', () => {
    let stopped = 0;
    for (let seed = 0; seed < 300; seed++) {
      const network = arbitrary(seed, seed % 20 === 0);
      const all = everyCost(network);
      const count = [1, 3, 20, 200][seed % 4]!;
      const found = best(network, { count, tolerance });
      expect(found.isProved, `seed ${seed}`).toBe(true);
      expect(costs(found), `seed ${seed}`).toEqual(all.slice(0, count));
      expect(found.best.map(({ values }) => costOf(network, values))).toEqual(costs(found));
      const optimum = all[0] ?? never;
      let left = seed % 12;
      let told = 0;
      const early = best(network, {
        count,
        tolerance,
        isOver: () => left-- <= 0,
        tell: ({ bound }) => {
          told = Math.max(told, bound);
        },
      });
      expect(Math.max(told, early.bound), `seed ${seed}`).toBeLessThanOrEqual(optimum);
      if (early.isProved) expect(costs(early), `seed ${seed}`).toEqual(all.slice(0, count));
      else stopped++;
      for (const cost of costs(early)) expect(cost).toBeGreaterThanOrEqual(optimum);
    }
    expect(stopped).toBeGreaterThan(20);
  });

  it('stand in order of their values where they cost the same', () => {
    // Derived: any two of three ones cost 2, and come as 011, 101, 110.
    const ones = Array.from({ length: 3 }, () => Float64Array.of(0, 1));
    const network: Network = { sizes: [2, 2, 2], base: 0, unary: ones, edges: [] };
    const found = best(network, { count: 8, tolerance });
    expect(found.best.map(({ values }) => values.join(''))).toEqual([
      '000',
      '001',
      '010',
      '100',
      '011',
      '101',
      '110',
      '111',
    ]);
  });

  it('do not depend on the order of variables and values', () => {
    for (let seed = 0; seed < 16; seed++) {
      const network = networkOf(
        generated({
          parts: 7,
          candidates: 16,
          graph: 'car',
          unary: 'mid',
          withGlobals: seed % 4 === 0,
          seed,
        }),
      );
      const found = best(network, { count: 10, tolerance });
      expect(found.best.length).toBeGreaterThan(0);
      const turned = best(permuted(network, seed), { count: 10, tolerance });
      expect(costs(turned)).toEqual(costs(found));
    }
  });

  it('begin with the same ones when more are wanted', () => {
    const network = networkOf(
      generated({ parts: 8, candidates: 20, graph: 'full', unary: 'mid', seed: 3 }),
    );
    const few = costs(best(network, { count: 5, tolerance }));
    expect(costs(best(network, { count: 50, tolerance })).slice(0, 5)).toEqual(few);
  });

  it('cost more by what every assignment costs', () => {
    const network = networkOf(
      generated({ parts: 6, candidates: 12, graph: 'car', unary: 'weak', seed: 5 }),
    );
    const dearer = best({ ...network, base: network.base + 7 }, { count: 10, tolerance });
    const found = best(network, { count: 10, tolerance });
    expect(costs(dearer)).toEqual(costs(found).map((cost) => cost + 7));
  });

  it('are bounded from both sides wherever the search is stopped', () => {
    const network = networkOf(
      generated({ parts: 8, candidates: 30, graph: 'full', unary: 'mid', seed: 2 }),
    );
    const [optimum] = costs(best(network, { count: 1, tolerance }));
    let unproved = 0;
    for (const looks of [0, 1, 2, 4, 8, 16, 32, 64]) {
      let left = looks;
      let bound = 0;
      const found = best(network, {
        count: 20,
        tolerance,
        isOver: () => left-- <= 0,
        tell: (soFar) => {
          bound = Math.max(bound, soFar.bound);
        },
      });
      if (!found.isProved) unproved++;
      expect(bound).toBeLessThanOrEqual(optimum!);
      expect(found.bound).toBeLessThanOrEqual(optimum!);
      if (found.best.length > 0) expect(found.best[0]!.cost).toBeGreaterThanOrEqual(optimum!);
    }
    expect(unproved).toBeGreaterThan(0);
  });

  it('are bounded by what the search has not tried, whenever it is stopped', () => {
    // Derived: forty variables of costs 0 and 7 cost nothing at best, and 7 with any one changed. There
    // are more of them than steps between two looks, so it is stopped on its first way down.
    const forty = Array.from({ length: 40 }, () => Float64Array.of(0, 7));
    const network: Network = { sizes: forty.map(() => 2), base: 0, unary: forty, edges: [] };
    const stoppedAfter = (looks: number) => {
      const pool = new Pool(2);
      let left = looks;
      const control = { tolerance, isOver: () => left-- <= 0, tell: () => {} };
      return { pool, ...search(network, layoutOf(network), pool, control) };
    };
    const early = stoppedAfter(0);
    expect(early).toMatchObject({ isWhole: false, bound: 0 });
    expect(early.pool.best).toEqual([]);
    const whole = stoppedAfter(100);
    expect(whole).toMatchObject({ isWhole: true, bound: 7 });
    expect(costs(whole.pool)).toEqual([0, 7]);
  });

  it('are none where nothing may be, which is proved', () => {
    const network = networkOf(
      generated({ parts: 4, candidates: 4, graph: 'car', unary: 'mid', seed: 1 }),
    );
    const stuck: Network = { ...network, rest: { cost: () => 1e9, bound: () => 1e9 } };
    expect(best(stuck, { count: 5, tolerance })).toMatchObject({ best: [], isProved: true });
    const empty: Network = { sizes: [0], base: 0, unary: [new Float64Array(0)], edges: [] };
    expect(best(empty, { count: 5 })).toMatchObject({ best: [], isProved: true });
  });

  it('are one where nothing is open', () => {
    const closed: Network = { sizes: [], base: 1.5, unary: [], edges: [] };
    expect(best(closed, { count: 5 })).toMatchObject({ best: [{ cost: 1.5 }], isProved: true });
  });
});

/** The same network with variables and values in another order. */
function permuted(network: Network, seed: number): Network {
  const draw = drawFrom(seed);
  const shuffle = (count: number): number[] => {
    const order = Array.from({ length: count }, (_, k) => k);
    for (let k = count - 1; k > 0; k--) {
      const other = draw.below(k + 1);
      [order[k], order[other]] = [order[other]!, order[k]!];
    }
    return order;
  };
  /** Old variable at each new place, and old value at each new place of it. */
  const from = shuffle(network.sizes.length);
  const values = network.sizes.map(shuffle);
  const sizes = from.map((i) => network.sizes[i]!);
  const { things, rest } = network;
  const whole = new Int32Array(sizes.length);
  const before = (now: Int32Array): Int32Array => {
    now.forEach((value, k) => {
      whole[from[k]!] = value < 0 ? -1 : values[from[k]!]![value]!;
    });
    return whole;
  };
  return {
    ...(things && {
      things: {
        ...things,
        usedBy: from.map((i) => values[i]!.map((value) => things.usedBy[i]![value]!)),
      },
    }),
    ...(rest && {
      rest: {
        cost: (now: Int32Array) => rest.cost(before(now)),
        bound: (now: Int32Array) => rest.bound(before(now)),
      },
    }),
    base: network.base,
    sizes,
    unary: from.map((i) => Float64Array.from(values[i]!, (a) => network.unary[i]![a]!)),
    edges: network.edges.map((edge) => {
      const [one, other] = [from.indexOf(edge.i), from.indexOf(edge.j)];
      const [i, j] = one < other ? [one, other] : [other, one];
      const table = new Float32Array(edge.table.length);
      values[from[i]!]!.forEach((p, a) => {
        values[from[j]!]!.forEach((q, b) => {
          const [first, second] = one < other ? [p, q] : [q, p];
          table[a * sizes[j]! + b] = edge.table[first * network.sizes[edge.j]! + second]!;
        });
      });
      return { i, j, table };
    }),
  };
}
