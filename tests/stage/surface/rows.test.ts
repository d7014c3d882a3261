/**
 * Is every finish of the racks handed to the shader as light can be? Derived from what a surface
 * is: a reflectance lies between 0 and 1, metal has no body under its mirror, cloth has no film to
 * mirror, glass is seen through, and a film of index 1.5 mirrors 4 % [(1.5 − 1)² / (1.5 + 1)²].
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import { isBareMetal, isCloth, isFlake } from '../../../src/finish/finish.ts';
import { parseRack } from '../../../src/finish/rack/rack.ts';
import { rowsFor, wear } from '../../../src/stage/surface/rows.ts';
import { type Surface, surfaceOf, surfaceOfGiven } from '../../../src/stage/surface/surface.ts';
import { finishWith } from '../../finish/sample.ts';

const finishes = ['bench-drawer', 'corner-shop'].flatMap((name) => {
  const path = new URL(`../../../palettes/${name}.json`, import.meta.url);
  return parseRack(readFileSync(path, 'utf8'), name).finishes;
});
const surfaced = finishes.map((finish) => ({
  finish,
  surface: surfaceOf(finish, appearanceOf(finish, 'D65'), 24),
}));
const fresnel = ((1.5 - 1) / (1.5 + 1)) ** 2;
/** The numbers that one part's row holds. */
const rowOf = (surface: Surface): number[] => {
  const rows = rowsFor(1);
  wear(rows, 0, surface);
  return [...(rows.texture.image.data as Float32Array)];
};

describe('the surface of a racked finish', () => {
  it('has colours, roughness, sparkle, bloom and opacity between 0 and 1', () => {
    expect(surfaced.length).toBeGreaterThan(60);
    for (const { finish, surface } of surfaced) {
      const { body, face, flop, mirror, roughness, sparkle, bloom, opacity } = surface;
      for (const value of [
        ...[...body, ...face, ...flop, ...mirror],
        ...[roughness, sparkle, bloom, opacity],
      ]) {
        expect(value, finish.id).toBeGreaterThanOrEqual(0);
        expect(value, finish.id).toBeLessThanOrEqual(1);
      }
      for (const length of [surface.flakeM, surface.grainM]) expect(length).toBeGreaterThan(0);
      for (const value of surface.dye) expect(value, finish.id).toBeGreaterThanOrEqual(0);
    }
  });

  it('is all mirror where it is metal, and has none where it is cloth', () => {
    for (const { finish, surface } of surfaced) {
      if (isBareMetal(finish)) {
        expect([...surface.body, ...surface.face, ...surface.flop]).toEqual(Array(9).fill(0));
        expect(Math.max(...surface.mirror)).toBeGreaterThan(0.3);
      } else if (isCloth(finish)) {
        expect(surface.mirror).toEqual([0, 0, 0]);
      } else {
        // No film mirrors more than its index lets it, and none mirrors in colour.
        expect(new Set(surface.mirror).size, finish.id).toBe(1);
        expect(surface.mirror[0], finish.id).toBeLessThanOrEqual(fresnel + 1e-9);
      }
    }
    expect(surfaced.some(({ finish }) => isBareMetal(finish))).toBe(true);
    expect(surfaced.some(({ finish }) => isCloth(finish))).toBe(true);
  });

  it('sparkles and turns where there is flake, and nowhere else; only candy is dyed', () => {
    for (const { finish, surface } of surfaced) {
      expect(surface.sparkle > 0, finish.id).toBe(isFlake(finish));
      if (!isFlake(finish)) expect(surface.face).toEqual(surface.flop);
      expect(Math.max(...surface.dye) > 0, finish.id).toBe(finish.effect === 'candy');
    }
  });

  it('is rougher the duller it is, whatever the colour', () => {
    const rough = [88, 60, 30, 10, 3].map((gloss60) => {
      const finish = finishWith({ gloss60 });
      return surfaceOf(finish, appearanceOf(finish, 'D65'), 24).roughness;
    });
    expect(rough).toEqual([...rough].sort((a, b) => a - b));
    expect(new Set(rough).size).toBe(rough.length);
  });

  it('keeps grain and flake their size on the model: half the scale, half the full size', () => {
    for (const id of ['lime-ribbon', 'copper-pan']) {
      const finish = finishes.find((one) => one.id === id)!;
      const at = (scale: number): Surface => surfaceOf(finish, appearanceOf(finish, 'D65'), scale);
      expect(at(12).grainM * 2).toBeCloseTo(at(24).grainM, 12);
      expect(at(12).flakeM * 2).toBeCloseTo(at(24).flakeM, 12);
    }
  });
});

describe('the surface of a given part', () => {
  const given = { lab: [60, 10, 20] as const, gloss60: 85 };

  it('hides what is beneath, unless it is glass', () => {
    expect(surfaceOfGiven(given).opacity).toBe(1);
    expect(surfaceOfGiven(given, true).opacity).toBeGreaterThan(0);
    expect(surfaceOfGiven(given, true).opacity).toBeLessThan(0.5);
  });

  it('has no body where it is metal', () => {
    expect(surfaceOfGiven({ ...given, isMetal: true }).body).toEqual([0, 0, 0]);
    expect(Math.max(...surfaceOfGiven(given).body)).toBeGreaterThan(0.1);
  });
});

describe('the rows of a car', () => {
  it('hold finite numbers for every racked finish, unlike ones for unlike finishes', () => {
    const seen = new Set<string>();
    for (const { finish, surface } of surfaced) {
      const row = rowOf(surface);
      expect(row.every(Number.isFinite), finish.id).toBe(true);
      seen.add(row.join());
    }
    // Plain clears are alike on their own; nearly all else differs.
    expect(seen.size).toBeGreaterThan(surfaced.length * 0.9);
  });

  it('change for the part that is painted and for no other, and are handed over again', () => {
    const rows = rowsFor(3);
    const data = rows.texture.image.data as Float32Array;
    const stride = data.length / 3;
    for (const part of [0, 1, 2]) wear(rows, part, surfaced[0]!.surface);
    const before = data.slice();
    const version = rows.texture.version;
    wear(rows, 1, surfaced[20]!.surface);
    const changed = [...data.keys()].filter((at) => data[at] !== before[at]);
    expect(changed.length).toBeGreaterThan(0);
    expect(new Set(changed.map((at) => Math.floor(at / stride)))).toEqual(new Set([1]));
    expect(rows.texture.version).toBeGreaterThan(version);
  });
});
