/** Each viewer's order: nothing lost, every order as likely as any other, the same for one seed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shuffled } from '../../src/opinion/order.ts';

describe('the order of a viewer', () => {
  it('has the same letters, and is the same for the same seed', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string(), { maxLength: 26 }),
        fc.nat(2 ** 32 - 1),
        (letters, seed) => {
          const order = shuffled(letters, seed);
          expect([...order].sort()).toEqual([...letters].sort());
          expect(shuffled(letters, seed)).toEqual(order);
        },
      ),
      { seed: 64, numRuns: 300 },
    );
  });

  it.each([
    ['one after the other', (at: number) => at],
    ['far apart', (at: number) => Math.imul(at, 0x9e3779b1) >>> 0],
    ['that differ in their upper bits only', (at: number) => (at << 16) >>> 0],
  ])('is as likely as any other over seeds %s', (_name, seedAt) => {
    const draws = 24_000;
    const counts = new Map<string, number>();
    for (let at = 0; at < draws; at++) {
      const order = shuffled(['A', 'B', 'C', 'D'], seedAt(at)).join('');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(24);
    const expected = draws / 24;
    const chiSquare = [...counts.values()].reduce(
      (sum, count) => sum + (count - expected) ** 2 / expected,
      0,
    );
    // Upper 0.1 % point of chi-square with 23 degrees of freedom: 49.728 (tables of the
    // distribution in any handbook of statistics; from memory). Too even is as wrong: the lower
    // 0.1 % point is 7.529.
    expect(chiSquare).toBeLessThan(49.728);
    expect(chiSquare).toBeGreaterThan(7.529);
  });

  it('would be caught if it favoured what comes first', () => {
    // The well-known faulty shuffle, which swaps with any place: some orders come twice as often.
    const faulty = (letters: readonly string[], chance: () => number): string => {
      const order = [...letters];
      for (let at = 0; at < order.length; at++) {
        const other = Math.floor(chance() * order.length);
        [order[at], order[other]] = [order[other]!, order[at]!];
      }
      return order.join('');
    };
    let state = 1;
    // The minimal standard generator of Park and Miller (1988).
    const chance = (): number => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
    const counts = new Map<string, number>();
    for (let at = 0; at < 24_000; at++) {
      const order = faulty(['A', 'B', 'C', 'D'], chance);
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    const chiSquare = [...counts.values()].reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    expect(chiSquare).toBeGreaterThan(49.728);
  });
});
