/** Does the picture give way while it drags, and come back? Derived from pixels going with the square. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  adapted,
  type Fineness,
  finestFor,
  staysSmooth,
} from '../../../src/stage/view/fineness.ts';

describe('the fineness of a picture', () => {
  it('begins with the screen’s own, as far as a canvas may go', () => {
    expect(finestFor(800, 400, 1)).toEqual({ still: 1, moving: 1 });
    expect(finestFor(800, 400, 2)).toEqual({ still: 2, moving: 2 });
    for (const [width, height, pixels] of [
      [4000, 3000, 2],
      [1440, 900, 3],
      [0, 0, 1],
      [10_000, 10_000, 3],
    ] as const) {
      const { still } = finestFor(width, height, pixels);
      expect(still).toBeGreaterThan(0);
      expect(still).toBeLessThanOrEqual(pixels);
      // Seven million pixels at most, unless even the coarsest picture has more.
      if (still > 0.4) expect(width * height * still ** 2).toBeLessThanOrEqual(7_000_001);
    }
  });

  it('drops at once so that the next picture costs what it may, a step of 0.6 at most', () => {
    // Derived: twice too slow asks for half the pixels, 1/√2 of the fineness.
    const half = adapted({ still: 2, moving: 2 }, 100);
    expect(half.moving).toBeCloseTo(2 / Math.SQRT2, 12);
    expect(half.still).toBe(2);
    expect(adapted({ still: 2, moving: 2 }, 10_000).moving).toBeCloseTo(1.2, 12);
  });

  it('settles where a picture takes no longer than it may, on any machine', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 400, noNaN: true }),
        fc.double({ min: 0.5, max: 2.5, noNaN: true }),
        (msAtOne, still) => {
          let fineness: Fineness = { still, moving: still };
          for (let k = 0; k < 40; k++) fineness = adapted(fineness, msAtOne * fineness.moving ** 2);
          const spent = msAtOne * fineness.moving ** 2;
          expect(fineness.moving).toBeLessThanOrEqual(still);
          expect(fineness.moving).toBeGreaterThanOrEqual(Math.min(0.4, still) - 1e-12);
          if (fineness.moving > 0.4 + 1e-9) expect(spent).toBeLessThanOrEqual(50 * (1 + 1e-9));
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });

  it('comes back step by step to the screen’s own where pictures fly, and stays there', () => {
    let fineness: Fineness = { still: 2, moving: 0.5 };
    for (let k = 0; k < 30; k++) fineness = adapted(fineness, 4);
    expect(fineness).toEqual({ still: 2, moving: 2 });
    expect(adapted(fineness, 4)).toBe(fineness);
    // Between the two nothing changes, so that it does not swing.
    const middling = { still: 2, moving: 1 };
    expect(adapted(middling, 30)).toBe(middling);
  });

  it('gives up smooth edges first, as soon as pictures fall behind the screen, and for good', () => {
    // Derived: a screen of 60 pictures a second asks for one every 16.7 ms; two missed are 33 ms.
    expect(staysSmooth(true, 17)).toBe(true);
    expect(staysSmooth(true, 33)).toBe(false);
    expect(staysSmooth(false, 5)).toBe(false);
  });
});
