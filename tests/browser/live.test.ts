/**
 * The live cars as a builder meets them, in a real browser that draws 3D in software: slow, so the
 * journeys at the desk go one after the other on one page. Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { liveInSoftware, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { apart, luminances, seen, seenOf } from './pixels.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const demo = JSON.parse(
  readFileSync(new URL('../../src/build/demo.json', import.meta.url), 'utf8'),
) as { alternatives: { id: string; name: string }[]; parts: { name: string }[] };
const small: BrowserContextOptions = { viewport: { width: 1000, height: 800 } };
let browser: Browser;
let host: Host;
let opened: OpenPage;

beforeAll(async () => {
  if (!existsSync(`${built}index.html`)) throw new Error('dist/app is missing: npm run build');
  [browser, host] = await Promise.all([startBrowser(liveInSoftware), serve(built, '/some/where/')]);
  await open(small);
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});
afterEach(async () => {
  expect(opened.errors).toEqual([]);
  expect(opened.strangers).toEqual([]);
  expect(host.missing).toEqual([]);
});

const isLive = (page: Page) => page.locator('.stage[data-liveness="live"]').waitFor();
const open = async (screen: BrowserContextOptions): Promise<Page> => {
  opened = await visit(browser, host.url, screen);
  // A picture drawn in software on a busy machine may take seconds.
  opened.page.setDefaultTimeout(80_000);
  await isLive(opened.page);
  await settled(opened.page);
  return opened.page;
};
/** The page at the desk, as it is seen when one comes to it; what was changed before stays. */
const start = async (): Promise<Page> => {
  const { page } = opened;
  await page.keyboard.press('Escape');
  await page.mouse.move(5, 5);
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    window.scrollTo(0, 0);
  });
  // The stage grows as one comes back to it, and its switches move.
  await settled(page);
  await pick(page, 'View', 'Front');
  await settled(page);
  return page;
};
const standOf = (page: Page, letter: string) =>
  page.getByRole('article', { name: `Alternative ${letter}`, exact: true }).locator('.stand');
const pick = (page: Page, legend: string, name: string) =>
  page
    .getByRole('group', { name: legend })
    .getByRole('radio', { name, exact: true })
    .check({ force: true });

/** Waits until nothing is due to be drawn and two looks at a stand, a moment apart, are the same. */
async function settled(page: Page, letter = 'A'): Promise<void> {
  await page.locator('.live[data-picture="still"]').waitFor();
  let before = await seenOf(page, standOf(page, letter));
  for (let k = 0; k < 40; k++) {
    await page.waitForTimeout(250);
    const now = await seenOf(page, standOf(page, letter));
    // Stands may change size meanwhile.
    if (now.rgba.length === before.rgba.length && apart(before, now) === 0) return;
    before = now;
  }
  throw new Error('the picture never comes to rest');
}

/** A point of the window where the mouse meets this part of the build, found by trying. */
async function pointOn(
  page: Page,
  letter: string,
  part: string,
): Promise<{ x: number; y: number }> {
  const box = (await standOf(page, letter).boundingBox())!;
  const pointed = page
    .getByRole('article', { name: `Alternative ${letter}`, exact: true })
    .locator('.pointed strong');
  for (let row = 3; row < 18; row++) {
    for (let column = 2; column < 19; column++) {
      const [x, y] = [box.x + (box.width * column) / 20, box.y + (box.height * row) / 20];
      await page.mouse.move(x, y);
      if ((await pointed.count()) > 0 && (await pointed.textContent()) === part) return { x, y };
    }
  }
  throw new Error(`${part} cannot be pointed at`);
}

describe('the live cars', () => {
  it('open still, say in words what each wears, and are axe-clean', async () => {
    const page = await start();
    expect(await page.locator('canvas.stage-canvas').count()).toBe(1);
    for (const letter of ['A', 'B', 'C']) {
      const words = await page
        .getByRole('article', { name: `Alternative ${letter}`, exact: true })
        .textContent();
      for (const { name } of demo.parts) expect(words).toContain(name);
    }
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations).toEqual([]);
  }, 150_000);

  it('turn together by drag and by arrow keys, come closer, and go back', async () => {
    const page = await start();
    const at = async () =>
      Promise.all([seenOf(page, standOf(page, 'A')), seenOf(page, standOf(page, 'B'))]);
    const before = await at();
    const box = (await standOf(page, 'A').boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 90, box.y + box.height / 2, { steps: 3 });
    await page.mouse.up();
    await page.mouse.move(5, 5);
    await settled(page);
    const dragged = await at();
    expect(apart(before[0], dragged[0])).toBeGreaterThan(3);
    expect(apart(before[1], dragged[1])).toBeGreaterThan(3);
    await pick(page, 'View', 'Front');
    await settled(page);
    expect(apart(before[0], (await at())[0])).toBeLessThan(0.5);

    await standOf(page, 'B').focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('+');
    await settled(page);
    expect(apart(before[0], (await at())[0])).toBeGreaterThan(3);
    await page.keyboard.press('Home');
    await standOf(page, 'B').blur();
    await settled(page);
    expect(apart(before[0], (await at())[0])).toBeLessThan(0.5);
  }, 180_000);

  it('bring a part into sight when its spoons are opened from the table', async () => {
    const page = await start();
    await pick(page, 'View', 'Wheel');
    // Cars are smaller while one works beneath them, so the page goes there first.
    const cell = page.getByRole('button', { name: /^Seat piping on A:/ });
    await cell.scrollIntoViewIfNeeded();
    await settled(page);
    const wheel = await seenOf(page, standOf(page, 'A'));
    await cell.click();
    await settled(page);
    expect(apart(wheel, await seenOf(page, standOf(page, 'A')))).toBeGreaterThan(5);
    await page.mouse.move(5, 5);
    await page.keyboard.press('Escape');
    // The focus that goes back to the cell lights nothing: the car is seen as it is.
    await page.waitForTimeout(300);
    expect(await page.locator('tr.is-lit').count()).toBe(0);
  }, 150_000);

  it('show another alternative in their place while its letter is held', async () => {
    const page = await start();
    const own = await seenOf(page, standOf(page, 'A'));
    const other = await seenOf(page, standOf(page, 'B'));
    expect(apart(own, other)).toBeGreaterThan(1);
    const car = { ...(await standOf(page, 'A').boundingBox())! };
    // The letter of the stand-in lies over the upper edge.
    const clip = { ...car, y: car.y + 60, height: car.height - 120 };
    const otherCar = (await standOf(page, 'B').boundingBox())!;
    const same = { ...otherCar, y: otherCar.y + 60, height: otherCar.height - 120 };
    await page.keyboard.down('b');
    await settled(page);
    // The grey behind the cars is not quite the same from left to right.
    expect(apart(await seen(page, clip), await seen(page, same))).toBeLessThan(0.8);
    await page.keyboard.up('b');
    await settled(page);
    expect(apart(own, await seenOf(page, standOf(page, 'A')))).toBeLessThan(0.5);
  }, 150_000);

  it('take a spoon that is dropped onto a caliper, and show it', async () => {
    const page = await start();
    await pick(page, 'View', 'Wheel');
    // Cars are smaller while one works beneath them, so the page goes there first.
    const cell = page.getByRole('button', { name: /^Mirrors on B: .*Marigold/ });
    await cell.scrollIntoViewIfNeeded();
    await settled(page);
    const point = await pointOn(page, 'A', 'Calipers');
    const stand = (await standOf(page, 'A').boundingBox())!;
    // The page may scroll beneath; the place on the stand stays.
    const here = async () => {
      const box = (await standOf(page, 'A').boundingBox())!;
      return { x: point.x - stand.x + box.x, y: point.y - stand.y + box.y };
    };
    const around = async () => {
      const { x, y } = await here();
      return seen(page, { x: x - 2, y: y - 2, width: 5, height: 5 });
    };
    await page.mouse.move(5, 5);
    await settled(page);
    const before = await around();
    const from = (await cell.boundingBox())!;
    await page.mouse.move(from.x + 25, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(from.x + 60, from.y, { steps: 3 });
    const now = await here();
    await page.mouse.move(now.x, now.y, { steps: 4 });
    await page.mouse.up();
    await page.mouse.move(5, 5);
    await settled(page);
    const after = await around();
    expect(apart(before, after)).toBeGreaterThan(20);
    // Marigold: far more red than blue.
    const middle = (2 * after.width + 2) * 4;
    expect(after.rgba[middle]!).toBeGreaterThan(2 * after.rgba[middle + 2]!);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(apart(before, await around())).toBeLessThan(2);
  }, 200_000);

  it('tell gloss wheels from matt ones under a warm lamp', async () => {
    const page = await start();
    await pick(page, 'Seen by', 'Warm lamp');
    await pick(page, 'View', 'Wheel');
    // A wheel in the middle of the stand.
    const wheelOf = async (letter: string): Promise<number[]> => {
      const box = (await standOf(page, letter).boundingBox())!;
      const side = Math.floor(box.height * 0.55);
      const x = Math.round(box.x + (box.width - side) / 2);
      const y = Math.round(box.y + (box.height - side) / 2);
      return luminances(await seen(page, { x, y, width: side, height: side }));
    };
    const wheels = page.getByRole('button', { name: /^2 parts open, alike so far/ });
    if ((await wheels.count()) > 0) await wheels.click();
    const spray = async (letter: string, finish: string): Promise<void> => {
      await page.getByRole('button', { name: new RegExp(`^Wheels on ${letter}:`) }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByText(/more finishes in this build/).click();
      await dialog.getByRole('searchbox').fill(finish);
      await dialog.getByRole('option', { name: finish }).click();
      await page.keyboard.press('Escape');
    };
    // Semi-gloss over a darker body than the dead matt one: what is brighter on it is the lamp.
    await spray('A', 'Slate trim');
    await spray('B', 'Chalkboard');
    await page.mouse.move(5, 5);
    await settled(page, 'A');
    await settled(page, 'B');
    const [gloss, matt] = [await wheelOf('A'), await wheelOf('B')];
    const brighter = gloss.filter((value, k) => value > matt[k]! + 0.03).length;
    const darker = gloss.filter((value, k) => value < matt[k]! - 0.003).length;
    expect(brighter / gloss.length).toBeGreaterThan(0.002);
    expect(darker / gloss.length).toBeGreaterThan(0.02);
  }, 180_000);
});

describe('trouble', () => {
  it('brings drawings back when the 3D is taken away, and the cars when it returns', async () => {
    const page = await start();
    const before = await seenOf(page, standOf(page, 'A'));
    const lose = (name: 'loseContext' | 'restoreContext') =>
      page.evaluate((call) => {
        const canvas = document.querySelector<HTMLCanvasElement>('.stage-canvas')!;
        const kept = window as unknown as { loss?: WEBGL_lose_context };
        kept.loss ??= canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!;
        kept.loss[call]();
      }, name);
    await lose('loseContext');
    await page.locator('.stage[data-liveness="lost"]').waitFor();
    expect(await page.locator('.car svg [data-part]').first().isVisible()).toBe(true);
    await lose('restoreContext');
    await isLive(page);
    await settled(page);
    expect(apart(before, await seenOf(page, standOf(page, 'A')))).toBeLessThan(0.5);
  }, 150_000);

  it('keeps every car whole when the window changes, also with four of them', async () => {
    const page = await start();
    const four = {
      ...demo,
      alternatives: [
        ...demo.alternatives,
        { ...demo.alternatives[0], id: 'a-fourth', name: 'A fourth' },
      ],
    };
    await page.evaluate((text) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], 'four.json', { type: 'application/json' }));
      for (const type of ['dragover', 'drop']) {
        document.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true }));
      }
    }, JSON.stringify(four));
    await page.getByRole('article', { name: 'Alternative D', exact: true }).waitFor();
    await page.setViewportSize({ width: 1500, height: 800 });
    await settled(page, 'D');
    // The fourth is a copy of the first and is drawn alike.
    const [a, d] = [await seenOf(page, standOf(page, 'A')), await seenOf(page, standOf(page, 'D'))];
    const width = Math.min(a.width, d.width);
    expect(Math.abs(a.width - d.width)).toBeLessThanOrEqual(1);
    expect(width).toBeGreaterThan(200);
    const dark = (region: typeof a) => luminances(region).filter((value) => value < 0.05).length;
    expect(Math.abs(dark(a) - dark(d)) / dark(a)).toBeLessThan(0.05);
  }, 180_000);
});

describe('on a phone', () => {
  it('stands one car after the other, axe-clean, and opens spoons for the part one taps', async () => {
    await opened.page.context().close();
    const page = await open(phone);
    expect(await page.locator('canvas.stage-canvas').count()).toBe(1);
    const box = (await standOf(page, 'A').boundingBox())!;
    await page.touchscreen.tap(box.x + box.width * 0.45, box.y + box.height * 0.55);
    await page.getByRole('dialog').getByRole('radio', { checked: true }).first().waitFor();
    // It stays, though the tap's own click lands beside the spoons.
    await page.waitForTimeout(600);
    expect(await page.getByRole('dialog').count()).toBe(1);
    await page.getByRole('button', { name: 'Done' }).click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations).toEqual([]);
  }, 150_000);
});
