/**
 * Cards of parts, alternatives and builds, the list of parts, what stands in an empty table: nothing
 * for axe to object to, on desktop and phone. Needs `npm run build`.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { button, cardOf, done, newBuild } from './bench.ts';
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
  await opened.page.context().close();
});

const start = async (screen = desktop): Promise<Page> => {
  opened = await visit(browser, host.url, screen);
  return opened.page;
};
describe('every card', () => {
  /** Nothing in this place for axe to object to, and no page wider than the window. */
  async function check(page: Page, place: string, state: string): Promise<void> {
    const { violations } = await new AxeBuilder({ page }).include(place).analyze();
    const told = violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
    );
    expect(told, state).toEqual([]);
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider, state).toBeLessThanOrEqual(0);
  }
  for (const [name, screen] of [
    ['desktop', desktop],
    ['phone', phone],
  ] as const) {
    it(`${name}: of parts, alone and all together, gives axe nothing to object to`, async () => {
      const page = await start(screen);
      const open = await cardOf(page, 'Stripes');
      const way = await button(open, 'Done').boundingBox();
      await button(open, 'Add candidates…').click();
      await open.getByRole('option').first().waitFor();
      await open.getByText('Spray together with other parts…').click();
      await check(page, 'dialog[open]', 'an open part');
      await open.getByRole('radio', { name: /^Settled/ }).check();
      await check(page, 'dialog[open]', 'a settled part');
      // Ways out stand at one place, whatever is in the card and however long its title.
      await open.getByRole('textbox', { name: 'Name' }).fill('Stripes over nose, bonnet and tail');
      const long = page.getByRole('dialog', { name: 'Stripes over nose, bonnet and tail' });
      expect(await button(long, 'Done').boundingBox()).toEqual(way);
      await button(long, 'All parts').click();
      const list = page.getByRole('dialog', { name: 'All parts' });
      await list.getByLabel('Tick Belts').check();
      await check(page, 'dialog[open]', 'the list of parts');
      await button(list, 'Not on this model').click();
      await done(list);
      await button(page, /^1 part not on this model/).click();
      await page.locator('summary', { hasText: 'Add an alternative' }).click();
      await check(page, '.part-table', 'what is left out, and what to add');
    });

    it(`${name}: of alternatives, of the build and of a new one neither`, async () => {
      const page = await start(screen);
      await page.locator('.car .alternative-name').first().click();
      const card = page.getByRole('dialog', { name: 'Alternative A' });
      await card.waitFor();
      await check(page, 'dialog[open]', 'an alternative');
      await button(card, 'Take out').click();
      await check(page, '.said', 'the line at the foot');
      const dialog = await newBuild(page);
      await check(page, 'dialog[open]', 'a new build');
      await button(dialog, 'Begin this build').click();
      await page.locator('.questions').waitFor();
      // On a phone the questions lie beneath the switches, and a line under the car leads there.
      const line = button(page, /^Three questions to a comparison: 0 of 3/);
      expect(await line.isVisible()).toBe(screen === phone);
      if (screen === phone) await line.click();
      await check(page, '.questions', 'three questions');
      await button(page, /^New roadster/).click();
      await page.getByRole('dialog', { name: 'This build' }).waitFor();
      await check(page, 'dialog[open]', 'the build');
      await page.keyboard.press('Escape');
      await page.locator('.car .alternative-name').first().click();
      await button(page.getByRole('dialog', { name: 'Alternative A' }), 'Take out').click();
      await page.getByRole('heading', { name: 'Nothing to compare yet' }).waitFor();
      await check(page, 'main', 'no alternatives');
    });
  }
});
