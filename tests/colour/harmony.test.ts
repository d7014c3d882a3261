/**
 * Ou, L.-C. & Luo, M. R. (2006). A colour harmony model for two-colour combinations. Color Research
 * & Application 31(3), 191–204, doi 10.1002/col.20208. No published check values were found; the
 * table is an independent computation from the published equations, so it counts as oracle.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harmonyOpinion, pairOpinion } from '../../src/colour/harmony.ts';
import { labFromHex } from '../../src/colour/srgb.ts';
import { asLab } from '../../src/ground/unit.ts';
import { numberIn, numbersIn, rowsOf } from '../published/table.ts';

const seeded = { seed: 2006, numRuns: 500 };
const anyLab = fc
  .tuple(fc.nat(255), fc.nat(255), fc.nat(255))
  .map((rgb) => labFromHex(`#${rgb.map((value) => value.toString(16).padStart(2, '0')).join('')}`));

describe('the opinion of the 2006 experiment on a pair', () => {
  for (const row of rowsOf('ou_luo_2006_checks')) {
    const [l1, a1, b1, l2, a2, b2] = numbersIn(row, ['L1', 'a1', 'b1', 'L2', 'a2', 'b2']);
    it(`Lab ${l1} ${a1} ${b1} beside ${l2} ${a2} ${b2} agrees with the oracle, part by part`, () => {
      const { opinion, chromatic, lightness, hue } = harmonyOpinion(
        asLab(l1!, a1!, b1!),
        asLab(l2!, a2!, b2!),
      );
      expect(opinion).toBeCloseTo(numberIn(row, 'CH'), 6);
      expect(chromatic).toBeCloseTo(numberIn(row, 'HC'), 6);
      expect(lightness).toBeCloseTo(numberIn(row, 'HL'), 6);
      expect(hue).toBeCloseTo(numberIn(row, 'HH'), 6);
    });
  }

  it('is the sum of its parts and the same both ways', () => {
    fc.assert(
      fc.property(anyLab, anyLab, (one, other) => {
        const { opinion, chromatic, lightness, hue } = harmonyOpinion(one, other);
        expect(opinion).toBeCloseTo(chromatic + lightness + hue, 12);
        expect(pairOpinion(other, one)).toBeCloseTo(opinion, 12);
      }),
      seeded,
    );
  });

  it('stays near the range of the experiment for any two screen colours', () => {
    // −1.24 to +1.39 in the authors' data; −1.20 to +1.49 were the extremes of a search over the
    // sRGB gamut with an independent implementation (oracle).
    fc.assert(
      fc.property(anyLab, anyLab, (one, other) => {
        expect(pairOpinion(one, other)).toBeGreaterThan(-1.24);
        expect(pairOpinion(one, other)).toBeLessThan(1.5);
      }),
      seeded,
    );
  });

  it('likes two greys better the further apart in lightness, at one mean lightness', () => {
    // From the lightness term: with L₁ + L₂ held, only the difference term moves, upwards.
    const opinions = [0, 10, 20, 40].map((gap) =>
      pairOpinion(asLab(60 - gap / 2, 0, 0), asLab(60 + gap / 2, 0, 0)),
    );
    expect([...opinions].sort((a, b) => a - b)).toEqual(opinions);
  });
});
