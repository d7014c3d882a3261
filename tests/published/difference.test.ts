/**
 * Sharma, G., Wu, W. & Dalal, E. N. (2005). The CIEDE2000 color-difference formula: implementation
 * notes, supplementary test data, and mathematical observations. Color Research & Application
 * 30(1), 21–30, Table 1. doi 10.1002/col.20070. Printed to four decimals; transcribed from a
 * public BSD-3 colour library, row 14 from ten further public test suites.
 */
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/difference.ts';
import { asLab } from '../../src/ground/unit.ts';
import { numberIn, numbersIn, rowsOf } from './table.ts';

const halfLastDigit = 0.00005;

describe('the 34 published CIEDE2000 pairs, in both orders', () => {
  const rows = rowsOf('ciede2000_sharma2005');
  it('are all there', () => expect(rows.map((row) => numberIn(row, 'pair'))).toHaveLength(34));

  for (const row of rows) {
    const [l1, a1, b1, l2, a2, b2] = numbersIn(row, ['L1', 'a1', 'b1', 'L2', 'a2', 'b2']);
    const one = asLab(l1!, a1!, b1!);
    const other = asLab(l2!, a2!, b2!);
    const printed = numberIn(row, 'dE00');
    const pair = numberIn(row, 'pair');
    // Row 14 sits on the seam: its two hues are exactly 180° apart, so the last bit of an
    // arctangent decides which way round their mean is taken: 4.8045 or 4.7461 (row 15's value).
    const allowed = pair === 14 ? [printed, 4.7461] : [printed];
    for (const [order, from, to] of [
      ['as printed', one, other],
      ['the other way round', other, one],
    ] as const) {
      it(`pair ${pair}, ${order}, differ by ${printed}`, () => {
        const found = ciede2000(from, to);
        const misses = allowed.map((value) => Math.abs(found - value));
        expect(Math.min(...misses)).toBeLessThanOrEqual(halfLastDigit);
      });
    }
  }
});
