/**
 * Machado, G. M., Oliveira, M. M. & Fernandes, L. A. F. (2009). A physiologically-based model for
 * simulation of color vision deficiency. IEEE TVCG 15(6), 1291–1298, doi 10.1109/TVCG.2009.113,
 * authors' supplementary matrices. Six decimals; identical in two public packages.
 */
import { describe, expect, it } from 'vitest';
import type { Deficiency } from '../../src/colour/deficiency.ts';
import { deficiencyMatrix, labSeenBy } from '../../src/colour/deficiency.ts';
import { labFromXyz, xyzFromLab } from '../../src/colour/lab.ts';
import { linearRgbFromXyz, xyzFromLinearRgb } from '../../src/colour/srgb.ts';
import { asLinearRgb } from '../../src/ground/unit.ts';
import { numberIn, numbersIn, rowsOf } from './table.ts';

const ours: Readonly<Record<string, Deficiency>> = {
  protanomaly: 'protan',
  deuteranomaly: 'deutan',
  tritanomaly: 'tritan',
};
const cells = ['m00', 'm01', 'm02', 'm10', 'm11', 'm12', 'm20', 'm21', 'm22'];
const primaries = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

describe('the published deficiency matrices', () => {
  const rows = rowsOf('machado2009_cvd');
  it('are fifteen: three deficiencies at five severities', () => expect(rows).toHaveLength(15));

  for (const row of rows) {
    const deficiency = ours[row.type ?? ''];
    const severity = numberIn(row, 'severity');
    const printed = numbersIn(row, cells);

    it(`${row.type} at ${severity} is used as printed`, () => {
      expect(deficiencyMatrix(deficiency!, severity)).toEqual(printed);
    });
    it(`${row.type} at ${severity} keeps greys grey: its rows sum to 1`, () => {
      for (const start of [0, 3, 6]) {
        const sum = printed.slice(start, start + 3).reduce((total, value) => total + value, 0);
        // Three cells of six decimals each can be half a unit off in the last.
        expect(Math.abs(sum - 1)).toBeLessThanOrEqual(1.5e-6);
      }
    });
    it(`${row.type} at ${severity} acts on linear light and clips to the screen`, () => {
      primaries.forEach((primary, column) => {
        const lab = labFromXyz(xyzFromLinearRgb(asLinearRgb(primary[0], primary[1], primary[2])));
        const seen = linearRgbFromXyz(xyzFromLab(labSeenBy(lab, deficiency!, severity)));
        [0, 3, 6].forEach((start, channel) => {
          const clipped = Math.min(1, Math.max(0, printed[start + column]!));
          expect(seen[channel]).toBeCloseTo(clipped, 9);
        });
      });
    });
  }
});
