/**
 * From a surface's spectrum to its colour. Parents: derived (a perfect white is white, an even
 * grey has the lightness of its Y), oracle (plain 5 nm sums over the CIE tables in
 * tests/published) and published (CIE 015:2018 white points, through those sums).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/difference.ts';
import type { LightId } from '../../src/colour/illuminant.ts';
import { lightIds, whiteOf } from '../../src/colour/illuminant.ts';
import { labFromXyz } from '../../src/colour/lab.ts';
import { resampled } from '../../src/colour/resample.ts';
import {
  bandCount,
  bandsNm,
  flatReflectance,
  labsFromReflectances,
  reflectanceFromTable,
  xyzFromReflectance,
} from '../../src/colour/spectrum.ts';
import { InputError } from '../../src/ground/problem.ts';
import { asLab, asReflectance, asXyz, type Reflectance, type Xyz } from '../../src/ground/unit.ts';
import { numberIn, numbersIn, rowsOf } from '../published/table.ts';

const seeded = { seed: 41, numRuns: 200 };
const anySpectrum = fc
  .array(fc.double({ min: 0, max: 1, noNaN: true }), {
    minLength: bandCount,
    maxLength: bandCount,
  })
  .map((bands) => asReflectance(Float64Array.from(bands)));

/** Sums over the CIE tables at 5 nm, 81 bands, reflectance drawn straight between 10 nm bands. */
const observer = rowsOf('cie1931_2deg_cmf_5nm').map((row) =>
  numbersIn(row, ['xbar', 'ybar', 'zbar']),
);
const lamps = rowsOf('cie_illuminants_5nm');
function plainSum(reflectance: Reflectance, light: LightId): Xyz {
  const sums = [0, 0, 0];
  let white = 0;
  observer.forEach((bars, index) => {
    const low = reflectance[index >> 1]!;
    const value = index % 2 === 0 ? low : (low + reflectance[(index >> 1) + 1]!) / 2;
    const power = numberIn(lamps[index]!, light);
    white += power * bars[1]!;
    bars.forEach((bar, axis) => {
      sums[axis]! += power * bar * value;
    });
  });
  return asXyz(sums[0]! / white, sums[1]! / white, sums[2]! / white);
}

describe('the colour of a surface under a light', () => {
  for (const light of lightIds) {
    it(`a perfect white is Lab 100, 0, 0 under ${light}`, () => {
      const lab = labFromXyz(xyzFromReflectance(flatReflectance(1), light), whiteOf(light));
      expect(lab[0]).toBeCloseTo(100, 10);
      expect(lab[1]).toBeCloseTo(0, 10);
      expect(lab[2]).toBeCloseTo(0, 10);
    });

    it(`an even grey is neutral under ${light}, as light as its reflectance says`, () => {
      // L* = 116 ∛Y − 16, by definition; 0.18 is the photographer's grey card.
      const lab = labFromXyz(xyzFromReflectance(flatReflectance(0.18), light), whiteOf(light));
      expect(lab[0]).toBeCloseTo(116 * Math.cbrt(0.18) - 16, 6);
      expect(Math.hypot(lab[1], lab[2])).toBeLessThan(1e-9);
    });

    it(`a smooth paint under ${light} has the colour that plain 5 nm sums give`, () => {
      for (const paint of rowsOf('lhtss_reflectance_checks')) {
        const bands = bandsNm.map((nm) => numberIn(paint, `R${nm}`));
        const reflectance = asReflectance(Float64Array.from(bands));
        const ours = labFromXyz(xyzFromReflectance(reflectance, light), whiteOf(light));
        const white = plainSum(flatReflectance(1), light);
        const oracle = labFromXyz(plainSum(reflectance, light), white);
        // The oracle joins bands by straight lines, the weights by a curve; where a spectrum turns
        // sharply that shows, a third of what an eye can just see at most.
        expect(ciede2000(ours, oracle)).toBeLessThan(0.3);
      }
    });

    it(`white under ${light} by plain 5 nm sums has the chromaticity the CIE prints`, () => {
      const [x, y, z] = plainSum(flatReflectance(1), light);
      const row = rowsOf('white_points_check').find((one) => one.illuminant === light)!;
      const printed = (row.xy_CIE15 ?? '').split(' ').map(Number);
      expect(Math.abs(x / (x + y + z) - printed[0]!)).toBeLessThanOrEqual(0.00006);
      expect(Math.abs(y / (x + y + z) - printed[1]!)).toBeLessThanOrEqual(0.00006);
    });
  }

  it('more reflectance in any band never makes a daylit surface darker', () => {
    fc.assert(
      fc.property(anySpectrum, fc.nat(bandCount - 1), (reflectance, band) => {
        const more = asReflectance(Float64Array.from(reflectance));
        more[band] = 1;
        const before = xyzFromReflectance(reflectance, 'D65')[1];
        expect(xyzFromReflectance(more, 'D65')[1]).toBeGreaterThanOrEqual(before);
      }),
      seeded,
    );
  });

  it('many at once are the same as one by one, to the last bit', () => {
    fc.assert(
      fc.property(
        fc.array(anySpectrum, { maxLength: 6 }),
        fc.constantFrom(...lightIds),
        (spectra, light) => {
          const labs = labsFromReflectances(
            Float64Array.from(spectra.flatMap((one) => [...one])),
            light,
          );
          const oneByOne = spectra.flatMap((one) => [
            ...labFromXyz(xyzFromReflectance(one, light), whiteOf(light)),
          ]);
          expect([...labs]).toEqual(oneByOne);
        },
      ),
      seeded,
    );
  });

  it('refuses a batch that is not whole spectra', () => {
    expect(() => labsFromReflectances(new Float64Array(42), 'D65')).toThrow(RangeError);
  });
});

describe('a measurement on another grid', () => {
  const grid = (from: number, to: number, step: number): number[] =>
    Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
  const curve = (nm: number): number => 0.45 + 0.35 * Math.sin(nm / 60);

  it('on our own grid is kept to the last bit', () => {
    const values = bandsNm.map(curve);
    const { reflectance, isExtended, isClipped } = reflectanceFromTable(bandsNm, values);
    expect([...reflectance]).toEqual(values);
    expect([isExtended, isClipped]).toEqual([false, false]);
  });

  for (const step of [1, 5]) {
    it(`every ${step} nm is read at our bands exactly`, () => {
      const nm = grid(360, 830, step);
      const { reflectance } = reflectanceFromTable(nm, nm.map(curve));
      expect([...reflectance]).toEqual(bandsNm.map((band) => curve(band)));
    });
  }

  it('every 20 nm gives a colour an eye cannot tell from the 10 nm one', () => {
    for (const paint of rowsOf('lhtss_reflectance_checks')) {
      const fine = bandsNm.map((nm) => numberIn(paint, `R${nm}`));
      const coarse = grid(380, 780, 20);
      const { reflectance } = reflectanceFromTable(
        coarse,
        coarse.map((nm) => numberIn(paint, `R${nm}`)),
      );
      const lab = (one: Reflectance) => labFromXyz(xyzFromReflectance(one, 'D65'));
      const apart = ciede2000(lab(reflectance), lab(asReflectance(Float64Array.from(fine))));
      // The two full screen primaries turn within 20 nm, sharper than any pigment.
      const isPrimary = paint.name?.startsWith('sRGB') ?? false;
      expect(apart).toBeLessThan(isPrimary ? 3 : 0.5);
    }
  });

  it('from 400 to 700 nm has its ends repeated, and says so', () => {
    const nm = grid(400, 700, 10);
    const { reflectance, isExtended } = reflectanceFromTable(nm, nm.map(curve));
    expect(isExtended).toBe(true);
    expect([...reflectance.slice(0, 3)]).toEqual([curve(400), curve(400), curve(400)]);
    expect([...reflectance.slice(-8)]).toEqual(new Array(8).fill(curve(700)));
  });

  it('above 1, as fluorescent paint is, is held at 1, and says so', () => {
    const nm = grid(380, 780, 10);
    const values = nm.map((at) => (at === 600 ? 1.3 : 0.5));
    const { reflectance, isClipped } = reflectanceFromTable(nm, values);
    expect(isClipped).toBe(true);
    expect(Math.max(...reflectance)).toBe(1);
  });

  it('never leaves the range of its measured neighbours', () => {
    const anyTable = fc
      .array(
        fc.record({
          gap: fc.integer({ min: 1, max: 50 }),
          value: fc.double({ min: 0, max: 1, noNaN: true }),
        }),
        { minLength: 2, maxLength: 40 },
      )
      .map((steps) => {
        let at = 380;
        return steps.map(({ gap, value }) => {
          at += gap;
          return { at, value };
        });
      });
    fc.assert(
      fc.property(anyTable, fc.double({ min: 0, max: 1, noNaN: true }), (table, share) => {
        const nm = table.map(({ at }) => at);
        const values = table.map(({ value }) => value);
        for (let index = 1; index < table.length; index++) {
          const [low, high] = [table[index - 1]!, table[index]!];
          const at = low.at + share * (high.at - low.at);
          const between = resampled(nm, values, [at])[0]!;
          expect(between).toBeGreaterThanOrEqual(Math.min(low.value, high.value) - 1e-12);
          expect(between).toBeLessThanOrEqual(Math.max(low.value, high.value) + 1e-12);
        }
      }),
      seeded,
    );
  });

  const problemsOf = (nm: number[], values: number[]) => {
    try {
      reflectanceFromTable(nm, values);
    } catch (fault) {
      if (fault instanceof InputError) return fault.problems.map(({ place }) => place);
      throw fault;
    }
    return [];
  };
  const nm = grid(380, 780, 10);

  it('that breaks off, doubles back, has a hole or holds no number names every fault', () => {
    const half = nm.map(() => 0.5);
    expect(problemsOf(nm, half)).toEqual([]);
    expect(problemsOf([], [])).toEqual(['spectrum › nm']);
    expect(problemsOf(nm, half.slice(1))).toEqual(['spectrum']);
    expect(problemsOf(grid(450, 700, 10), grid(450, 700, 10))).toContain('spectrum › nm');
    expect(problemsOf([...nm.slice(0, 5), 400, ...nm.slice(6)], half)).toContain(
      'spectrum › nm › 6',
    );
    expect(problemsOf([380, 390, 500, 700], [0.1, 0.2, 0.3, 0.4])).toEqual([
      'spectrum › nm › 3',
      'spectrum › nm › 4',
    ]);
    const broken = half.with(3, Number.NaN).with(7, Number.POSITIVE_INFINITY);
    expect(problemsOf(nm, broken)).toEqual([
      'spectrum › reflectance › 4',
      'spectrum › reflectance › 8',
    ]);
  });
});

describe('Lab itself', () => {
  it('follows its definition on both branches', () => {
    // CIE 015: L* = 116 f(Y) − 16, f the cube root above (6/29)³ and a straight line below it.
    expect(labFromXyz(asXyz(0, 0, 0))).toEqual([0, 0, 0]);
    const half = asXyz(
      ...(whiteOf('D65').map((value) => value * (66 / 116) ** 3) as [number, number, number]),
    );
    expect(labFromXyz(half)[0]).toBeCloseTo(50, 10);
    const dark = whiteOf('D65').map((value) => value * 0.001) as [number, number, number];
    expect(labFromXyz(asXyz(...dark))[0]).toBeCloseTo((29 / 3) ** 3 * 0.001, 10);
    expect(asLab(50, 0, 0)).toEqual([50, 0, 0]);
  });
});
