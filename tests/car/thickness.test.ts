/** Widths of masks against geometry (derived) and against trying every pixel and disc (oracle). */
import { describe, expect, it } from 'vitest';
import { distanceToEdge, medianThickness, nearestSeed } from '../../src/car/thickness.ts';
import { drawFrom } from '../../src/ground/draw.ts';

/** A strip of the given width through the middle of a picture, at an angle. */
function strip(size: number, width: number, degrees: number, offset = 0): Uint8Array {
  const angle = (degrees * Math.PI) / 180;
  return Uint8Array.from({ length: size * size }, (_, at) => {
    const x = (at % size) + 0.5 - size / 2;
    const y = Math.floor(at / size) + 0.5 - size / 2;
    const across = y * Math.cos(angle) - x * Math.sin(angle) - offset;
    return Math.abs(across) < width / 2 ? 1 : 0;
  });
}

describe('distances', () => {
  it('finds the same nearest distances as looking at every seed, in 30 random pictures, seed 7', () => {
    const draw = drawFrom(7);
    for (let round = 0; round < 30; round++) {
      const [width, height] = [2 + draw.below(20), 2 + draw.below(20)];
      const isSeed = Uint8Array.from({ length: width * height }, () => (draw.below(12) ? 0 : 1));
      const seeds = [...isSeed.keys()].filter((at) => isSeed[at]);
      const squared = (a: number, b: number): number =>
        ((a % width) - (b % width)) ** 2 + (Math.floor(a / width) - Math.floor(b / width)) ** 2;
      const nearest = nearestSeed(isSeed, width, height);
      for (let at = 0; at < isSeed.length; at++) {
        if (seeds.length === 0) expect(nearest[at]).toBe(-1);
        // Oracle: brute force over all seeds.
        else expect(squared(at, nearest[at]!)).toBe(Math.min(...seeds.map((s) => squared(at, s))));
      }
    }
  });

  it('measures the middle of a 5 by 5 patch three pixels from outside it', () => {
    const mask = Uint8Array.from({ length: 49 }, (_, at) =>
      at % 7 > 0 && at % 7 < 6 && at > 6 && at < 42 ? 1 : 0,
    );
    // Derived: from the centre pixel (3, 3) the first pixel outside is three steps away.
    expect(distanceToEdge(mask, 7, 7)[24]).toBe(3);
  });
});

describe('width of a strip', () => {
  it.each([4, 5, 6, 9, 16])('reads a level strip of %i pixels as exactly that wide', (width) => {
    expect(medianThickness(strip(60, width, 0, width % 2 ? 0.5 : 0), 60, 60, 40)).toBeCloseTo(
      width,
      0,
    );
  });

  it.each([
    [6, 15],
    [6, 45],
    [9, 30],
    [9, 70],
    [14, 22],
  ])('reads a strip of %i pixels lying at %i° within 0.6 pixel', (width, degrees) => {
    // Derived: the strip is drawn from its own width; the rest is the pixel grid's.
    const read = medianThickness(strip(96, width, degrees), 96, 96, 60);
    expect(Math.abs(read - width)).toBeLessThan(0.6);
  });

  it('reads a disc as wide as its diameter, less what its staircase costs', () => {
    const disc = Uint8Array.from({ length: 10000 }, (_, at) =>
      Math.hypot((at % 100) - 49.5, Math.floor(at / 100) - 49.5) < 12 ? 1 : 0,
    );
    // Derived: rim and centre can each be out by half a pixel's diagonal, the diameter by √2 pixels.
    expect(Math.abs(medianThickness(disc, 100, 100, 60) - 24)).toBeLessThan(Math.SQRT2);
  });

  it('does not measure what is wider than asked', () => {
    expect(medianThickness(strip(60, 30, 0), 60, 60, 20)).toBe(Infinity);
  });
});
