/**
 * Gloss, roughness and sheen words against print and against an independent simulation.
 *
 * Tables: `mpi_gloss_levels.csv` (published: Master Painters Institute), `gloss_fresnel_standard.csv`
 * and `ggx_gloss_simulation.csv` (oracle: Fresnel equations, and a Monte Carlo of the same meter
 * written by another hand; standard error under 0.3 GU), `gloss_geometry.csv` (apertures from memory).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Geometry, glossReading, mirrorGloss } from '../../src/finish/optics/glossmeter.ts';
import { fresnelReflectance } from '../../src/finish/optics/lobe.ts';
import { gloss60Table } from '../../src/finish/optics/table.ts';
import {
  gloss60FromRoughness,
  roughnessFromGloss60,
  sheenClasses,
  sheenClassOf,
} from '../../src/finish/sheen.ts';
import { numberIn, rowsOf } from '../published/table.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

describe('a smooth film', () => {
  for (const row of rowsOf('gloss_fresnel_standard')) {
    const n = numberIn(row, 'n');
    it(`of index ${n} reflects what Fresnel says, and its mirror gloss follows`, () => {
      for (const angle of [0, 20, 60, 85]) {
        const found = fresnelReflectance(Math.cos(radians(angle)), n);
        // Six decimals printed: half the last digit.
        expect(Math.abs(found - numberIn(row, `R_${angle}deg`))).toBeLessThan(5.1e-7);
      }
      for (const geometry of [20, 60, 85] as const) {
        const printed = numberIn(row, `GU${geometry}_if_mirror_smooth`);
        expect(Math.abs(mirrorGloss(geometry, n) - printed)).toBeLessThan(0.0051);
      }
    });
  }

  it('of the polished standard, n = 1.567, reads 100 GU at every angle', () => {
    // Published: ISO 2813, definition of the gloss unit.
    for (const geometry of [20, 60, 85] as const) {
      expect(mirrorGloss(geometry, 1.567)).toBeCloseTo(100, 10);
    }
  });
});

describe('a gloss meter over a rough film', () => {
  for (const row of rowsOf('ggx_gloss_simulation')) {
    const roughness = numberIn(row, 'gltf_roughness');
    it(`reads what the independent simulation reads at roughness ${roughness}`, () => {
      for (const geometry of [20, 60, 85] as Geometry[]) {
        const simulated = numberIn(row, `GU${geometry}_ggx`);
        expect(Math.abs(glossReading(roughness, geometry) - simulated)).toBeLessThan(0.3);
      }
    });
  }

  it('is what the stored table holds, every row', () => {
    for (const [roughness, gloss60] of gloss60Table) {
      expect(Math.abs(glossReading(roughness, 60) - gloss60)).toBeLessThan(5.1e-5);
    }
  });

  it('agrees with the joined table between the rows', () => {
    // Oracle: the meter itself. 0.05 GU is a hundredth of what trade practice calls visible.
    for (let step = 0; step < 60; step++) {
      const roughness = (step + 0.37) / 60;
      const gap = Math.abs(gloss60FromRoughness(roughness) - glossReading(roughness, 60));
      expect(gap).toBeLessThan(0.05);
    }
  });
});

describe('gloss and roughness', () => {
  it('a higher gloss is never rougher', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (a, b) => {
          const [dull, shiny] = a < b ? [a, b] : [b, a];
          expect(roughnessFromGloss60(shiny)).toBeLessThanOrEqual(roughnessFromGloss60(dull));
        },
      ),
      { seed: 60, numRuns: 500 },
    );
  });

  it('go there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.12, max: 89.1, noNaN: true }), (gloss60) => {
        expect(gloss60FromRoughness(roughnessFromGloss60(gloss60))).toBeCloseTo(gloss60, 4);
      }),
      { seed: 61, numRuns: 500 },
    );
  });

  it('a metal that out-shines any paint counts as mirror smooth', () => {
    expect(roughnessFromGloss60(100)).toBe(0);
  });
});

describe('sheen words', () => {
  const levels = rowsOf('mpi_gloss_levels');

  it('are as many as the levels of the painting institute', () => {
    expect(sheenClasses).toHaveLength(levels.length);
  });

  levels.forEach((level, position) => {
    it(`${sheenClasses[position]!.name} lies inside level ${level.level}`, () => {
      const { from, to } = sheenClasses[position]!;
      expect(from).toBeGreaterThanOrEqual(numberIn(level, 'GU60_min'));
      if (level.GU60_max !== '') expect(to).toBeLessThanOrEqual(numberIn(level, 'GU60_max'));
    });
  });

  it('follow one another without gap or overlap', () => {
    sheenClasses.slice(1).forEach(({ from }, before) => {
      expect(from).toBe(sheenClasses[before]!.to);
      expect(sheenClassOf(from - 1e-9)).toBe(sheenClasses[before]);
      expect(sheenClassOf(from)).toBe(sheenClasses[before + 1]);
    });
  });

  it('keep a matt black and a gloss black apart', () => {
    expect(sheenClassOf(4).name).toBe('dead matt');
    expect(sheenClassOf(92).name).toBe('high gloss');
  });
});
