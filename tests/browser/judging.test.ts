/**
 * Judging at the bench, in a real browser: a remedy does exactly what it said, scores explain
 * themselves, and weights change the order. Needs `npm run build`.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Locator, Page } from 'playwright-core';
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
  expect(opened.strangers).toEqual([]);
  expect(host.missing).toEqual([]);
  await opened.page.context().close();
});

const start = async (screen = desktop): Promise<Page> => {
  opened = await visit(browser, host.url, screen);
  return opened.page;
};
const carOf = (page: Page, letter: string): Locator =>
  page.getByRole('article', { name: `Alternative ${letter}`, exact: true });
const sheetOf = (page: Page, letter: string): Locator =>
  page.getByRole('article', { name: `Score sheet of ${letter}`, exact: true });
const overallOf = async (page: Page, letter: string): Promise<number> =>
  Number((await carOf(page, letter).locator('.overall-value').textContent())!.match(/\d+/)![0]);
/** The six numbers of a sheet by their names, as they are shown. */
const scoresOf = async (page: Page, letter: string): Promise<Record<string, number>> => {
  const rows = sheetOf(page, letter).locator('.score');
  // All in one look: the worst comes first, so that rows change places after a change.
  const read = await rows.evaluateAll((all) =>
    all.map((row) => [
      row.querySelector('h4')!.textContent!.toLowerCase(),
      Number(row.querySelector('.score-number > span')!.textContent),
    ]),
  );
  return Object.fromEntries(read) as Record<string, number>;
};
const paintOf = (page: Page, letter: string, part: string): Promise<string> =>
  carOf(page, letter)
    .locator(`svg [data-part="${part}"]`)
    .first()
    .evaluate((path) => getComputedStyle(path).fill);
const objections = async (page: Page): Promise<string[]> =>
  (await new AxeBuilder({ page }).analyze()).violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );

interface Told {
  readonly before: number;
  readonly after: number;
  readonly moved: Readonly<Record<string, number>>;
}

/** What a remedy says it would change: `57 → 91; accent balance +85; nothing more to buy.` */
async function promiseOf(button: Locator): Promise<Told> {
  const id = await button.getAttribute('aria-describedby');
  const told = (await button.page().locator(`[id="${id}"]`).textContent())!;
  const [, before, after] = told.match(/^(\d+) → (\d+);/)!;
  const moved = [...told.matchAll(/([a-z ]+) ([+−])(\d+)[,;.]/g)].map(([, name, sign, by]) => [
    name!.trim(),
    Number(by) * (sign === '+' ? 1 : -1),
  ]);
  return { before: Number(before), after: Number(after), moved: Object.fromEntries(moved) };
}

describe('a remedy', () => {
  it('is shown on its car while it is pointed at, does exactly what it said, and is undone at once', async () => {
    const page = await start();
    const button = carOf(page, 'A').getByRole('button', { name: /^Repeat Marigold on/ });
    await button.waitFor();
    const promise = await promiseOf(button);
    const scores = await scoresOf(page, 'A');
    const paint = await paintOf(page, 'A', 'mirrors');
    expect(await overallOf(page, 'A')).toBe(promise.before);
    expect(Object.keys(promise.moved).length).toBeGreaterThan(0);

    await button.hover();
    await expect.poll(() => paintOf(page, 'A', 'mirrors')).not.toBe(paint);
    expect(await paintOf(page, 'A', 'mirrors')).toBe(await paintOf(page, 'C', 'mirrors'));
    // Only looked at: no number has moved.
    expect(await overallOf(page, 'A')).toBe(promise.before);
    await page.mouse.move(2, 2);
    await expect.poll(() => paintOf(page, 'A', 'mirrors')).toBe(paint);

    await button.click();
    await expect.poll(() => overallOf(page, 'A')).toBe(promise.after);
    const promised = Object.entries(scores).map(([name, value]) => [
      name,
      value + (promise.moved[name] ?? 0),
    ]);
    // A sheet out of sight follows in the next frame.
    await expect.poll(() => scoresOf(page, 'A')).toEqual(Object.fromEntries(promised));
    expect(await paintOf(page, 'A', 'mirrors')).not.toBe(paint);
    expect(await carOf(page, 'A').locator('.overall').textContent()).toMatch(
      new RegExp(`was ${promise.before}`),
    );
    // The focus has not fallen off the page with the button.
    expect(await page.evaluate(() => document.activeElement?.tagName)).not.toBe('BODY');

    await page.keyboard.press('Control+Z');
    await expect.poll(() => overallOf(page, 'A')).toBe(promise.before);
    await expect.poll(() => scoresOf(page, 'A')).toEqual(scores);
    expect(await paintOf(page, 'A', 'mirrors')).toBe(paint);
    // What was found for the build is there again at once.
    await button.waitFor();
  });

  it('can be reached and pressed by keyboard, and says beforehand what it would change', async () => {
    const page = await start();
    const button = sheetOf(page, 'B')
      .getByRole('button', { name: 'Put Oyster on Stripes' })
      .first();
    await button.waitFor();
    const promise = await promiseOf(button);
    const stripes = await paintOf(page, 'B', 'stripe-left');
    await button.focus();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Tab');
    await expect.poll(() => paintOf(page, 'B', 'stripe-left')).not.toBe(stripes);
    await page.keyboard.press('Enter');
    await expect.poll(() => overallOf(page, 'B')).toBe(promise.after);
  });
});

describe('was', () => {
  it('is told after a change of finish, not after another lamp or distance', async () => {
    const page = await start();
    const before = await overallOf(page, 'C');
    await page.getByRole('radio', { name: 'Warm lamp' }).check({ force: true });
    await page.getByRole('radio', { name: /^Show/ }).check({ force: true });
    await expect.poll(() => overallOf(page, 'C')).not.toBe(before);
    expect(await page.getByText(/^was \d+$/).count()).toBe(0);
  });
});

describe('a score', () => {
  it('explains itself in place by keyboard: its source, our judgement, its limits', async () => {
    const page = await start();
    const name = sheetOf(page, 'A').getByRole('button', { name: 'Kept apart' });
    expect(await name.getAttribute('aria-expanded')).toBe('false');
    await name.focus();
    await page.keyboard.press('Enter');
    expect(await name.getAttribute('aria-expanded')).toBe('true');
    const told = sheetOf(page, 'A').locator('.explained');
    await told.getByText(/CIEDE2000: Sharma, Wu and Dalal 2005/).waitFor();
    expect(await told.textContent()).toMatch(/Our judgement.*Its limits.*not taste/s);
    expect(await objections(page)).toEqual([]);
    await page.keyboard.press('Enter');
    await told.waitFor({ state: 'detached' });
  });
});

describe('weights', () => {
  it('change the order at once, are kept, and go back to usual', async () => {
    const page = await start();
    const panel = page.locator('.weights');
    await panel.getByText(/Order now/).waitFor();
    const usual = await overallOf(page, 'B');
    // B is marked down for sheen alone: without it B passes A.
    for (const name of ['Sheen pairing', 'Contrast', 'Steadiness']) {
      await panel.getByRole('slider', { name }).fill('0');
    }
    await expect.poll(() => panel.textContent()).toMatch(/Order now:.*B.\d+.*A.\d+/s);
    expect(await panel.textContent()).toMatch(/not at all, 0.%/);
    expect(await panel.textContent()).toMatch(/With the usual weights: C, A, B/);
    const changed = await overallOf(page, 'B');
    expect(changed).toBeGreaterThan(usual);
    // Kept by the browser.
    await page.waitForTimeout(1500);
    await page.reload({ waitUntil: 'commit' });
    await page.locator('.car svg').first().waitFor();
    await expect.poll(() => overallOf(page, 'B')).toBe(changed);

    await panel.getByRole('button', { name: 'Back to usual' }).click();
    await expect.poll(() => overallOf(page, 'B')).toBe(usual);
    await page.keyboard.press('Control+Z');
    await expect.poll(() => overallOf(page, 'B')).toBe(changed);
  });

  it('cannot all be nothing: the last that counts stays, and that is said', async () => {
    const page = await start();
    const panel = page.locator('.weights');
    const names = ['Contrast', 'Accent balance', 'Sheen pairing', 'Kept apart', 'Steadiness'];
    for (const name of names) await panel.getByRole('slider', { name }).fill('0');
    const last = panel.getByRole('slider', { name: 'Readiness' });
    await last.fill('0');
    await panel.getByText(/At least one score has to count/).waitFor();
    expect(await last.inputValue()).toBe('1');
    expect(await panel.textContent()).toMatch(/as usual, 100.%/);
  });
});

describe('on a phone', () => {
  it('remedies are pressed by finger, nothing scrolls sideways, axe has nothing to object to', async () => {
    const page = await start(phone);
    const button = carOf(page, 'A').getByRole('button', { name: /^Repeat Marigold on/ });
    await button.waitFor();
    const { after } = await promiseOf(button);
    await button.tap();
    await expect.poll(() => overallOf(page, 'A')).toBe(after);
    await page.locator('.weights summary').tap();
    await page.getByRole('slider', { name: 'Contrast' }).waitFor();
    expect(await objections(page)).toEqual([]);
    const { wide, shown } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      shown: document.documentElement.clientWidth,
    }));
    expect(wide).toBeLessThanOrEqual(shown);
  });
});
