/**
 * Coats, interfaces and candy against worked figures.
 *
 * Tables: `coating_checks.csv` and `candy_coat_worked_example.csv` (oracle: the same textbook
 * equations worked by another hand), `saunderson_constants.csv` (oracle: Fresnel integrals after
 * Saunderson 1942, JOSA 32, 727–736). Not run: rows on a diffuse film, on a white body's share of
 * a gloss reading and on surface height, which this model does not use.
 */
import { describe, expect, it } from 'vitest';
import { whiteOf } from '../../src/colour/illuminant.ts';
import { labFromXyz } from '../../src/colour/lab.ts';
import { xyzFromReflectance } from '../../src/colour/spectrum.ts';
import { reflectanceOf } from '../../src/finish/colour.ts';
import { flopIndexFrom, lightnessesFrom } from '../../src/finish/flop.ts';
import {
  absorptionFromMasstone,
  filmOverGround,
  insideSurface,
  k2,
  masstoneFromAbsorption,
  pathFactor,
  seenThroughSurface,
  transmittance,
} from '../../src/finish/optics/coat.ts';
import { fresnelReflectance } from '../../src/finish/optics/lobe.ts';
import { asReflectance } from '../../src/ground/unit.ts';
import { numberIn, rowsOf } from '../published/table.ts';

const checks = rowsOf('coating_checks');
const printed = (quantity: string, inputs = ''): number => {
  const row = checks.find((one) => one.quantity === quantity && one.inputs!.startsWith(inputs));
  if (row === undefined) throw new Error(`no row ${quantity} ${inputs}`);
  return numberIn(row, 'value');
};
/** Six decimals printed: half the last digit. */
const sixDecimals = 5.1e-7;
const near = (found: number, wanted: number, within = sixDecimals): void =>
  expect(Math.abs(found - wanted)).toBeLessThan(within);

describe('coating equations', () => {
  it('light turned back inside the film: there and back', () => {
    near(seenThroughSurface(0.5, 0.04, 0.6), printed('saunderson forward'));
    near(insideSurface(0.3142857, 0.04, 0.6), printed('saunderson inverse'));
  });

  it('the colour of a film thick enough to hide', () => {
    near(absorptionFromMasstone(0.25), printed('KM K/S'));
    near(masstoneFromAbsorption(1.125), printed('KM Rinf'));
  });

  it('a film over a light and a dark ground, thick and clear', () => {
    const film = 'KM film over ground';
    near(filmOverGround(1.125, 1, 1, 0.8), printed(film, 'K=1.125,S=1,X=1,Rg=0.8'));
    near(filmOverGround(1.125, 1, 1, 0.05), printed(film, 'K=1.125,S=1,X=1,Rg=0.05'));
    near(filmOverGround(1.125, 1, 10, 0.8), printed('KM film, hiding limit'));
    near(filmOverGround(0.5, 0, 1, 0.8), printed('transparent limit'));
    near(filmOverGround(0.5, 1e-6, 1, 0.8), printed('KM with S=1e-6 (check)'), 1.1e-6);
  });

  it('three dyed coats, crossed twice', () => {
    near(0.7 * transmittance(0.8, 6), printed('Beer-Lambert per coat'));
  });

  it('the longer way of a slanting look', () => {
    near(pathFactor(Math.PI / 3), printed('path length factor'));
  });

  it('the flop index of a strong silver and of a solid colour', () => {
    near(flopIndexFrom(100, 50, 20), printed('flop index'), 1e-5);
    expect(flopIndexFrom(50, 50, 50)).toBe(printed('flop index solid colour'));
  });

  it('face and flop set from an index have that index', () => {
    for (const flopIndex of [0.5, 5, 12, 17, 30]) {
      for (const l45 of [3, 20, 50, 85]) {
        const { face, flop } = lightnessesFrom(flopIndex, l45);
        expect(flopIndexFrom(face, l45, flop)).toBeCloseTo(flopIndex, 9);
        expect(flop).toBeGreaterThan(0);
      }
    }
  });
});

describe('the constants of the interface', () => {
  for (const row of rowsOf('saunderson_constants')) {
    const n = numberIn(row, 'n');
    it(`at index ${n} follow from Fresnel`, () => {
      // Brute force: Fresnel over the half-sphere, weighted as strewn light arrives.
      const steps = 20_000;
      let strewn = 0;
      for (let step = 0; step < steps; step++) {
        const share = (step + 0.5) / steps;
        strewn += fresnelReflectance(Math.sqrt(share), n) / steps;
      }
      near(fresnelReflectance(1, n), numberIn(row, 'k1_collimated_normal'), 5.1e-5);
      near(strewn, numberIn(row, 'k1_diffuse'), 5.1e-5);
      near(1 - (1 - strewn) / n ** 2, numberIn(row, 'k2_internal_diffuse'), 5.1e-5);
    });
  }

  it('the k2 we use is the theory for index 1.5, rounded, and inside the practical 0.4–0.6', () => {
    const theory = rowsOf('saunderson_constants').find((row) => row.n === '1.5')!;
    near(k2, numberIn(theory, 'k2_internal_diffuse'), 0.005);
    expect(k2).toBeLessThanOrEqual(0.6);
  });
});

describe('the worked candy: a red dye over a bright base', () => {
  const base = reflectanceOf({ srgb: '#c8cacc' }).reflectance;
  const dye = reflectanceOf({ srgb: '#c41e26' }).reflectance;
  for (const row of rowsOf('candy_coat_worked_example')) {
    const coats = numberIn(row, 'coats');
    it(`looks as worked after ${coats} coats, under daylight and lamp light`, () => {
      const seen = asReflectance(
        base.map((ground, band) =>
          seenThroughSurface(
            insideSurface(ground, 0.04, 0.6) * transmittance(dye[band]! ** (1 / 8), 2 * coats),
            0.04,
            0.6,
          ),
        ),
      );
      for (const light of ['D65', 'A'] as const) {
        const lab = labFromXyz(xyzFromReflectance(seen, light), whiteOf(light));
        // The other hand rounds its sRGB matrix to other digits: up to 0.005 in Lab.
        ['L', 'a', 'b'].forEach((axis, at) => {
          near(lab[at]!, numberIn(row, `${axis}_${light}`), 0.01);
        });
      }
    });
  }
});
