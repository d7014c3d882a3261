import { describe, expect, it } from 'vitest';
import { cheapest } from '../../src/ranking/enumerate.ts';
import { generated, networkOf, type Shape } from './generated.ts';
import { plainCosts } from './plain.ts';

const shapes: Shape[] = Array.from({ length: 24 }, (_, seed) => ({
  parts: 4,
  candidates: 4,
  graph: (['car', 'fan', 'full'] as const)[seed % 3]!,
  unary: (['strong', 'mid', 'weak'] as const)[(seed >> 1) % 3]!,
  withGlobals: seed % 2 === 1,
  finishes: 9,
  seed,
}));

describe('visiting every combination', () => {
  // Oracle: colour objects and culori's CIEDE2000 for every pair, no tables.
  it.each(shapes)('finds the costs that plain objects have: %o', (shape) => {
    const instance = generated(shape);
    const { best, visited } = cheapest(networkOf(instance), 1000);
    expect(visited).toBe(4 ** 4);
    expect(best.map(({ cost }) => cost)).toEqual(plainCosts(instance));
  });

  it('holds nothing where a variable has no value, and one where there is no variable', () => {
    const empty = { base: 2, unary: [], edges: [], sizes: [] };
    expect(cheapest(empty, 5).best.map(({ cost }) => cost)).toEqual([2]);
    const stuck = { ...empty, sizes: [0], unary: [new Float64Array(0)] };
    expect(cheapest(stuck, 5).best).toEqual([]);
  });
});
