/**
 * What a builder does at the rack: finds a spoon by words, kind, stock and nearness, scrolls through
 * thousands, puts one on a car by keyboard or by hand, copies one, takes one out and takes that
 * back. Needs `npm run build`. What is expected is worked out from the racks' own files by plain
 * loops, and nearness by a second library (colorjs.io).
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import Color from 'colorjs.io';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { parseBuild } from '../../src/build/file.ts';
import { appearanceOf } from '../../src/finish/appearance.ts';
import { bottlesOf, type Finish } from '../../src/finish/finish.ts';
import { parseRack } from '../../src/finish/rack/rack.ts';
import { thousandsOf } from '../finish/rack/thousands.ts';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { dropFile } from './drop.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const textOf = (path: string): string =>
  readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const drawer = parseRack(textOf('palettes/bench-drawer.json'), 'bench-drawer.json').finishes;
const shop = parseRack(textOf('palettes/corner-shop.json'), 'corner-shop.json').finishes;
const demo = parseBuild(textOf('src/build/demo.json')).finishes;
/** Bottles that any rack or the open build has on hand. */
const there = new Set(
  [...drawer, ...shop, ...demo].flatMap(bottlesOf).flatMap(({ id, onHand }) => (onHand ? id : [])),
);
const isOnHand = (finish: Finish): boolean => {
  const bottles = bottlesOf(finish);
  return bottles.length > 0 && bottles.every(({ id }) => there.has(id));
};

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

async function atTheRack(screen: BrowserContextOptions = desktop): Promise<Page> {
  opened = await visit(browser, host.url, screen);
  const { page } = opened;
  await page.getByRole('button', { name: 'Rack', exact: true }).click();
  await spoons(page).getByRole('option').first().waitFor();
  await page.getByRole('button', { name: 'Add finishes…' }).waitFor();
  return page;
}
const seek = (page: Page, words: string): Promise<void> =>
  page.locator('.filters').getByRole('searchbox').fill(words);
const spoons = (page: Page) => page.getByRole('listbox', { name: 'Spoons' });
const count = (page: Page) => page.locator('.rack-count p');
const namesIn = (page: Page): Promise<string[]> =>
  page.locator('.spoon-place .handle-name').allTextContents();
const paintOf = (page: Page, letter: string, part: string): Promise<string> =>
  page
    .getByRole('article', { name: `Alternative ${letter}`, exact: true })
    .locator(`svg [data-part="${part}"]`)
    .first()
    .evaluate((path) => getComputedStyle(path).fill);

describe('finding', () => {
  it('by words shows those whose name, kind or note has them all, and says how many', async () => {
    const page = await atTheRack();
    expect(await count(page).textContent()).toBe(`${drawer.length + shop.length} finishes.`);
    const named = [...drawer, ...shop].filter(({ name }) => /\bred\b/i.test(name));
    expect(named.length).toBeGreaterThan(0);
    await seek(page, 'RED');
    await expect
      .poll(() => namesIn(page))
      .toEqual(expect.arrayContaining(named.map(({ name }) => name)));
    await seek(page, 'metallic satin');
    const kinds = page.locator('.spoon-place .handle-note');
    await expect.poll(async () => (await kinds.allTextContents()).length).toBeGreaterThan(0);
    for (const kind of await kinds.allTextContents()) expect(kind).toMatch(/metallic,\s+satin/);
    await seek(page, 'no such paint');
    await page.getByText('No finish here has all of that.').waitFor();
    await page.locator('.rack-nothing').getByRole('button', { name: 'Show all again' }).click();
    await expect.poll(() => count(page).textContent()).toMatch(/^\d+ finishes\.$/);
  });

  it('by nearness puts the nearest first and tells ΔE2000 in words, never percent', async () => {
    const page = await atTheRack();
    await seek(page, '#b87333');
    await expect.poll(() => count(page).textContent()).toMatch(/nearest to #b87333 first\.$/);
    const target = new Color('lab', new Color('#b87333').to('lab-d65').coords);
    const told = [...drawer, ...shop]
      .map((finish) => {
        // The formula knows no white: D65 values go through that library's D50 Lab unchanged.
        const { lab } = appearanceOf(finish, 'D65');
        const deltaE = new Color('lab', [lab[0], lab[1], lab[2]]).deltaE(target, '2000');
        return { name: finish.name, deltaE };
      })
      .sort((one, other) => one.deltaE - other.deltaE);
    const near = told.slice(0, 4);
    expect((await namesIn(page)).slice(0, 4)).toEqual(near.map(({ name }) => name));
    const notes = await page.locator('.spoon-place .handle-note').allTextContents();
    near.forEach(({ deltaE }, k) => {
      expect(notes[k]!.replaceAll('\u00a0', ' ')).toMatch(new RegExp(`^ΔE ${deltaE.toFixed(1)}: `));
      expect(notes[k]).not.toContain('%');
    });
  });

  it('near a spoon, then only what is on hand, leaves the order and takes the rest away', async () => {
    const page = await atTheRack();
    await seek(page, 'marigold');
    await spoons(page)
      .getByRole('option', { name: /^Marigold/ })
      .click();
    await page.getByRole('button', { name: 'Near this' }).click();
    await expect.poll(() => count(page).textContent()).toMatch(/nearest to Marigold first\.$/);
    await page.getByLabel('Stock').selectOption('on hand');
    const onHand = [...drawer, ...shop].filter(isOnHand);
    await expect
      .poll(() => count(page).textContent())
      .toMatch(new RegExp(`^${onHand.length} of ${drawer.length + shop.length} finishes`));
    const names = new Set(onHand.map(({ name }) => name));
    for (const name of await namesIn(page)) expect(names).toContain(name);
    await page.getByRole('button', { name: 'Show all again' }).first().click();
    await expect.poll(() => count(page).textContent()).toMatch(/^\d+ finishes\.$/);
    // The button has gone with what it took away; the focus is at the spoons.
    await expect
      .poll(() => spoons(page).evaluate((list) => list === document.activeElement))
      .toBe(true);
  });
});

describe('ten thousand finishes', () => {
  it('scroll and are searched with few spoons in the document at any time', async () => {
    const page = await atTheRack();
    const demo = JSON.parse(textOf('src/build/demo.json')) as { name: string; finishes: object[] };
    demo.name = 'A long shelf';
    // Seed 5.
    demo.finishes.push(...thousandsOf(10_000 - demo.finishes.length, 5));
    await dropFile(page, 'long.json', JSON.stringify(demo));
    await expect.poll(() => count(page).textContent()).toMatch(/^10,0\d\d finishes\.$/);
    const list = spoons(page);
    const drawn = page.locator('.spoon');
    expect(await drawn.count()).toBeLessThan(200);
    await list.focus();
    await page.keyboard.press('End');
    await page
      .getByRole('option', { name: / 99\d\d / })
      .first()
      .waitFor();
    expect(await drawn.count()).toBeLessThan(200);
    const last = await list.evaluate(
      (box) =>
        document.getElementById(box.getAttribute('aria-activedescendant') ?? '')?.textContent,
    );
    expect(last).toBeTruthy();
    await seek(page, '9921');
    await expect.poll(() => count(page).textContent()).toMatch(/^1 of 10,0\d\d finishes\.$/);
    expect(await drawn.count()).toBeLessThan(200);
  });
});

describe('the spoon in the hand', () => {
  it('is put on a part of a car by keyboard alone, which undo takes back', async () => {
    const page = await atTheRack();
    const before = await paintOf(page, 'B', 'mirrors');
    await page.locator('.filters').getByRole('searchbox').focus();
    await page.keyboard.type('barn door');
    await expect.poll(() => namesIn(page)).toEqual(['Barn door']);
    await spoons(page).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Barn door' }).waitFor();
    await page.getByLabel('Put it on').focus();
    await page.getByLabel('Put it on').selectOption({ label: 'Mirrors' });
    await page.keyboard.press('Tab');
    await page.keyboard.press('B');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Barn door is on Mirrors of B.').waitFor();
    await expect.poll(() => paintOf(page, 'B', 'mirrors')).not.toBe(before);
    await page.getByText(/Worn by Mirrors of B/).waitFor();
    await page.locator('.said').getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => paintOf(page, 'B', 'mirrors')).toBe(before);
  });

  it('is dragged from the rack onto a car', async () => {
    const page = await atTheRack();
    await seek(page, 'barn door');
    await expect.poll(() => namesIn(page)).toEqual(['Barn door']);
    const spoon = (await spoons(page).getByRole('option').boundingBox())!;
    const stand = (await page.locator('[data-stand]').first().boundingBox())!;
    await page.mouse.move(spoon.x + 30, spoon.y + 20);
    await page.mouse.down();
    await page.mouse.move(stand.x + stand.width / 2, stand.y + stand.height * 0.62, { steps: 8 });
    const onto = page.locator('.carried').getByText(/^onto /);
    await onto.waitFor();
    const part = /^onto (.+) of A/.exec((await onto.textContent())!)![1]!;
    await page.mouse.up();
    await spoons(page).getByRole('option').click();
    await page.getByText(`Worn by ${part} of A.`).waitFor();
  });

  it('is copied and taken out; the build keeps what it wears, and undo brings it back', async () => {
    const page = await atTheRack();
    await page.getByLabel('Which rack').selectOption({ label: `Bench drawer (${drawer.length})` });
    await seek(page, 'cabin grey');
    await spoons(page)
      .getByRole('option', { name: /^Cabin grey/ })
      .click();
    await page.locator('.in-hand').getByRole('button', { name: 'Delete' }).click();
    await page.getByText(/Cabin grey is off Bench drawer/).waitFor();
    await page.getByText('No finish here has all of that.').waitFor();
    await page.getByRole('button', { name: 'Look in all racks' }).click();
    await spoons(page)
      .getByRole('option', { name: /^Cabin grey/ })
      .click();
    await page.getByText(/In this build only/).waitFor();
    await page.locator('.head').getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/On Bench drawer/).waitFor();
    await page.locator('.in-hand').getByRole('button', { name: 'Copy' }).click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => namesIn(page)).toContain('Like Cabin grey');
  });

  it('leaves with its rack, which says what went', async () => {
    const page = await atTheRack();
    await page.getByRole('button', { name: 'New rack' }).click();
    await page.getByLabel('Name of the rack').fill('Window\u200f sill');
    await page.getByText('it holds a character that cannot be seen').waitFor();
    await page.getByLabel('Name of the rack').fill('Window sill');
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByText('Nothing stands here yet.').waitFor();
    expect(await page.getByLabel('Which rack').locator('option').allTextContents()).toContain(
      'Window sill (0)',
    );
    await page.getByLabel('Which rack').selectOption({ label: `Corner shop (${shop.length})` });
    await page.getByRole('button', { name: 'Delete rack' }).click();
    await page.getByText(`It held ${shop.length} finishes.`).waitFor();
    await page.locator('.said').getByRole('button', { name: 'Undo' }).click();
    await expect
      .poll(() => page.getByLabel('Which rack').locator('option').allTextContents())
      .toContain(`Corner shop (${shop.length})`);
  });
});

describe('every state', () => {
  for (const [name, screen] of [
    ['desktop', desktop],
    ['phone', phone],
  ] as const) {
    it(`of the rack is free of barriers that can be found by machine: ${name}`, async () => {
      const page = await atTheRack(screen);
      const faults = async (): Promise<string[]> =>
        (await new AxeBuilder({ page }).analyze()).violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
        );
      expect(await faults()).toEqual([]);
      await seek(page, '#7f8a90');
      await spoons(page).getByRole('option').first().click();
      expect(await faults()).toEqual([]);
      await seek(page, 'no such paint');
      await page.getByText('No finish here has all of that.').waitFor();
      expect(await faults()).toEqual([]);
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(wide).toBeLessThanOrEqual(0);
    });
  }
});
