/**
 * Ottosson, B. (2020). A perceptual color space for image processing, table of XYZ and OKLab
 * pairs. Printed to three decimals; seen identically in six public test suites.
 */
import { describe, expect, it } from 'vitest';
import { d65White } from '../../src/colour/illuminant.ts';
import { libraryWhite } from '../../src/colour/lab.ts';
import { oklabFromXyz } from '../../src/colour/oklab.ts';
import { asXyz } from '../../src/ground/unit.ts';
import { numberIn, numbersIn, rowsOf } from './table.ts';

// One unit of the last printed digit: the inputs are rounded to three decimals as well.
const tolerance = 0.001;

describe('the published XYZ and OKLab pairs', () => {
  for (const row of rowsOf('oklab_xyz_pairs')) {
    const [x, y, z] = numbersIn(row, ['X', 'Y', 'Z']);
    it(`XYZ ${x} ${y} ${z}`, () => {
      // The author's XYZ is relative to xy 0.3127 0.3290; ours to the white of the weights.
      const [wx, , wz] = libraryWhite;
      const xyz = asXyz((x! / wx) * d65White[0], y!, (z! / wz) * d65White[2]);
      const { lightness, a, b } = oklabFromXyz(xyz);
      expect(Math.abs(lightness - numberIn(row, 'L'))).toBeLessThanOrEqual(tolerance);
      expect(Math.abs(a - numberIn(row, 'a'))).toBeLessThanOrEqual(tolerance);
      expect(Math.abs(b - numberIn(row, 'b'))).toBeLessThanOrEqual(tolerance);
    });
  }
});
