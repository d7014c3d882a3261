/**
 * Does the roadster wear what it is given, and only that? The product's own stage in a real browser.
 * Oracles: the part of every pixel as the stage's own id picture tells it, colorjs.io for colours,
 * what neutral light may do to a reflectance, and the WebGL interface itself for what was asked of
 * the graphics card.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Mesh } from '../../../src/car/mesh.ts';
import { chromaOf } from '../../../src/colour/lab.ts';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import type { Finish } from '../../../src/finish/finish.ts';
import { asLab } from '../../../src/ground/unit.ts';
import { poseAt } from '../../../src/stage/camera/places.ts';
import type { Pose } from '../../../src/stage/camera/pose.ts';
import type { StagedCar } from '../../../src/stage/Scene.tsx';
import { finishWith } from '../../finish/sample.ts';
import { labOf, linearOfHex, linearOfLab, meanOf, type Rgb, racked, staged } from './colours.ts';
import { farFromLit, peakOverMean, within, without } from './mask.ts';
import type { Sent } from './page/bench.ts';
import { demoCars, partNamed, readRoadster, wearing } from './roadster.ts';
import { bytesOf, openStudio, type StudioPage, type TestStudio } from './studio.ts';

const size = { width: 225, height: 150 };
/** Brightness of a channel above which highlights roll off, 8 bits. */
const rolled = 244;

let studio: TestStudio;
let opened: StudioPage;
let mesh: Mesh;
let pose: Pose;
let cars: StagedCar[];
let parts: Sent;
let body: number;

beforeAll(async () => {
  mesh = await readRoadster();
  pose = poseAt(mesh, 'front', size.width / size.height);
  body = partNamed(mesh, 'body');
  cars = demoCars(mesh, 4);
  studio = await openStudio();
  opened = await studio.open();
  await opened.bench.stand([cars], pose, size);
  parts = await opened.bench.parts('car-0', pose, size);
});
afterAll(async () => {
  const errors = opened && [...opened.errors, ...(await opened.bench.errors())];
  await studio?.close();
  expect(errors).toEqual([]);
});

const pictureOf = (id: string): Promise<Sent> => opened.bench.picture(id, pose, size);
/** The first car, alone on the stage, with its body in a finish. */
async function bodyIn(finish: Finish): Promise<Sent> {
  await opened.bench.dress([wearing(cars[0]!, body, staged(finish).surface)]);
  return pictureOf('car-0');
}
/** One car is drawn many times over quicker than four. */
let isAlone = false;
async function alone(): Promise<void> {
  if (isAlone) return;
  isAlone = true;
  await opened.bench.dress(cars.slice(0, 1));
}
const isSame = (one: Sent, other: Sent): boolean => one.bytes === other.bytes;

describe('four cars on one stage', () => {
  it('are each drawn, in their own finishes', async () => {
    const pictures = await Promise.all(cars.map(({ id }) => pictureOf(id)));
    for (const picture of pictures) {
      const bytes = bytesOf(picture);
      const solid = within(parts, body);
      expect(solid.length).toBeGreaterThan(500);
      expect(solid.every((at) => bytes[at * 4 + 3] === 255)).toBe(true);
    }
    // The demo has three alternatives; the fourth car wears the first one's finishes again.
    expect(isSame(pictures[0]!, pictures[1]!)).toBe(false);
    expect(isSame(pictures[0]!, pictures[2]!)).toBe(false);
    expect(isSame(pictures[0]!, pictures[3]!)).toBe(true);
  });

  it('need at most 40 draw calls a car', async () => {
    await opened.bench.counts();
    await opened.bench.drawOnce('car-1', pose, size);
    const { draws } = await opened.bench.counts();
    expect(draws).toBeGreaterThan(0);
    expect(draws).toBeLessThanOrEqual(40);
  });

  it('come out byte for byte the same twice', async () => {
    expect(isSame(await pictureOf('car-2'), await pictureOf('car-2'))).toBe(true);
  });
});

describe('another finish on one part', () => {
  beforeAll(alone);
  it('rebuilds no geometry, compiles no program and changes no other part', async () => {
    const before = await bodyIn(racked('field-poppy'));
    const held = await opened.bench.counts();
    const after = await bodyIn(racked('lichen'));
    const spent = await opened.bench.counts();
    expect(isSame(before, after)).toBe(false);
    expect(spent.compiled).toBe(0);
    expect(spent.linked).toBe(0);
    expect(spent.geometryBytes).toBe(0);
    expect(spent.geometries).toBe(held.geometries);
    expect(spent.programs).toBe(held.programs);
    expect(spent.textureBytes).toBeGreaterThan(0);
    const [one, other] = [bytesOf(before), bytesOf(after)];
    const fine = await opened.bench.parts('car-0', pose, {
      width: 4 * size.width,
      height: 4 * size.height,
    });
    const elsewhere = without(fine, 4, body);
    expect(elsewhere.length).toBeGreaterThan(3000);
    const isKept = (at: number): boolean =>
      [0, 1, 2, 3].every((k) => one[at * 4 + k] === other[at * 4 + k]);
    // Slivers of the body thinner than a quarter of a pixel have no id at all.
    const strays = elsewhere.filter((at) => !isKept(at)).length;
    expect(strays).toBeLessThanOrEqual(elsewhere.length / 10_000);
  });
});

/** One of the racks for each effect and sheen. */
const worn: readonly (readonly [kind: string, finish: string])[] = [
  ['gloss solid', 'field-poppy'],
  ['satin solid', 'wet-clay'],
  ['matt solid', 'lichen'],
  ['metallic', 'copper-pan'],
  ['pearl', 'dragonfly'],
  ['candy', 'kingfisher'],
  ['ribbon', 'lime-ribbon'],
  ['flock', 'forest-flock'],
  ['leather', 'cobalt-hide'],
  ['bare metal', 'copper-wire'],
  ['foil', 'gold-foil'],
  ['rubber', 'grey-hose-rubber'],
  ['lens', 'amber-lens'],
];
/**
 * Neutral light makes a finish lighter, darker or paler, never another hue: least difference from
 * anything that such light makes of it. Left over are a grid step, 8-bit rounding, light that
 * surfaces throw on into shade, and means over pixels; our judgement, about three steps just seen.
 */
const hueTolerance = 3;

describe('every effect on the body', () => {
  beforeAll(alone);
  for (const [kind, id] of worn) {
    it(`${kind} is drawn whole and has the hue of its scored colour`, async () => {
      const finish = racked(id);
      const picture = await bodyIn(finish);
      const bytes = bytesOf(picture);
      const region = within(parts, body).filter((at) =>
        [0, 1, 2].every((k) => bytes[at * 4 + k]! < rolled),
      );
      expect(region.length).toBeGreaterThanOrEqual(200);
      const met = meanOf(picture, region);
      expect(met.every((value) => Number.isFinite(value) && value > 0 && value < 1)).toBe(true);
      const [lightness, a, b] = appearanceOf(finish, 'D65').lab;
      expect(farFromLit(met, looksOf(finish))).toBeLessThanOrEqual(hueTolerance);
      // The check can fail: the opposite hue is far off wherever there is a hue to speak of.
      if (chromaOf(asLab(lightness, a, b)) < 15) return;
      const opposite = linearOfLab(asLab(lightness, -a, -b)).map((value) =>
        Math.min(1, Math.max(0, value)),
      ) as unknown as Rgb;
      expect(farFromLit(met, [opposite])).toBeGreaterThan(2 * hueTolerance);
    });
  }

  it('of flock and ribbon, as of every other, leaves no pixel of the body clear or unlit', async () => {
    for (const [, id] of worn.slice(6, 8)) {
      const bytes = bytesOf(await bodyIn(racked(id)));
      for (const at of within(parts, body)) {
        expect(bytes[at * 4 + 3]).toBe(255);
        expect(bytes[at * 4]! + bytes[at * 4 + 1]! + bytes[at * 4 + 2]!).toBeGreaterThan(0);
      }
    }
  });
});

/** Reflectances a finish may show: its own, and for flake anything from flop to face. */
function looksOf(finish: Finish): Rgb[] {
  const { hex, surface } = staged(finish);
  const own = linearOfHex(hex);
  if (surface.sparkle === 0) return [own];
  const { face, flop } = appearanceOf(finish, 'D65');
  const between = (from: Rgb, to: Rgb, share: number): Rgb =>
    from.map((value, k) => value * (1 - share) + to[k]! * share) as unknown as Rgb;
  const ends = [face, flop].map(
    (lab) => linearOfLab(lab).map((v) => Math.max(0, v)) as unknown as Rgb,
  );
  return [0, 0.25, 0.5, 0.75, 1].flatMap((share) => ends.map((end) => between(own, end, share)));
}

describe('the sheen of a black body', () => {
  beforeAll(alone);
  it('is told by its highlights: gloss over satin over matt, peak over mean', async () => {
    const peaks: number[] = [];
    for (const gloss60 of [88, 25, 4]) {
      const black = finishWith({ colour: { lab: [10, 0, 0] }, gloss60 });
      peaks.push(peakOverMean(await bodyIn(black), within(parts, body)));
    }
    const [gloss, satin, matt] = peaks as [number, number, number];
    // The lamps' own images are cut off at white, so that gloss is ahead of satin by little here.
    expect(gloss).toBeGreaterThan(1.04 * satin);
    expect(satin).toBeGreaterThan(1.2 * matt);
  });
});

describe('a hue', () => {
  beforeAll(alone);
  it('is read from the very pixels: a grey body has none', async () => {
    const picture = await bodyIn(racked('grey-hose-rubber'));
    expect(chromaOf(labOf(meanOf(picture, within(parts, body))))).toBeLessThan(1);
  });
});

describe('a context that the browser takes away', () => {
  beforeAll(alone);
  it('is drawn again once it is given back, the same as before', async () => {
    const before = await pictureOf('car-0');
    await opened.bench.loseAndRestore();
    expect(isSame(await pictureOf('car-0'), before)).toBe(true);
  });
});
