/**
 * Round trips and symmetries of the colour room. Parents: property (there and back is where one
 * began), derived (definitions) and published facts named beside the check.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adaptedXyz } from '../../src/colour/adaptation.ts';
import { deficiencies, deficiencyMatrix, labSeenBy } from '../../src/colour/deficiency.ts';
import { ciede2000 } from '../../src/colour/difference.ts';
import { d65White, lightIds, whiteOf } from '../../src/colour/illuminant.ts';
import { chromaOf, hueDegreesOf, labFromXyz, xyzFromLab } from '../../src/colour/lab.ts';
import { labFromOklch, oklchFromLab } from '../../src/colour/oklab.ts';
import {
  hexFromLab,
  labFromHex,
  linearRgbFromXyz,
  xyzFromLinearRgb,
} from '../../src/colour/srgb.ts';
import { InputError } from '../../src/ground/problem.ts';
import { asLab, asLinearRgb, asXyz, type Lab } from '../../src/ground/unit.ts';

const seeded = { seed: 31, numRuns: 500 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyLab = fc
  .tuple(between(0, 100), between(-128, 128), between(-128, 128))
  .map(([l, a, b]) => asLab(l, a, b));
const anyXyz = fc
  .tuple(between(0, 1), between(0, 1), between(0, 1))
  .map(([x, y, z]) => asXyz(x, y, z));
const anyLight = fc.constantFrom(...lightIds);
const anyHex = fc
  .tuple(fc.nat(255), fc.nat(255), fc.nat(255))
  .map((rgb) => `#${rgb.map((value) => value.toString(16).padStart(2, '0')).join('')}`);
const screenLab = anyHex.map(labFromHex);

function expectSame(found: readonly number[], wanted: readonly number[], within: number): void {
  expect(found).toHaveLength(wanted.length);
  found.forEach((value, axis) => {
    expect(Math.abs(value - wanted[axis]!)).toBeLessThanOrEqual(within);
  });
}

describe('there and back again', () => {
  it('XYZ survives Lab under any white', () => {
    fc.assert(
      fc.property(anyXyz, anyLight, (xyz, light) => {
        expectSame(xyzFromLab(labFromXyz(xyz, whiteOf(light)), whiteOf(light)), xyz, 1e-12);
      }),
      seeded,
    );
  });

  it('XYZ survives linear light, on screen or off it', () => {
    fc.assert(
      fc.property(anyXyz, (xyz) => {
        expectSame(xyzFromLinearRgb(linearRgbFromXyz(xyz)), xyz, 1e-12);
      }),
      seeded,
    );
  });

  it('Lab survives OKLCH', () => {
    fc.assert(
      fc.property(anyLab, (lab) => {
        expectSame(labFromOklch(oklchFromLab(lab)), lab, 1e-3);
      }),
      seeded,
    );
  });

  it('a hex code survives Lab, and is never called clipped', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        expect(hexFromLab(labFromHex(hex))).toEqual({ hex, isClipped: false });
        expect(labFromHex(hex.toUpperCase())).toEqual(labFromHex(hex));
      }),
      seeded,
    );
  });

  it('a colour adapted to another light and back is itself', () => {
    fc.assert(
      fc.property(anyXyz, anyLight, anyLight, (xyz, from, to) => {
        const there = adaptedXyz(xyz, whiteOf(from), whiteOf(to));
        expectSame(adaptedXyz(there, whiteOf(to), whiteOf(from)), xyz, 1e-12);
      }),
      seeded,
    );
  });
});

describe('getting used to the light', () => {
  it('changes nothing when the light stays the same', () => {
    fc.assert(
      fc.property(anyXyz, anyLight, (xyz, light) => {
        expect(adaptedXyz(xyz, whiteOf(light), whiteOf(light))).toEqual(xyz);
      }),
      seeded,
    );
  });

  it('makes white white and leaves greys grey', () => {
    for (const light of lightIds) {
      for (const share of [1, 0.18, 0.01]) {
        const [x, y, z] = whiteOf(light);
        const grey = adaptedXyz(asXyz(x * share, y * share, z * share), whiteOf(light), d65White);
        const lab = labFromXyz(grey);
        expect(chromaOf(lab)).toBeLessThan(1e-9);
        expect(lab[0]).toBeCloseTo(labFromXyz(asXyz(0, share, 0))[0], 6);
      }
    }
  });
});

describe('what a screen can show', () => {
  it('a fluorescent orange does not fit, and says so', () => {
    const { hex, isClipped } = hexFromLab(asLab(75, 80, 95));
    expect(isClipped).toBe(true);
    expect(hex).toMatch(/^#ff[0-9a-f]{4}$/);
  });

  it('clips only what is outside: a colour inside comes back within half a step', () => {
    fc.assert(
      fc.property(screenLab, (lab) => {
        expect(ciede2000(labFromHex(hexFromLab(lab).hex), lab)).toBeLessThan(1e-6);
      }),
      seeded,
    );
  });

  for (const text of ['', '#fff', '1a2b3c', '#1a2b3g', '#1a2b3c4d', 'red', '#１２３４５６']) {
    it(`refuses “${text}” and says what a colour looks like`, () => {
      expect(() => labFromHex(text)).toThrow(InputError);
      expect(() => labFromHex(text)).toThrow('#1a2b3c');
    });
  }
});

describe('the difference of two colours', () => {
  it('is the same both ways, none with itself, and never negative', () => {
    fc.assert(
      fc.property(anyLab, anyLab, between(0.5, 3), (one, other, kL) => {
        expect(ciede2000(one, other, kL)).toBeCloseTo(ciede2000(other, one, kL), 9);
        expect(ciede2000(one, one, kL)).toBe(0);
        expect(ciede2000(one, other, kL)).toBeGreaterThanOrEqual(0);
      }),
      seeded,
    );
  });

  it('counts lightness less the larger its weight, in exact proportion for greys', () => {
    // Two greys differ in lightness only: ΔE = ΔL′ / (k_L S_L).
    fc.assert(
      fc.property(between(0, 100), between(0, 100), between(1, 4), (one, other, kL) => {
        const [a, b] = [asLab(one, 0, 0), asLab(other, 0, 0)];
        expect(ciede2000(a, b, kL)).toBeCloseTo(ciede2000(a, b) / kL, 9);
      }),
      seeded,
    );
  });

  it('is not upset by asking in the middle of another comparison', () => {
    const [red, blue] = [labFromHex('#c41e26'), labFromHex('#1846a0')];
    const before = ciede2000(red, blue);
    ciede2000(blue, asLab(50, 0, 0), 1.5);
    expect(ciede2000(red, blue)).toBe(before);
  });
});

describe('seen with a colour deficiency', () => {
  it('severity 0 changes nothing and greys stay grey at any severity', () => {
    fc.assert(
      fc.property(
        screenLab,
        fc.constantFrom(...deficiencies),
        between(0, 1),
        (lab, kind, severity) => {
          expect(labSeenBy(lab, kind, 0)).toEqual(lab);
          const grey = asLab(lab[0], 0, 0);
          // Six-decimal matrices: a row can miss 1 by 1.5 in the sixth place.
          expect(ciede2000(labSeenBy(grey, kind, severity), grey)).toBeLessThan(0.001);
        },
      ),
      seeded,
    );
  });

  it('between two tabulated severities the matrix lies between theirs', () => {
    for (const kind of deficiencies) {
      const middle = deficiencyMatrix(kind, 0.7);
      const [low, high] = [deficiencyMatrix(kind, 0.6), deficiencyMatrix(kind, 0.8)];
      middle.forEach((value, cell) => {
        expect(value).toBeCloseTo((low[cell]! + high[cell]!) / 2, 12);
      });
    }
  });

  it('red and green of one lightness come close for protan and deutan, not for tritan', () => {
    // The definition of red–green deficiency; the pair is matched in lightness on purpose.
    const [red, green] = [asLab(55, 45, 30), asLab(55, -35, 35)];
    const apart = (kind: (typeof deficiencies)[number]): number =>
      ciede2000(labSeenBy(red, kind), labSeenBy(green, kind));
    const full = ciede2000(red, green);
    expect(apart('protan')).toBeLessThan(full / 2);
    expect(apart('deutan')).toBeLessThan(full / 2);
    expect(apart('tritan')).toBeGreaterThan(full / 2);
  });
});

describe('hue and chroma', () => {
  it('go round the circle as Lab axes do, by definition', () => {
    const circle: [Lab, number][] = [
      [asLab(50, 10, 0), 0],
      [asLab(50, 0, 10), 90],
      [asLab(50, -10, 0), 180],
      [asLab(50, 0, -10), 270],
      [asLab(50, 0, 0), 0],
    ];
    for (const [lab, degrees] of circle) expect(hueDegreesOf(lab)).toBe(degrees);
    expect(chromaOf(asLab(50, 3, -4))).toBe(5);
  });

  it('stay from 0 to just under 360', () => {
    fc.assert(
      fc.property(anyLab, (lab) => {
        for (const hue of [hueDegreesOf(lab), oklchFromLab(lab).hueDegrees]) {
          expect(hue).toBeGreaterThanOrEqual(0);
          expect(hue).toBeLessThan(360);
        }
        const nearlyFull = asLab(50, 10, -Number.MIN_VALUE);
        expect(hueDegreesOf(nearlyFull)).toBeLessThan(360);
      }),
      seeded,
    );
  });

  it('a grey has no OKLCH hue, whatever the rounding', () => {
    for (const level of [0, 1, 77, 128, 254, 255]) {
      const hex = `#${level.toString(16).padStart(2, '0').repeat(3)}`;
      expect(oklchFromLab(labFromHex(hex)).hueDegrees).toBe(0);
    }
  });

  it('linear light of white is 1, 1, 1 and of black 0, 0, 0', () => {
    expectSame(linearRgbFromXyz(d65White), [1, 1, 1], 1e-12);
    expectSame(xyzFromLinearRgb(asLinearRgb(0, 0, 0)), [0, 0, 0], 0);
  });
});
