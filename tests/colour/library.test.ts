/**
 * A second opinion: 600 seeded random colours through colorjs.io, a general colour library written
 * independently of the one the colour room stands on. Parent of every expected value: oracle.
 */
import Color from 'colorjs.io';
import { adapt as adaptationMatrix } from 'colorjs.io/src/CATs.js';
import { describe, expect, it } from 'vitest';
import { adaptedXyz } from '../../src/colour/adaptation.ts';
import { ciede2000 } from '../../src/colour/difference.ts';
import { lightIds, whiteOf } from '../../src/colour/illuminant.ts';
import { labFromXyz, libraryWhite } from '../../src/colour/lab.ts';
import { oklabFromXyz, oklchFromLab } from '../../src/colour/oklab.ts';
import { hexFromLab, labFromHex, xyzFromLinearRgb } from '../../src/colour/srgb.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { asLab, asLinearRgb, asXyz, type Lab, type Xyz } from '../../src/ground/unit.ts';

const seed = 20250611;
const count = 600;
const draw = drawFrom(seed);
const hexes = Array.from(
  { length: count },
  () => `#${[0, 0, 0].map(() => draw.below(256).toString(16).padStart(2, '0')).join('')}`,
);
// Also beyond the screen: measured finishes may be stronger than sRGB can show.
const labs = Array.from({ length: count }, () =>
  asLab(draw.uniform() * 100, draw.uniform() * 240 - 120, draw.uniform() * 240 - 120),
);

function expectNear(found: readonly number[], wanted: readonly (number | null)[], within: number) {
  found.forEach((value, axis) => {
    expect(Math.abs(value - (wanted[axis] ?? Number.NaN))).toBeLessThanOrEqual(within);
  });
}

const coordsOf = (three: Lab | Xyz): [number, number, number] => [three[0], three[1], three[2]];
const theirLab = (lab: Lab): Color => new Color('lab-d65', coordsOf(lab));
// That library takes CIEDE2000 of its D50 Lab and would adapt a D65 one first. The formula itself
// knows no white, so the same three numbers are handed to it as D50.
const theirDifference = (one: Lab, other: Lab, kL = 1): number =>
  new Color('lab', coordsOf(one)).deltaE(new Color('lab', coordsOf(other)), { method: '2000', kL });

describe(`a second library agrees on ${count} random colours (seed ${seed})`, () => {
  it('on the Lab (D65) of a screen colour', () => {
    for (const hex of hexes) {
      expectNear(labFromHex(hex), new Color(hex).to('lab-d65').coords, 1e-6);
    }
  });

  it('on the OKLab of a screen colour', () => {
    for (const hex of hexes) {
      const { r, g, b } = new Color(hex).to('srgb-linear');
      const { lightness, a, b: yellow } = oklabFromXyz(xyzFromLinearRgb(asLinearRgb(r!, g!, b!)));
      expectNear([lightness, a, yellow], new Color(hex).to('oklab').coords, 1e-6);
    }
  });

  it('on the OKLCH hue and chroma of any Lab, on screen or off it', () => {
    for (const lab of labs) {
      const { lightness, chroma, hueDegrees } = oklchFromLab(lab);
      const [theirs, theirChroma, theirHue] = theirLab(lab).to('oklch').coords;
      expectNear([lightness, chroma], [theirs, theirChroma], 1e-6);
      const turn = Math.abs(hueDegrees - theirHue!);
      expect(Math.min(turn, 360 - turn)).toBeLessThanOrEqual(1e-3);
    }
  });

  it('on the hex code of a Lab that fits the screen', () => {
    for (const hex of hexes) {
      const { hex: back, isClipped } = hexFromLab(labFromHex(hex));
      expect(back).toBe(new Color(hex).to('srgb').toString({ format: 'hex', collapse: false }));
      expect(isClipped).toBe(false);
    }
  });

  for (const kL of [1, 1.5, 2]) {
    it(`on CIEDE2000 with lightness weight ${kL}`, () => {
      labs.forEach((lab, index) => {
        const other = labs[(index + 1) % count]!;
        const theirs = theirDifference(lab, other, kL);
        expect(ciede2000(lab, other, kL)).toBeCloseTo(theirs, 8);
      });
    });
  }

  it('on CIEDE2000 of near neighbours, where the scores work', () => {
    for (const lab of labs) {
      const near = asLab(lab[0], lab[1] + draw.normal(), lab[2] + draw.normal());
      const theirs = theirDifference(lab, near);
      expect(ciede2000(lab, near)).toBeCloseTo(theirs, 8);
    }
  });

  it('on CAT16 between every two lights', () => {
    for (const from of lightIds) {
      for (const to of lightIds) {
        const [whiteFrom, whiteTo] = [whiteOf(from), whiteOf(to)];
        const matrix = adaptationMatrix(coordsOf(whiteFrom), coordsOf(whiteTo), 'CAT16');
        for (let trial = 0; trial < 24; trial++) {
          const xyz = asXyz(draw.uniform(), draw.uniform(), draw.uniform());
          const theirs = matrix.map((row) =>
            row.reduce((sum, value, axis) => sum + value * xyz[axis]!, 0),
          );
          expectNear(adaptedXyz(xyz, whiteFrom, whiteTo), theirs, 1e-9);
        }
      }
    }
  });

  it('on Lab relative to D50, and that the D65 and D50 forms are kept apart', () => {
    const d50 = asXyz(0.3457 / 0.3585, 1, (1 - 0.3457 - 0.3585) / 0.3585);
    for (const hex of hexes) {
      const [x, y, z] = new Color(hex).to('xyz-d50').coords;
      const theirs = new Color('xyz-d50', [x!, y!, z!]).to('lab').coords;
      expectNear(labFromXyz(asXyz(x!, y!, z!), d50), theirs, 1e-6);
    }
    // A saturated blue differs by several units between the two: mixing them up would show.
    const apart = new Color('#0000ff').to('lab').coords[2]! - labFromHex('#0000ff')[2];
    expect(Math.abs(apart)).toBeGreaterThan(3);
  });

  it('on XYZ under D65, up to the fifth-decimal difference between the two whites', () => {
    for (const hex of hexes) {
      const { r, g, b } = new Color(hex).to('srgb-linear');
      const ours = xyzFromLinearRgb(asLinearRgb(r!, g!, b!));
      const scaled = ours.map(
        (value, axis) => (value / whiteOf('D65')[axis]!) * libraryWhite[axis]!,
      );
      expectNear(scaled, new Color(hex).to('xyz-d65').coords, 1e-8);
    }
  });
});
