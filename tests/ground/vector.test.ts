/** Vector arithmetic against textbook identities (derived: linear algebra) and hand-worked cases. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  clamp,
  cross,
  dot,
  interpolate,
  interpolate3,
  lengthOf,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../src/ground/vector.ts';

const metres = fc.double({ min: -100, max: 100, noNaN: true });
const vectors: fc.Arbitrary<Vector3> = fc.tuple(metres, metres, metres);
const seeded = { seed: 2031, numRuns: 300 };

describe('vectors', () => {
  it('obey the right-hand rule', () => {
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
    expect(cross([0, 1, 0], [0, 0, 1])).toEqual([1, 0, 0]);
    expect(cross([0, 0, 1], [1, 0, 0])).toEqual([0, 1, 0]);
  });

  it('measure a 2-3-6 box as 7 across', () => {
    // Derived: 4 + 9 + 36 = 49.
    expect(lengthOf([2, -3, 6])).toBe(7);
    expect(normalize([0, 0, 4])).toEqual([0, 0, 1]);
  });

  it('add and take away again', () => {
    fc.assert(
      fc.property(vectors, vectors, (a, b) => {
        subtract(add(a, b), b).forEach((value, axis) => {
          expect(value).toBeCloseTo(a[axis]!, 9);
        });
      }),
      seeded,
    );
  });

  it('make a cross product square to both, as long as the area they span', () => {
    fc.assert(
      fc.property(vectors, vectors, (a, b) => {
        const c = cross(a, b);
        const size = 1 + lengthOf(a) * lengthOf(b);
        expect(Math.abs(dot(c, a)) / size / (1 + lengthOf(a))).toBeLessThan(1e-12);
        expect(Math.abs(dot(c, b)) / size / (1 + lengthOf(b))).toBeLessThan(1e-12);
        // Lagrange's identity.
        const area = dot(a, a) * dot(b, b) - dot(a, b) ** 2;
        expect(Math.abs(dot(c, c) - area) / size ** 2).toBeLessThan(1e-12);
      }),
      seeded,
    );
  });

  it('become one long when normalised, and nothing stays nothing', () => {
    expect(normalize([0, 0, 0])).toEqual([0, 0, 0]);
    fc.assert(
      fc.property(vectors, (a) => {
        fc.pre(lengthOf(a) > 1e-100);
        expect(lengthOf(normalize(a))).toBeCloseTo(1, 12);
        expect(dot(normalize(a), a)).toBeGreaterThan(0);
      }),
      seeded,
    );
  });

  it('scale their length', () => {
    expect(scale([1, -2, 3], -2)).toEqual([-2, 4, -6]);
  });
});

describe('between two values', () => {
  it('starts at the first, ends at the second, halves the way', () => {
    expect([interpolate(4, 10, 0), interpolate(4, 10, 1), interpolate(4, 10, 0.5)]).toEqual([
      4, 10, 7,
    ]);
    expect(interpolate3([0, 2, 4], [4, 0, -4], 0.25)).toEqual([1, 1.5, 2]);
  });

  it('holds a value inside its bounds', () => {
    expect([clamp(-1, 0, 6), clamp(3, 0, 6), clamp(9, 0, 6)]).toEqual([0, 3, 6]);
  });
});
