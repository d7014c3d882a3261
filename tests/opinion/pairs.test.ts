/** Pairs: a leader after one pair fewer than alternatives, never the same pair twice. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pair } from '../../src/opinion/answer.ts';
import { leaderOf, nextPair, pairsLeft, placesOf } from '../../src/opinion/pairs.ts';

const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

/** A viewer who likes letters in some order, and sees them in another. */
const viewer = fc.integer({ min: 1, max: 26 }).chain((count) =>
  fc.record({
    order: fc.shuffledSubarray(letters.slice(0, count), { minLength: count }),
    liking: fc.shuffledSubarray(letters.slice(0, count), { minLength: count }),
  }),
);

/** Every pair that is put to a viewer who always answers by liking. */
function putTo(order: readonly string[], liking: readonly string[], places: number): Pair[] {
  const pairs: Pair[] = [];
  for (;;) {
    const next = nextPair(order, pairs, places);
    if (next === undefined) return pairs;
    const [one, other] = next;
    const likesOne = liking.indexOf(one) < liking.indexOf(other);
    pairs.push(likesOne ? { chosen: one, over: other } : { chosen: other, over: one });
    if (pairs.length > 400) throw new Error('no end');
  }
}

describe('pairs', () => {
  it('find the favourite of any viewer in one pair fewer than there are alternatives', () => {
    fc.assert(
      fc.property(viewer, ({ order, liking }) => {
        const pairs = putTo(order, liking, 1);
        expect(pairs).toHaveLength(order.length - 1);
        expect(leaderOf(order, pairs)).toBe(liking[0]);
        pairs.forEach((_pair, at) => {
          expect(pairsLeft(order, pairs.slice(0, at))).toBe(pairs.length - at);
        });
        expect(pairsLeft(order, pairs)).toBe(0);
      }),
      { seed: 31, numRuns: 500 },
    );
  });

  it('find as many places as asked, putting no pair twice and none whose answer is known', () => {
    fc.assert(
      fc.property(viewer, fc.integer({ min: 1, max: 26 }), ({ order, liking }, places) => {
        const pairs = putTo(order, liking, places);
        expect(placesOf(order, pairs, places)).toEqual(liking.slice(0, places));
        const keys = pairs.map(({ chosen, over }) => [chosen, over].sort().join(''));
        expect(new Set(keys).size).toBe(keys.length);
      }),
      { seed: 32, numRuns: 60 },
    );
  });

  it('find the runner-up among those that met the favourite (Carroll 1883, on prizes of lawn tennis; from memory)', () => {
    fc.assert(
      fc.property(viewer, ({ order, liking }) => {
        const first = putTo(order, liking, 1);
        const metFavourite = first.filter(({ chosen }) => chosen === liking[0]).length;
        // k that lost to the favourite alone need k − 1 pairs more.
        const more = putTo(order, liking, 2).length - first.length;
        expect(more).toBe(Math.max(0, metFavourite - 1));
      }),
      { seed: 33, numRuns: 300 },
    );
  });

  it('put the one that won on either side in turn', () => {
    const pairs = putTo(['C', 'A', 'B', 'D'], ['C', 'A', 'B', 'D'], 1);
    const sides = pairs.map((_pair, at) => nextPair(['C', 'A', 'B', 'D'], pairs.slice(0, at)));
    expect(sides).toEqual([
      ['C', 'A'],
      ['B', 'C'],
      ['C', 'D'],
    ]);
  });

  it('come to an end and name somebody even where the answers go in a circle', () => {
    const circle = [
      { chosen: 'A', over: 'B' },
      { chosen: 'B', over: 'C' },
      { chosen: 'C', over: 'A' },
    ];
    expect(nextPair(['A', 'B', 'C'], circle, 3)).toBeUndefined();
    expect(leaderOf(['A', 'B', 'C'], circle)).toBe('A');
    expect(leaderOf([], [])).toBeUndefined();
  });
});
