/** Seeded draws: the right stream, the right moments, the same again for the same seed. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drawFrom } from '../../src/ground/draw.ts';

const table = readFileSync(new URL('../published/sfc32_practrand.csv', import.meta.url), 'utf8');
const published = table
  .split('\n')
  .filter((line) => /^[0-9A-F]{8}$/.test(line))
  .map((line) => Number.parseInt(line, 16));

/** The same generator in exact integers, from its description: oracle for any other seed. */
function plainStream(seed: bigint): () => bigint {
  const low = (value: bigint): bigint => BigInt.asUintN(32, value);
  let [a, b, c, counter] = [0n, low(seed), low(seed >> 32n), 1n];
  const next = (): bigint => {
    const sum = low(a + b + counter);
    counter = low(counter + 1n);
    a = b ^ (b >> 9n);
    b = low(c * 9n); // c + (c << 3)
    c = low(((c << 21n) | (c >> 11n)) + sum);
    return sum;
  };
  for (let k = 0; k < 12; k++) next();
  return next;
}

/** Mean, variance and skewness of `count` draws. */
function momentsOf(draw: () => number, count: number) {
  const values = Array.from({ length: count }, draw);
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const moment = (power: number): number =>
    values.reduce((sum, value) => sum + (value - mean) ** power, 0) / count;
  const variance = moment(2);
  return { values, mean, variance, skewness: moment(3) / variance ** 1.5, fourth: moment(4) };
}

describe('seeded draws', () => {
  it('are the sfc32 stream that PractRand publishes, all sixteen numbers', () => {
    expect(published).toHaveLength(16);
    // Words b = 2 and c = 1 are the low and high half of the seed.
    const draw = drawFrom(2 ** 32 + 2);
    for (let k = 0; k < 3; k++) draw.uniform();
    expect(published.map(() => draw.uniform() * 2 ** 32)).toEqual(published);
  });

  it.each([0, 1, 7, 2031, 0xffffffff, 2 ** 40 + 12345, Number.MAX_SAFE_INTEGER])(
    'agree with the same generator in exact integers, seed %d',
    (seed) => {
      const draw = drawFrom(seed);
      const plain = plainStream(BigInt(seed));
      for (let k = 0; k < 1000; k++) expect(draw.uniform() * 2 ** 32).toBe(Number(plain()));
    },
  );

  it('repeat for the same seed and differ for another', () => {
    const run = (seed: number): number[] => {
      const draw = drawFrom(seed);
      return [draw.uniform(), draw.normal(), draw.normal(), draw.below(1000), draw.normal()];
    };
    expect(run(42)).toEqual(run(42));
    expect(run(42)).not.toEqual(run(43));
  });

  // Derived: a uniform on [0, 1) has mean 1/2, variance 1/12, skewness 0. Standard errors for n
  // draws: mean √(1/12n); variance √((1/80 − 1/144)/n). Bounds are five standard errors.
  it.each([1, 2, 3])('spread evenly between 0 and 1, seed %d', (seed) => {
    const count = 100_000;
    const { values, mean, variance, skewness } = momentsOf(drawFrom(seed).uniform, count);
    expect(Math.min(...values.slice(0, 50_000))).toBeGreaterThanOrEqual(0);
    expect(values.every((value) => value < 1)).toBe(true);
    expect(Math.abs(mean - 1 / 2)).toBeLessThan(5 * Math.sqrt(1 / 12 / count));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(5 * Math.sqrt((1 / 80 - 1 / 144) / count));
    expect(Math.abs(skewness)).toBeLessThan(0.03);
  });

  // Derived: a standard normal has mean 0, variance 1, skewness 0, fourth moment 3, and 68.27 %
  // within one standard deviation. Standard errors: √(1/n), √(2/n), √(6/n), √(96/n), √(pq/n).
  it.each([1, 2, 3])('make normals of the right shape, seed %d', (seed) => {
    const count = 100_000;
    const { values, mean, variance, skewness, fourth } = momentsOf(drawFrom(seed).normal, count);
    const within = values.filter((value) => Math.abs(value) < 1).length / count;
    expect(Math.abs(mean)).toBeLessThan(5 * Math.sqrt(1 / count));
    expect(Math.abs(variance - 1)).toBeLessThan(5 * Math.sqrt(2 / count));
    expect(Math.abs(skewness)).toBeLessThan(5 * Math.sqrt(6 / count));
    expect(Math.abs(fourth - 3)).toBeLessThan(5 * Math.sqrt(96 / count));
    expect(Math.abs(within - 0.682_69)).toBeLessThan(5 * Math.sqrt((0.6827 * 0.3173) / count));
    expect(values.every(Number.isFinite)).toBe(true);
  });

  it('fall on every whole number below the count about equally, never on it', () => {
    const draw = drawFrom(5);
    const counts = new Array<number>(7).fill(0);
    for (let k = 0; k < 70_000; k++) counts[draw.below(7)]! += 1;
    // Derived: chi-square with 6 degrees of freedom exceeds 22.46 once in 1000 (standard table).
    const chiSquare = counts.reduce((sum, seen) => sum + (seen - 10_000) ** 2 / 10_000, 0);
    expect(counts).toHaveLength(7);
    expect(chiSquare).toBeLessThan(22.46);
  });
});
