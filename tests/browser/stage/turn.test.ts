/**
 * The cars of a round as a viewer turns them on a phone, drawn in software. Three bodies of unlike
 * colours, so that a car under another's letter is told from its pixels: which of them show the body
 * is told by lines of sight through the mesh, what light may make of its colour by `mask`. Needs
 * `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, CDPSession, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Build, type EmbeddedFinish, refOf } from '../../../src/build/build.ts';
import { parseBuild } from '../../../src/build/file.ts';
import { absentCarParts } from '../../../src/build/fitted.ts';
import { type Mesh, meshWithout } from '../../../src/car/mesh.ts';
import type { SightTable } from '../../../src/car/table.ts';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import { addressOf } from '../../../src/opinion/link/link.ts';
import { roundOf } from '../../../src/opinion/round.ts';
import { poseAt } from '../../../src/stage/camera/places.ts';
import { viewFrame } from '../../../src/stage/camera/pose.ts';
import { metAlong, sightlineThrough } from '../../../src/stage/car/pick.ts';
import { liveInSoftware, phone, startBrowser } from '../browser.ts';
import { apart, type Region, seenOf } from '../pixels.ts';
import { type Host, serve } from '../serve.ts';
import { linearOf, linearOfHex, type Rgb, racked } from './colours.ts';
import { farFromLit } from './mask.ts';
import { readRoadster } from './roadster.ts';

const at = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const read = (path: string): string => readFileSync(at(path), 'utf8');
const sight = JSON.parse(read('models/roadster.sight.json')) as SightTable;
const letters = ['A', 'B', 'C'] as const;
/** Bodies of A, B and C. */
const bodies: readonly EmbeddedFinish[] = ['raspberry-fool', 'spearmint', 'mustard-seed'].map(
  (id) => ({ rack: 'bodies', ...racked(id) }),
);

/** The demo with one of those bodies on each alternative, seen by lamplight. */
function threeBodies(): Build {
  const demo = parseBuild(read('src/build/demo.json'), 'demo.json');
  const candidates = bodies.map(refOf);
  return {
    ...demo,
    rules: [],
    viewing: { ...demo.viewing, light: 'A' },
    finishes: [...demo.finishes, ...bodies],
    parts: demo.parts.map(({ id, name, covers, absent, ...part }) =>
      id === 'body'
        ? { id, name, covers, absent, candidates }
        : { id, name, covers, absent, ...part },
    ),
    alternatives: demo.alternatives.map((one, k) => ({
      ...one,
      choices: { ...one.choices, body: candidates[k]! },
    })),
  };
}

const build = threeBodies();
const round = roundOf(build);
let browser: Browser;
let host: Host;
let mesh: Mesh;
let page: Page;
const errors: string[] = [];

beforeAll(async () => {
  if (!existsSync(at('dist/app/round.html'))) throw new Error('dist/app is missing: npm run build');
  [browser, host, mesh] = await Promise.all([
    startBrowser(liveInSoftware),
    serve(at('dist/app/'), '/some/where/'),
    readRoadster().then((whole) => meshWithout(whole, absentCarParts(build, sight.parts))),
  ]);
  page = await opened();
  await turn(page).locator('[data-liveness="live"]').waitFor();
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
  expect(errors).toEqual([]);
  expect(host.missing).toEqual([]);
});

/** A phone with the round, on which 3D has been asked for. */
async function opened(before: () => void = () => {}): Promise<Page> {
  const context = await browser.newContext({ ...phone, reducedMotion: 'reduce' });
  const fresh = await context.newPage();
  fresh.setDefaultTimeout(60_000);
  fresh.on('pageerror', (error) => errors.push(error.message));
  fresh.on('console', (said) => {
    if (said.type() === 'error') errors.push(said.text());
  });
  await fresh.addInitScript(before);
  await fresh.goto(addressOf(host.url, round), { waitUntil: 'commit' });
  await fresh.getByRole('button', { name: 'Turn it in 3D' }).click();
  return fresh;
}

const turn = (of: Page): Locator => of.getByRole('region', { name: 'The cars in 3D' });
const stand = (letter: string): Locator =>
  page.getByRole('application', { name: `Car ${letter}, to be turned` });
const lookFrom = (place: string): Promise<void> =>
  page.getByRole('radio', { name: place, exact: true }).check({ force: true });

/** What is seen of the cars, in the order of their letters, once nothing changes any more. */
async function cars(): Promise<Region[]> {
  const all = page.locator('.turn-cars');
  let before: Region | undefined;
  for (let look = 0; look < 40; look++) {
    await page.locator('.live[data-picture="still"]').waitFor();
    await all.evaluate((element) => element.scrollIntoView({ block: 'end' }));
    const now = await seenOf(page, all);
    if (before !== undefined && apart(before, now) === 0) return cutOut(now);
    before = now;
    await page.waitForTimeout(100);
  }
  throw new Error('the picture never comes to rest');
}

/** The stands, cut out of a picture of all of them. */
async function cutOut({ width, rgba }: Region): Promise<Region[]> {
  const origin = (await page.locator('.turn-cars').boundingBox())!;
  const boxes = await Promise.all(letters.map((letter) => stand(letter).boundingBox()));
  return boxes.map((box) => {
    const [left, top] = [Math.round(box!.x - origin.x), Math.round(box!.y - origin.y)];
    const [wide, tall] = [Math.floor(box!.width), Math.floor(box!.height)];
    const cut = new Uint8Array(wide * tall * 4);
    for (let row = 0; row < tall; row++) {
      const start = ((top + row) * width + left) * 4;
      cut.set(rgba.subarray(start, start + wide * 4), row * wide * 4);
    }
    return { width: wide, height: tall, rgba: cut };
  });
}

/** Pixels of a view from the side with nothing but body for ten of them around; every tenth is asked. */
function bodyPixels({ width, height }: Region): number[] {
  const body = mesh.parts.findIndex(({ id }) => id === 'body');
  const pose = poseAt(mesh, 'side', width / height);
  const frame = viewFrame(pose);
  const isBody = (column: number, row: number): boolean => {
    const [x, y] = [(2 * (column + 0.5)) / width - 1, 1 - (2 * (row + 0.5)) / height];
    const line = sightlineThrough(frame, pose.fieldDegrees, width / height, x, y);
    return metAlong(mesh, line)?.part === body;
  };
  const [step, rows, columns] = [10, Math.floor(height / 10), Math.floor(width / 10)];
  const grid = Array.from({ length: rows * columns }, (_, k) =>
    isBody((k % columns) * step, Math.floor(k / columns) * step),
  );
  return [...grid.keys()]
    .filter((k) => [0, -1, 1, -columns, columns].every((aside) => grid[k + aside]))
    .map((k) => Math.floor(k / columns) * step * width + (k % columns) * step);
}

/** Mean in linear light of the pixels that no highlight has lightened beyond the scale. */
function meanOf({ rgba }: Region, pixels: readonly number[]): Rgb {
  const dull = pixels.filter((k) => [0, 1, 2].every((channel) => rgba[k * 4 + channel]! < 244));
  expect(dull.length).toBeGreaterThan(30);
  return [0, 1, 2].map(
    (channel) => dull.reduce((sum, k) => sum + linearOf(rgba[k * 4 + channel]!), 0) / dull.length,
  ) as unknown as Rgb;
}

/** What a finger does on the phone's glass, from a point by steps of some pixels. */
async function slide(from: { x: number; y: number }, dx: number, dy: number): Promise<void> {
  const glass: CDPSession = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share?: number) =>
    glass.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: share === undefined ? [] : [{ x: from.x + dx * share, y: from.y + dy * share }],
    });
  await touch('touchStart', 0);
  for (const share of [0.2, 0.4, 0.6, 0.8, 1]) await touch('touchMove', share);
  await touch('touchEnd');
  await glass.detach();
}

const middleOf = async (letter: string): Promise<{ x: number; y: number }> => {
  const { x, y, width, height } = (await stand(letter).boundingBox())!;
  return { x: x + width / 2, y: y + height / 2 };
};
const isFrom = (place: string): Promise<boolean> =>
  page.getByRole('radio', { name: place, exact: true }).isChecked();
const scrolled = (): Promise<number> => page.evaluate(() => scrollY);

describe('the cars of a round', () => {
  it('stand under their own letters, in their own finishes, by the light of the round', async () => {
    await lookFrom('Side');
    const seen = await cars();
    const pixels = bodyPixels(seen[0]!);
    const lookOf = (finish: EmbeddedFinish, light: 'A' | 'D65'): Rgb =>
      linearOfHex(appearanceOf(finish, light).hex);
    for (const [k, region] of seen.entries()) {
      const met = meanOf(region, pixels);
      for (const [other, finish] of bodies.entries()) {
        const far = farFromLit(met, [lookOf(finish, 'A')]);
        // As in the roadster's own suite: light makes a colour lighter, darker or paler, no more.
        if (other === k) expect(far, `${letters[k]} in its own`).toBeLessThanOrEqual(3);
        else expect(far, `${letters[k]} in that of ${letters[other]}`).toBeGreaterThan(6);
      }
    }
    // The raspberry of A is another colour by daylight.
    const raspberry = meanOf(seen[0]!, pixels);
    const [lamplight, daylight] = (['A', 'D65'] as const).map((light) =>
      farFromLit(raspberry, [lookOf(bodies[0]!, light)]),
    );
    expect(daylight).toBeGreaterThan(lamplight! + 1);
  });

  it('turn together under a finger that moves across, and go back by a key', async () => {
    await lookFrom('Side');
    const before = await cars();
    const held = await scrolled();
    const { x, y } = await middleOf('B');
    await slide({ x: x - 60, y }, 120, 0);
    const turned = await cars();
    for (const [k, region] of turned.entries()) {
      expect(apart(before[k]!, region), letters[k]).toBeGreaterThan(3);
    }
    expect(await scrolled()).toBe(held);
    expect(await isFrom('Side')).toBe(false);
    await stand('C').press('Home');
    expect(await isFrom('Front')).toBe(true);
  });

  it('are axe-clean, and leave the page to a finger that moves down', async () => {
    const { violations } = await new AxeBuilder({ page }).include('.round-turning').analyze();
    expect(violations).toEqual([]);
    await lookFrom('Side');
    const before = await scrolled();
    const { x, y } = await middleOf('B');
    await slide({ x, y: y - 60 }, 0, 200);
    await expect.poll(scrolled).toBeLessThan(before - 50);
    expect(await isFrom('Side')).toBe(true);
  });

  it('give way to drawings where 3D is lost, in words, and come back with it', async () => {
    const context = await page.evaluateHandle(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('.stage-canvas')!;
      return canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!;
    });
    await context.evaluate((lost) => lost.loseContext());
    await turn(page)
      .getByText(/These are drawings|these are drawings/)
      .waitFor();
    expect(
      await turn(page)
        .getByRole('img', { name: /^Drawing of car/ })
        .count(),
    ).toBe(3);
    await context.evaluate((lost) => lost.restoreContext());
    await turn(page).locator('[data-liveness="live"]').waitFor();
    expect(
      await turn(page)
        .getByText(/drawings of the same finishes/)
        .count(),
    ).toBe(0);
  });
});

describe('a browser that draws no 3D', () => {
  it('says so, shows the drawings, and puts them away again', async () => {
    const bare = await opened(() => {
      const getContext = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string) {
        return kind === 'webgl2' ? null : getContext.call(this, kind as '2d');
      } as typeof getContext;
    });
    await turn(bare)
      .getByText(/This browser draws no 3D/)
      .waitFor();
    expect(
      await turn(bare)
        .getByRole('img', { name: /^Drawing of car/ })
        .count(),
    ).toBe(3);
    await bare.getByRole('button', { name: 'Put the 3D away' }).click();
    await expect.poll(() => turn(bare).getByRole('img').count()).toBe(0);
    await bare.context().close();
  });
});
