/**
 * Does the stage show the colours that are scored? Spheres in the product's paint, read back from a
 * real browser. Oracles: colorjs.io for conversions, CIEDE2000 as checked against [Sharma2005] with
 * colorjs.io as a second opinion; physics of a film for what effects must do. A difference of 1 is
 * about what is just seen side by side [CIE015]; the limits below are our judgement.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromaOf } from '../../../src/colour/lab.ts';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import type { Lab } from '../../../src/ground/unit.ts';
import { surfaceOf } from '../../../src/stage/surface/surface.ts';
import { finishWith } from '../../finish/sample.ts';
import {
  disc,
  labOf,
  linearOfLab,
  luminanceOf,
  meanOf,
  racked,
  scale,
  spread,
  staged,
} from './colours.ts';
import { openStudio, type StudioPage, type TestStudio } from './studio.ts';
import {
  metIn,
  middle,
  truthInEvenLight,
  truthOf,
  truthOfMatt,
  truthUnderSoftboxes,
} from './truth.ts';

let studio: TestStudio;
let opened: StudioPage;
beforeAll(async () => {
  studio = await openStudio();
  opened = await studio.open();
});
afterAll(async () => {
  const errors = opened && [...opened.errors, ...(await opened.bench.errors())];
  await studio?.close();
  expect(errors).toEqual([]);
});

describe('a colour that is scored', () => {
  it('is averaged over at least 200 pixels and 40 colours', () => {
    expect(middle.length).toBeGreaterThanOrEqual(200);
    expect(spread().length).toBeGreaterThanOrEqual(40);
  });

  it('is shown in even light: mean difference at most 0.5, worst at most 1.5', async () => {
    const truth = await truthInEvenLight(opened.bench);
    expect(truth.mean).toBeLessThanOrEqual(0.5);
    expect(truth.worst, truth.worstHex).toBeLessThanOrEqual(1.5);
    expect(truth.doubt).toBeLessThan(0.05);
  });

  it('is shown under soft boxes beside a perfect white: mean difference at most 0.5', async () => {
    const truth = await truthUnderSoftboxes(opened.bench);
    expect(truth.mean).toBeLessThanOrEqual(0.5);
    expect(truth.worst, truth.worstHex).toBeLessThanOrEqual(1.5);
  });

  it('would be told from a colour a little off', async () => {
    const [met] = await metIn(opened.bench, [{ colour: { lab: [52, 0, 0] } }], {
      room: 'even',
      mirror: 0,
    });
    const { hex } = staged(finishWith({ colour: { lab: [54, 0, 0] } }));
    expect(truthOf([{ hex, met: met!.met }]).worst).toBeGreaterThan(1.5);
  });

  it('comes back whole on a dead matt solid all through the gamut', async () => {
    const truth = await truthOfMatt(opened.bench);
    expect(truth.mean).toBeLessThanOrEqual(0.5);
    expect(truth.worst, truth.worstHex).toBeLessThanOrEqual(1.5);
  });

  for (const lightness of [10, 50, 90]) {
    it(`comes back whole on a matt solid of L* ${lightness}, its surface included`, async () => {
      const glosses = [1, 2, 3, 4, 5];
      const colour = { lab: [lightness, 0, 0] as [number, number, number] };
      const solids = glosses.map((gloss60) => ({ colour, gloss60 }));
      const met = await metIn(opened.bench, solids, { room: 'even', mirror: 1, knee: 1 });
      for (const [at, gloss60] of glosses.entries()) {
        // From 5 GU a film is no longer dead matt: an eighth of its reflection is mirror image,
        // which a room bright all round rightly adds to a black.
        const limit = gloss60 < 5 ? 1.5 : 1.7;
        expect(truthOf([met[at]!]).worst, `${gloss60} GU`).toBeLessThanOrEqual(limit);
      }
    });
  }
});

describe('an effect on a sphere', () => {
  const side = 96;
  const heart = disc(side, 0.3);
  const rim = disc(side, 0.94).filter((at) => !disc(side, 0.86).includes(at));

  it('metallic is lighter where lamps are mirrored than far from it, as its face and flop are', async () => {
    const finish = racked('copper-pan');
    const look = appearanceOf(finish, 'D65');
    const white = staged(finishWith({ colour: { lab: [100, 0, 0] }, gloss60: 90 })).surface;
    const lighting = { room: 'softbox', mirror: 0, knee: 1, strength: 0.5 } as const;
    const flake = surfaceOf(finish, look, scale);
    const [metal, plain] = await opened.bench.spheres([flake, white], lighting, side);
    // Beside the white each pixel tells the film's own reflectance there.
    const shares = disc(side, 0.9)
      .map((at) => luminanceOf(meanOf(metal!, [at])) / luminanceOf(meanOf(plain!, [at])))
      .sort((a, b) => a - b);
    const [low, high] = [shares[Math.floor(shares.length * 0.02)]!, shares.at(-10)!];
    const of = (lab: Lab): number => luminanceOf(linearOfLab(lab));
    expect(of(look.face)).toBeGreaterThan(of(look.flop));
    // Its look at 45° lies between: lamps mirrored nearer than that lift it, those farther sink it.
    expect(high).toBeGreaterThan(1.3 * of(look.lab));
    expect(low).toBeLessThan(0.8 * of(look.lab));
    // No lighter than its face, no darker than its flop, but for rounding to 8 bits.
    expect(high).toBeLessThanOrEqual(of(look.face) * 1.05);
    expect(low).toBeGreaterThanOrEqual(of(look.flop) * 0.95);
  });

  it('candy with more coats is darker and, at the rim, more saturated', async () => {
    const finish = racked('honeycomb');
    const surfaces = [1, 6].map((coats) =>
      surfaceOf(finish, appearanceOf(finish, 'D65', { coats }), scale),
    );
    const pictures = await opened.bench.spheres(
      surfaces,
      { room: 'even', mirror: 0, knee: 1 },
      side,
    );
    const [few, many] = pictures.map((picture) => ({
      heart: labOf(meanOf(picture, heart)),
      rim: labOf(meanOf(picture, rim)),
    }));
    expect(many!.heart[0]).toBeLessThan(few!.heart[0] - 3);
    expect(many!.rim[0]).toBeLessThan(few!.rim[0] - 3);
    // Saturation s = C* / √(C*² + L*²), from memory, after Lübbe (2010).
    const saturation = (lab: Lab): number => chromaOf(lab) / Math.hypot(chromaOf(lab), lab[0]);
    expect(saturation(many!.rim)).toBeGreaterThan(saturation(few!.rim));
    // The eye looks through more dye at the rim than in the middle.
    expect(many!.rim[0]).toBeLessThan(many!.heart[0]);
    expect(saturation(many!.rim)).toBeGreaterThan(saturation(many!.heart));
  });
});
