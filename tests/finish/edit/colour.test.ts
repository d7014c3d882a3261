/**
 * Is a colour the same whichever way it is told? Lab of screen codes by colorjs.io as a second
 * library; L* of greys from the CIE 1976 formula, 116 Y^(1/3) − 16 [CIE015].
 */
import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  colourFromLab,
  colourTyped,
  isReachable,
  labOf,
  obtained,
  rounded,
  screenOf,
  setSpectrum,
} from '../../../src/finish/edit/colour.ts';
import { asLab } from '../../../src/ground/unit.ts';
import { finishWith } from '../sample.ts';

describe('Lab of a colour', () => {
  it('of a screen code is what another library says', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^#[0-9a-f]{6}$/), (srgb) => {
        const other = new Color(srgb).to('lab-d65').coords;
        labOf({ srgb }).forEach((value, axis) => {
          expect(Math.abs(value - Number(other[axis]))).toBeLessThan(0.05);
        });
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  it('of a flat spectrum is the lightness of its reflectance', () => {
    const nm = Array.from({ length: 31 }, (_, band) => 400 + 10 * band);
    const lab = labOf({ spectrum: { nm, reflectance: nm.map(() => 0.18) } });
    expect(lab[0]).toBeCloseTo(116 * Math.cbrt(0.18) - 16, 4);
    expect(Math.hypot(lab[1], lab[2])).toBeLessThan(1e-4);
  });

  it('of a D50 white is white', () => {
    const lab = labOf({ lab: [100, 0, 0], light: 'D50' });
    expect(rounded(lab)).toEqual([100, 0, 0]);
  });
});

describe('a colour typed into one field', () => {
  it('is a screen code or Lab figures', () => {
    expect(colourTyped('b3402a')).toEqual({ value: { srgb: '#b3402a' } });
    expect(colourTyped('lab 54 −2 -5')).toEqual({ value: { lab: [54, -2, -5], light: 'D65' } });
    expect(colourTyped('lab-d50 54 -2 -5')).toEqual({
      value: { lab: [54, -2, -5], light: 'D50' },
    });
  });

  it.each(['', 'grey', 'lab 54 -2', 'lab 120 0 0', 'lab a b c', 'spectrum 400:0.1'])(
    '%j is refused with what to write',
    (text) => {
      expect(colourTyped(text).fault).toMatch(/lab 54 -2 -5/);
    },
  );
});

describe('what screens and surfaces cannot have', () => {
  it('a colour outside sRGB is told and brought in; one inside is not', () => {
    expect(screenOf({ lab: [50, 0, -100], light: 'D65' }).isClipped).toBe(true);
    expect(screenOf({ srgb: '#B3402A' })).toEqual({ hex: '#b3402a', isClipped: false });
  });

  it('no surface is as bright and pure as a fluorescent yellow', () => {
    // MacAdam 1935: at L* 97 optimal colours leave little room; a* −30, b* 130 lies far outside.
    expect(isReachable({ lab: [97, -30, 130], light: 'D65' })).toBe(false);
    expect(isReachable({ lab: [54, -2, -5], light: 'D65' })).toBe(true);
  });
});

describe('how the colour was obtained', () => {
  it('a spectrum is measured, and the own ΔE of a guess is not kept for it', () => {
    const nm = Array.from({ length: 31 }, (_, band) => 400 + 10 * band);
    const spectrum = { nm, reflectance: nm.map(() => 0.4) };
    const guessed = finishWith({ provenance: { how: 'guess', deltaE: 9, note: 'Lid.' } });
    const measured = setSpectrum(guessed, spectrum);
    expect(measured.provenance).toEqual({ how: 'measured', note: 'Lid.' });
    expect(measured.colour).toEqual({ spectrum });
    expect(obtained(measured, 'measured')).toBe(measured);
  });

  it('figures stay within what a rack may hold', () => {
    expect(colourFromLab(asLab(120, -300, 300))).toEqual({
      lab: [100, -160, 160],
      light: 'D65',
    });
  });
});
