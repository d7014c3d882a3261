/**
 * What if something does not come, or the page stays open past midnight? In a real browser, against
 * the built page: scripts that cannot be fetched, workers that fail, another day. Needs
 * `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { desktop, startBrowser } from './browser.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const demo = new URL('../../src/build/demo.json', import.meta.url);
let browser: Browser;
let host: Host;
let page: Page;
let failures: string[];

beforeAll(async () => {
  if (!existsSync(`${built}index.html`)) throw new Error('dist/app is missing: npm run build');
  [browser, host] = await Promise.all([startBrowser(), serve(built, '/some/where/')]);
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});
afterEach(async () => {
  // Requests may fail; the page's own code never does.
  expect(failures).toEqual([]);
  await page.context().close();
});

/** A page to which no address that matches is handed out. */
async function start(withheld?: RegExp): Promise<Page> {
  const context = await browser.newContext({ ...desktop, reducedMotion: 'reduce' });
  page = await context.newPage();
  failures = [];
  page.on('pageerror', (error) => failures.push(error.message));
  if (withheld !== undefined) await page.route(withheld, (route) => route.abort());
  await page.goto(host.url, { waitUntil: 'commit' });
  await page.locator('.car svg').first().waitFor();
  return page;
}

/** Puts another finish on the mirrors of A. */
async function change(): Promise<void> {
  await page.locator('[data-cell$="/mirrors"]').first().click();
  const dialog = page.getByRole('dialog');
  await dialog.locator('input[type=radio]:not(:checked)').first().check({ force: true });
  await page.keyboard.press('Escape');
}

describe('a script that cannot be fetched', () => {
  const builds = /\/Builds-[^/]*\.js/;

  it('says so in its own place; the bench stays, and trying again brings it', async () => {
    await start(builds);
    await page.getByRole('button', { name: 'Builds…' }).click();
    const alert = page.getByRole('alert');
    await alert.getByText(/could not be fetched/).waitFor();
    expect(await page.getByRole('article', { name: /^Alternative/ }).count()).toBe(3);
    await page.unroute(builds);
    await alert.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('dialog', { name: 'Builds' }).waitFor();
    expect(await alert.count()).toBe(0);
  });

  it('can be given up', async () => {
    await start(builds);
    await page.getByRole('button', { name: 'Builds…' }).click();
    await page.getByRole('alert').getByRole('button', { name: 'Never mind' }).click();
    expect(await page.getByRole('alert').count()).toBe(0);
    await change();
    await page.getByRole('button', { name: 'Undo' }).click();
  });
});

describe('a worker that never came', () => {
  it('is started anew after the next change', async () => {
    const withheld = /\/(drawing|thinking)-[^/]*\.js/;
    await start(withheld);
    await page.waitForTimeout(1500);
    expect(await page.locator('.standing').getByText('Trying how surely…').count()).toBe(3);
    await page.unroute(withheld);
    await change();
    await page.locator('.standing li', { hasText: /[ABC]/ }).first().waitFor();
    await page
      .getByText(/536|of them keep the rules/)
      .first()
      .waitFor();
  });
});

describe('a page that is open the next day', () => {
  it('counts what is to buy and to cure from then on', async () => {
    await start();
    const build = JSON.parse(readFileSync(demo, 'utf8')) as Record<string, unknown>;
    const inTwentyDays = new Date(Date.now() + 20 * 86_400_000).toISOString().slice(0, 10);
    const text = JSON.stringify({ ...build, name: 'Wanted soon', wantedBy: inTwentyDays });
    await page.evaluate((content) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content], 'soon.json', { type: 'application/json' }));
      for (const type of ['dragover', 'drop']) {
        document.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true }));
      }
    }, text);
    await page.getByRole('heading', { name: 'Wanted soon' }).waitFor();
    const late = page.locator('.sheets').getByText(/past the date wanted|days late/);
    expect(await late.count()).toBe(0);
    await page.clock.setFixedTime(Date.now() + 30 * 86_400_000);
    await page.evaluate(() => window.dispatchEvent(new Event('focus')));
    await late.first().waitFor();
  });
});
