/** Lengths of borders in a picture against circles and rectangles (derived). */
import { describe, expect, it } from 'vitest';
import { bordersOf, dissolve, type LabelPicture } from '../../src/car/border.ts';

const size = 300;
const picture = (
  labelAt: (x: number, y: number) => number,
  depthAt = (_: number) => 1000,
): LabelPicture => {
  const label = Int16Array.from({ length: size * size }, (_, at) =>
    labelAt((at % size) + 0.5, Math.floor(at / size) + 0.5),
  );
  // A pixel at 1000 mm is 1 mm wide.
  return {
    width: size,
    height: size,
    label,
    depth: Float32Array.from(label, depthAt),
    pixelScale: 0.001,
  };
};

describe('border length', () => {
  it('measures a circle of radius 100 mm within one per cent of its circumference', () => {
    const [border] = bordersOf(picture((x, y) => (Math.hypot(x - 150, y - 150) < 100 ? 1 : 0)));
    // Derived: 2πr.
    expect(border!.lengthMm / (2 * Math.PI * 100)).toBeCloseTo(1, 2);
    expect(border!.touchingMm).toBeCloseTo(border!.lengthMm, 6);
  });

  it('measures an upright rectangle short by the five per cent that four directions cost', () => {
    const [border] = bordersOf(
      picture((x, y) => (Math.abs(x - 150) < 80 && Math.abs(y - 150) < 50 ? 1 : 0)),
    );
    // Derived: a level or upright line crosses (1 + √2) · π/8 = 0.948 of its length.
    expect(border!.lengthMm / (2 * (160 + 100))).toBeCloseTo(((1 + Math.SQRT2) * Math.PI) / 8, 2);
  });

  it('is the same in length whichever way a straight border runs, within 5.5 per cent', () => {
    for (let degrees = 0; degrees < 180; degrees += 7.5) {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const [border] = bordersOf(
        picture((x, y) => {
          const [u, v] = [(x - 150) * c + (y - 150) * s, (y - 150) * c - (x - 150) * s];
          return Math.hypot(u, v) > 100 ? -1 : v > 0 ? 1 : 0;
        }),
      );
      // Derived: the border is the diameter of a disc of radius 100 mm.
      expect(Math.abs(border!.lengthMm / 200 - 1)).toBeLessThan(0.055);
    }
  });

  it('tells a part that stands 60 mm in front from one that touches', () => {
    const half = (x: number): number => (x < 150 ? 0 : 1);
    const [apart] = bordersOf(picture(half, (label) => 1000 + label * 60));
    const [close] = bordersOf(picture(half, (label) => 1000 + label * 40));
    expect(apart!.touchingMm).toBe(0);
    expect(close!.touchingMm).toBe(close!.lengthMm);
  });
});

describe('panel gaps', () => {
  it('join the two parts they lie between along the whole gap', () => {
    const open = picture((x) => (x < 148 ? 0 : x > 152 ? 1 : 2));
    expect(bordersOf(open).some(({ a, b }) => a === 0 && b === 1)).toBe(false);
    const [closed, ...others] = bordersOf(dissolve(open, (label) => label === 2));
    const plain = bordersOf(picture((x) => (x < 150 ? 0 : 1)))[0]!;
    expect(others).toEqual([]);
    // Derived: with the gap gone its neighbours share a straight border as long as the gap.
    expect(closed!.lengthMm).toBeCloseTo(plain.lengthMm, 6);
  });

  it('vanish inside a part without leaving a border', () => {
    const line = picture((x) => (Math.abs(x - 150) < 2 ? 2 : 0));
    expect(bordersOf(dissolve(line, (label) => label === 2))).toEqual([]);
  });
});
