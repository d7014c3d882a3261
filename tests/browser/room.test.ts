/**
 * Who has how much room: the head in one line, cars beside a panel and on their own, spoons in one
 * piece, and how many stops the keyboard makes on the way. Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { button, letters } from './bench.ts';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { dropFile } from './drop.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const demoPath = fileURLToPath(new URL('../../src/build/demo.json', import.meta.url));
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

interface Named {
  readonly name: string;
  readonly [field: string]: unknown;
}
interface Own extends Named {
  readonly alternatives: readonly Named[];
}
const demo = (): Own => JSON.parse(readFileSync(demoPath, 'utf8')) as Own;

/** The bench with the demo as one's own build, changed in some fields. */
async function start(changed: Partial<Own> = {}, screen = desktop): Promise<Page> {
  opened = await visit(browser, host.url, screen);
  const { page } = opened;
  const name = changed.name ?? 'Quince Lane roadster';
  await dropFile(page, 'own.json', JSON.stringify({ ...demo(), ...changed, name }));
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await page.locator('[data-kept="kept"]').waitFor();
  return page;
}

describe('the head', () => {
  it('is one line with a date and a long name from 1000 pixels on, and has every tool once', async () => {
    const name = 'Quince Lane roadster with a name that goes on and on';
    const page = await start({ name, wantedBy: '2031-12-20' });
    const more = button(page.locator('.head'), 'More');
    for (const width of [1600, 1440, 1100, 1000]) {
      await page.setViewportSize({ width, height: 900 });
      const middles = await page
        .locator('.head-what, .head-areas, .head-tools .button')
        .evaluateAll((all) =>
          all
            .map((one) => one.getBoundingClientRect())
            .filter((box) => box.width > 0)
            .map(({ top, height }) => Math.round(top + height / 2)),
        );
      expect(middles.length, `${width}`).toBeGreaterThan(4);
      expect(Math.max(...middles) - Math.min(...middles), `${width}`).toBeLessThan(6);
      if (await more.isVisible()) await more.click();
      const tools = await page
        .locator('.head-row .button:visible, .more-line:visible')
        .evaluateAll((all) => all.map((one) => (one.textContent ?? '').split(/…| Ctrl/)[0] ?? ''));
      expect(new Set(tools).size, `${width}`).toBe(tools.length);
      for (const tool of ['Builds', 'New', 'Save', 'Find anything']) expect(tools).toContain(tool);
      if (await more.isVisible()) await page.keyboard.press('Escape');
    }
  });
});

describe('cars beside a panel', () => {
  it('are covered by none and nothing beneath moves, be it three, two or one; one stands taller', async () => {
    const page = await start();
    await page.locator('.car-verdict .finding').first().waitFor();
    const below = (): Promise<number> =>
      page.locator('.part-table').evaluate((table) => table.getBoundingClientRect().top);
    const tall = (): Promise<number> =>
      page
        .locator('.stand')
        .first()
        .evaluate((stand) => stand.getBoundingClientRect().height);
    /** Where it is once nothing more comes: remedies and draws follow a change by themselves. */
    const settled = async (): Promise<number> => {
      for (let last = Number.NaN; ; ) {
        const now = await below();
        if (now === last) return now;
        last = now;
        await page.waitForTimeout(1500);
      }
    };
    const panel = page.locator('.dialog-side[open]');
    const tallest: number[] = [];
    for (const count of [3, 2, 1]) {
      if (count < 3) {
        await page.locator('.on-stage input:checked').last().uncheck();
        await expect.poll(() => page.locator('.car').count()).toBe(count);
      }
      tallest.push(await tall());
      const before = await settled();
      // Without the mouse, which would scroll to it first.
      await button(page, 'Mark several parts…').dispatchEvent('click');
      const left = await panel.evaluate((element) => element.getBoundingClientRect().left);
      const ends = await page
        .locator('.picture-frame')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right));
      expect(ends).toHaveLength(count);
      for (const end of ends) expect(end).toBeLessThanOrEqual(left);
      expect(await below()).toBeCloseTo(before, 0);
      await button(panel, 'Done').click();
      await expect.poll(below).toBeCloseTo(before, 0);
    }
    expect(tallest[1]).toBe(tallest[0]);
    expect(tallest[2]).toBeGreaterThan(tallest[0]! * 1.15);
  });
});

describe('the stage', () => {
  it('keeps its letters to move along the cars for narrow windows', async () => {
    const six = [...demo().alternatives, ...demo().alternatives].map((one, at) => ({
      ...one,
      id: `one-${at}`,
      name: `Try ${at}`,
    }));
    const page = await start({ alternatives: six });
    const moving = page.getByRole('navigation', { name: 'Cars', exact: true });
    expect(await page.locator('.car').count()).toBe(6);
    expect(await moving.count()).toBe(0);
    await page.setViewportSize({ width: 800, height: 900 });
    await moving.waitFor();
    await page.setViewportSize({ width: 1440, height: 900 });
    await moving.waitFor({ state: 'detached' });
  });

  it('is as it was left after a reload', async () => {
    const page = await start();
    await page.getByRole('checkbox', { name: /^B, / }).uncheck();
    expect(await letters(page)).toEqual(['A', 'C']);
    await page.reload({ waitUntil: 'commit' });
    await page.getByRole('heading', { level: 1, name: 'Quince Lane roadster' }).waitFor();
    await expect.poll(() => letters(page)).toEqual(['A', 'C']);
  });
});

describe('the keyboard', () => {
  it('meets the switches before the cars, and the letters of a car as one stop', async () => {
    const page = await start();
    const met: string[] = [];
    for (let step = 0; step < 60 && met.at(-1) !== 'All keys'; step++) {
      await page.keyboard.press('Tab');
      met.push(
        await page.evaluate(() => {
          const at = document.activeElement;
          return at instanceof HTMLInputElement
            ? (at.labels?.[0]?.textContent ?? '')
            : (at?.getAttribute('aria-label') ?? at?.textContent ?? '');
        }),
      );
    }
    const holds = met.filter((name) => name.startsWith('Hold to see'));
    expect(holds).toEqual(['A', 'B', 'C'].map((letter) => expect.stringMatching(`of ${letter}$`)));
    const first = (name: RegExp): number => met.findIndex((one) => name.test(one));
    expect(first(/^Daylight/)).toBeGreaterThan(-1);
    expect(first(/^Daylight/)).toBeLessThan(first(/^Hold to see/));
    // From one letter to the next by arrow, and round.
    const hold = (letter: string) => page.getByLabel(`Hold to see ${letter} in the place of A`);
    await hold('B').focus();
    await page.keyboard.press('ArrowRight');
    expect(await hold('C').evaluate((one) => one === document.activeElement)).toBe(true);
    await page.keyboard.press('ArrowRight');
    expect(await hold('B').evaluate((one) => one === document.activeElement)).toBe(true);
  });
});

describe('a spoon', () => {
  it('goes on from its neck to its handle at one height', async () => {
    const page = await start({}, { ...phone, deviceScaleFactor: 2 });
    const steps = await page.locator('.rows-differing .spoon').evaluateAll((spoons) =>
      spoons.map((spoon) => {
        const handle = spoon.querySelector('.handle')!;
        const neck = spoon.querySelector('.neck')!.getBoundingClientRect();
        const { top, bottom } = handle.getBoundingClientRect();
        // A name of several lines makes a handle taller than any neck.
        if (bottom - top > neck.height + 1) return { step: 0, radius: '' };
        const step = Math.max(Math.abs(top - neck.top), Math.abs(bottom - neck.bottom));
        return { step, radius: getComputedStyle(handle).borderStartStartRadius };
      }),
    );
    expect(steps.filter(({ radius }) => radius !== '').length).toBeGreaterThan(3);
    for (const { step } of steps) expect(step).toBeLessThan(0.1);
  });
});
