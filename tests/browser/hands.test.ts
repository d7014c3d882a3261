/**
 * What hands do on the stage while drawings stand there: blinking, marking, spoons dropped onto
 * parts, letters on a phone. Needs `npm run build`.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
let browser: Browser;
let host: Host;
let opened: OpenPage;

beforeAll(async () => {
  if (!existsSync(`${built}index.html`)) throw new Error('dist/app is missing: npm run build');
  [browser, host] = await Promise.all([startBrowser(), serve(built, '/some/where/')]);
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});
afterEach(async () => {
  expect(opened.errors).toEqual([]);
  await opened.page.context().close();
});

const start = async (screen = desktop): Promise<Page> => {
  opened = await visit(browser, host.url, screen);
  const { page } = opened;
  await page.locator('.stage[data-liveness="impossible"] .car svg').first().waitFor();
  return page;
};
const carOf = (page: Page, letter: string) =>
  page.getByRole('article', { name: `Alternative ${letter}`, exact: true });
const cell = (page: Page, part: string, letter: string) =>
  page.getByRole('button', { name: new RegExp(`^${part} on ${letter}:`) });
const overallOf = (page: Page, letter: string): Promise<string | null> =>
  carOf(page, letter).locator('.overall-value').textContent();

type Fills = Readonly<Record<string, string>>;
/** Colour of every drawn part of an alternative, by car part. */
const fillsOf = (page: Page, letter: string): Promise<Fills> =>
  carOf(page, letter)
    .locator('svg')
    .first()
    .evaluate((svg) =>
      Object.fromEntries(
        [...svg.querySelectorAll('[data-part]')].map((path) => [
          path.getAttribute('data-part'),
          getComputedStyle(path).fill,
        ]),
      ),
    );

interface Point {
  readonly x: number;
  readonly y: number;
}
/** The point of the window in the middle of what a mouse meets of a part. */
const pointOn = (page: Page, letter: string, part: string): Promise<Point> =>
  carOf(page, letter)
    .locator(`svg [data-part="${part}"]`)
    .first()
    .evaluate((path) => {
      const { left, top, width, height } = path.getBoundingClientRect();
      const met: Point[] = [];
      for (let row = 1; row < 30; row++) {
        for (let column = 1; column < 30; column++) {
          const [x, y] = [left + (width * column) / 30, top + (height * row) / 30];
          if (document.elementFromPoint(x, y) === path) met.push({ x, y });
        }
      }
      const found = met[Math.floor(met.length / 2)];
      if (found === undefined) throw new Error('nothing of the part can be pointed at');
      return found;
    });

/** Takes a spoon from a cell and holds it over a point. */
async function carryTo(page: Page, from: ReturnType<typeof cell>, to: Point): Promise<void> {
  const box = (await from.boundingBox())!;
  await page.mouse.move(box.x + 25, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 60, box.y, { steps: 3 });
  await page.mouse.move(to.x, to.y, { steps: 5 });
  await page.locator('.carried p').waitFor();
}

describe('a browser without 3D', () => {
  it('says so once, and offers nothing that needs it', async () => {
    const page = await start();
    expect(await page.getByText('This browser shows drawings; 3D needs WebGL 2.').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'True size' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Whole car' }).count()).toBe(0);
    expect(await page.getByRole('application').count()).toBe(0);
  });
});

describe('blinking', () => {
  it('shows an alternative in every place while its letter is held; numbers stay', async () => {
    const page = await start();
    const [a, b] = [await fillsOf(page, 'A'), await fillsOf(page, 'B')];
    const overall = await overallOf(page, 'A');
    expect(a).not.toEqual(b);
    await page.keyboard.down('b');
    await carOf(page, 'A').getByText('in the place of A').waitFor();
    expect(await fillsOf(page, 'A')).toEqual(b);
    expect(await fillsOf(page, 'C')).toEqual(b);
    expect(await overallOf(page, 'A')).toBe(overall);
    await page.keyboard.up('b');
    await expect.poll(() => fillsOf(page, 'A')).toEqual(a);
  });

  it('leaves letters alone that are typed, go with ctrl, or were switched off', async () => {
    const page = await start();
    const a = await fillsOf(page, 'A');
    await page.keyboard.down('Control');
    await page.keyboard.down('b');
    expect(await fillsOf(page, 'A')).toEqual(a);
    await page.keyboard.up('b');
    await page.keyboard.up('Control');
    await cell(page, 'Stripes', 'A').click();
    await page.getByText(/more finishes in this build/).click();
    await page.getByRole('searchbox').focus();
    await page.keyboard.down('b');
    expect(await page.getByRole('searchbox').inputValue()).toBe('b');
    expect(await fillsOf(page, 'A')).toEqual(a);
    await page.keyboard.up('b');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Switch these keys off' }).click();
    await page.keyboard.down('b');
    expect(await fillsOf(page, 'A')).toEqual(a);
    await page.keyboard.up('b');
  });

  it('shows one in the place of another while its button is held, by mouse and by keyboard', async () => {
    const page = await start();
    const [a, c] = [await fillsOf(page, 'A'), await fillsOf(page, 'C')];
    const b = await fillsOf(page, 'B');
    const button = page.getByRole('button', { name: 'Hold to see C in the place of A' });
    const box = (await button.boundingBox())!;
    await page.mouse.move(box.x + 8, box.y + 8);
    await page.mouse.down();
    await expect.poll(() => fillsOf(page, 'A')).toEqual(c);
    expect(await fillsOf(page, 'B')).toEqual(b);
    expect(await button.getAttribute('aria-pressed')).toBe('true');
    await page.mouse.up();
    await expect.poll(() => fillsOf(page, 'A')).toEqual(a);
    await button.focus();
    await page.keyboard.down('Space');
    await expect.poll(() => fillsOf(page, 'A')).toEqual(c);
    await page.keyboard.up('Space');
    await expect.poll(() => fillsOf(page, 'A')).toEqual(a);
  });
});

describe('marking differences', () => {
  it('puts a line round exactly the drawn parts whose colour differs', async () => {
    const page = await start();
    const fills = await Promise.all(['A', 'B', 'C'].map((letter) => fillsOf(page, letter)));
    const differing = Object.keys(fills[0]!).filter(
      (part) => new Set(fills.map((one) => one[part])).size > 1,
    );
    expect(differing).toContain('mirrors');
    await page.getByRole('button', { name: 'Mark differences' }).click();
    const marked = await carOf(page, 'A')
      .locator('svg')
      .first()
      .evaluate((svg) => {
        const shapes = [...svg.querySelectorAll('.mark-light')].map((m) => m.getAttribute('d'));
        return [...svg.querySelectorAll('[data-part]')]
          .filter((path) => shapes.includes(path.getAttribute('d')))
          .map((path) => path.getAttribute('data-part') ?? '');
      });
    expect([...new Set(marked)].sort()).toEqual(differing.sort());
    await page.getByRole('button', { name: 'Mark differences' }).click();
    expect(await page.locator('svg .mark-light').count()).toBe(0);
  });
});

describe('a spoon', () => {
  it('dropped onto a part puts its finish there, on that car alone, as one undo step', async () => {
    const page = await start();
    const [a, c] = [await fillsOf(page, 'A'), await fillsOf(page, 'C')];
    await carryTo(page, cell(page, 'Mirrors', 'B'), await pointOn(page, 'A', 'stripe-left'));
    await expect.poll(() => page.locator('.carried').textContent()).toMatch(/onto Stripes of A/);
    await page.mouse.up();
    const after = await fillsOf(page, 'A');
    expect(after['stripe-left']).toBe((await fillsOf(page, 'B')).mirrors);
    expect(after['stripe-left']).not.toBe(a['stripe-left']);
    expect(await fillsOf(page, 'C')).toEqual(c);
    expect(await page.getByRole('dialog').count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await fillsOf(page, 'A')).toEqual(a);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('is refused by parts that nobody paints, and put down by Escape', async () => {
    const page = await start();
    const a = await fillsOf(page, 'A');
    await carryTo(page, cell(page, 'Mirrors', 'B'), await pointOn(page, 'A', 'tyres'));
    await expect.poll(() => page.locator('.carried').textContent()).toMatch(/Not onto Tyres/);
    await page.mouse.up();
    expect(await fillsOf(page, 'A')).toEqual(a);
    await carryTo(page, cell(page, 'Mirrors', 'B'), await pointOn(page, 'A', 'stripe-left'));
    await page.keyboard.press('Escape');
    expect(await page.locator('.carried').count()).toBe(0);
    await page.mouse.up();
    expect(await fillsOf(page, 'A')).toEqual(a);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('comes from the open rack too, which stays open', async () => {
    const page = await start();
    await cell(page, 'Mirrors', 'A').click();
    const label = page.locator('.rack label', { hasText: 'Marigold' });
    const box = (await label.boundingBox())!;
    // Behind an open dialog nothing can be met; the point is the same as before it opened.
    const stripes = await carOf(page, 'C').locator('svg [data-part="stripe-left"]').first();
    const where = (await stripes.boundingBox())!;
    const c = await fillsOf(page, 'C');
    await page.mouse.move(box.x + 20, box.y + 20);
    await page.mouse.down();
    await page.mouse.move(box.x + 40, box.y, { steps: 3 });
    const told = page.locator('.carried');
    for (let step = 1; step < 30; step++) {
      await page.mouse.move(where.x + (where.width * step) / 30, where.y + where.height / 2);
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
      if (/onto Stripes of C/.test((await told.textContent()) ?? '')) break;
    }
    await page.mouse.up();
    expect((await fillsOf(page, 'C'))['stripe-left']).not.toBe(c['stripe-left']);
    expect(await page.getByRole('dialog', { name: 'Mirrors on A' }).count()).toBe(1);
  });

  it('is picked up by a finger that rests on it, while one that moves scrolls', async () => {
    const page = await start(phone);
    const a = await fillsOf(page, 'A');
    const hand = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: Point) =>
      hand.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [at] });
    // Nothing moves any more once it is said how surely one is ahead.
    await expect.poll(() => page.getByText(/stays ahead of|too close to call/i).count()).toBe(3);
    const spoon = (await cell(page, 'Stripes', 'A').boundingBox())!;
    await page.evaluate((y) => window.scrollTo(0, y), spoon.y - 500);
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => drawn(0))));
    const still = (await cell(page, 'Stripes', 'A').boundingBox())!;
    await touch('touchStart', { x: still.x + 25, y: still.y + 20 });
    await page.locator('.carried p').waitFor();
    await touch('touchMove', { x: 150, y: 300 });
    // Held near the edge until the car has come to the finger.
    await touch('touchMove', { x: 150, y: 20 });
    await expect
      .poll(async () => (await carOf(page, 'A').locator('.picture-frame').boundingBox())!.y)
      .toBeGreaterThanOrEqual(0);
    const wing = await pointOn(page, 'A', 'mirrors');
    await touch('touchMove', wing);
    await expect.poll(() => page.locator('.carried').textContent()).toMatch(/onto Mirrors of A/);
    await touch('touchEnd');
    expect((await fillsOf(page, 'A')).mirrors).toBe(a['stripe-left']);

    await page.evaluate((y) => window.scrollTo(0, y), spoon.y - 500);
    const before = await page.evaluate(() => scrollY);
    await touch('touchStart', { x: still.x + 25, y: still.y + 20 });
    for (const rise of [30, 60, 90, 120]) {
      await touch('touchMove', { x: still.x + 25, y: still.y + 20 - rise });
    }
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(before);
    expect(await page.locator('.carried').count()).toBe(0);
    await touch('touchEnd');
  });
});

describe('words', () => {
  it('name every part of the build and its finish, for each car', async () => {
    const page = await start();
    const parts = await page.evaluate(async () => {
      const rows = [...document.querySelectorAll('.part-table .part-name, .fold-names')];
      return rows.flatMap((row) => {
        const own = row.firstChild?.textContent ?? '';
        return own.split(',').map((name) => name.trim());
      });
    });
    expect(parts.length).toBeGreaterThan(15);
    const told = await carOf(page, 'A')
      .getByRole('list', { name: /^Finishes of A/ })
      .textContent();
    for (const part of parts) expect(told).toContain(part);
  });
});

describe('a phone', () => {
  it('brings a car into sight by its letter', async () => {
    const page = await start(phone);
    const left = async (): Promise<number> => (await carOf(page, 'C').boundingBox())!.x;
    expect(await left()).toBeGreaterThan(390);
    const cars = page.getByRole('navigation', { name: 'Cars' });
    await cars.getByRole('button', { name: /^C,/ }).click();
    await expect.poll(left).toBeLessThan(60);
    await expect.poll(() => cars.locator('[aria-current="true"]').textContent()).toBe('C');
  });

  it('has nothing for axe to object to with marks on and a car standing in', async () => {
    const page = await start(phone);
    await page.getByRole('button', { name: 'Mark differences' }).click();
    await page.keyboard.down('b');
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.keyboard.up('b');
  });
});
