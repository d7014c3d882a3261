/**
 * A builder's own build: from an empty bench to score sheets, by mouse and by keyboard alone; parts
 * marked, left off, taken apart and sprayed together; alternatives added, moved and taken out; any
 * two of them compared. Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import {
  button,
  cardOf,
  carOf,
  done,
  letters,
  named,
  newBuild,
  paintOf,
  pick,
  reach,
  undo,
} from './bench.ts';
import { desktop, type OpenPage, startBrowser, visit } from './browser.ts';
import { dropFile } from './drop.ts';
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
describe('from an empty bench to score sheets', () => {
  it('by mouse: a blank roadster, two parts painted, one open, two accents compared', async () => {
    const page = await start();
    const dialog = await newBuild(page);
    await dialog.getByRole('textbox', { name: 'Name' }).fill('Kit from the cupboard');
    await dialog.getByRole('radio', { name: '1:43' }).check({ force: true });
    await button(dialog, 'Begin this build').click();
    await page.getByRole('heading', { name: 'Kit from the cupboard' }).waitFor();
    await page.getByText('1:43').first().waitFor();
    await page.getByText('0 of 3 answered').waitFor();

    await button(page, 'Mark what is painted…').click();
    const list = page.getByRole('dialog', { name: 'Mark what is painted' });
    for (const part of ['Body', 'Engine cover']) await list.getByLabel(`Tick ${part}`).check();
    await button(list, /^Choose what/).click();
    await pick(list, 'Dragonfly');
    await list.getByText('Body and Engine cover wear Dragonfly.').waitFor();
    await button(list, 'Painted already').click();
    for (const part of ['Stripes', 'Mirrors']) {
      await list.getByLabel(`Tick ${part}`, { exact: true }).check();
    }
    await button(list, 'Open').click();
    // Opened parts stay ticked, and their spoons are laid out; the primer only stood for a choice.
    for (const finish of ['Oyster', 'Marigold']) await pick(list, finish);
    await list
      .getByText('Marigold is now a candidate of Stripes and Mirrors; A wears Oyster.')
      .waitFor();
    await done(list);
    await page.getByText('2 of 3 answered').waitFor();
    await button(page, 'One all in Marigold').click();

    await page.getByText(/all answered/).waitFor();
    expect(await letters(page)).toEqual(['A', 'B']);
    expect(await paintOf(page, 'A', 'stripe-left')).not.toBe(
      await paintOf(page, 'B', 'stripe-left'),
    );
    expect(await paintOf(page, 'B', 'mirrors')).toBe(await paintOf(page, 'B', 'stripe-left'));
    expect(await named(page)).toEqual(['A Oyster', 'B Marigold']);
    expect(await paintOf(page, 'A', 'body')).toBe(await paintOf(page, 'B', 'body'));
    expect(await page.getByRole('article', { name: /^Score sheet/ }).count()).toBe(2);
    await expect
      .poll(() => page.getByText(/stays ahead of|too close to call/i).count())
      .toBeGreaterThan(0);
    await button(page, 'Put these questions away').click();
    expect(await page.locator('.questions').count()).toBe(0);
  });

  it('by keyboard alone', async () => {
    const page = await start();
    const { keyboard } = page;
    if (await button(page, 'More').isVisible()) {
      await reach(page, /^More$/);
      await keyboard.press('Enter');
    }
    await reach(page, /^New…/);
    await keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'New build' }).waitFor();
    // The name has the focus already, and Enter begins.
    await keyboard.type('Typed in');
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Typed in' }).waitFor();

    await reach(page, /^Mark what is painted/);
    await keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Mark what is painted' }).waitFor();
    await reach(page, /^Tick Body/);
    await keyboard.press('Space');
    await reach(page, /^Painted already/);
    await keyboard.press('Enter');
    await reach(page, /^Tick Mirrors/, true);
    await keyboard.press('Space');
    await reach(page, /^Open$/);
    await keyboard.press('Enter');
    await keyboard.press('Escape');
    await page.getByText('1 of 3 answered').waitFor();

    await reach(page, /^Candidates for Mirrors/);
    await keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Mirrors' }).waitFor();
    await reach(page, /^Add candidates/);
    await keyboard.press('Enter');
    for (const finish of ['Oyster', 'Marigold']) {
      await page.getByRole('searchbox').waitFor();
      await reach(page, /^Find/, true);
      await keyboard.press('Control+A');
      await keyboard.type(finish);
      await page
        .getByRole('option', { name: new RegExp(finish) })
        .first()
        .waitFor();
      await reach(page, /^Candidates of Mirrors/);
      await keyboard.press('Enter');
    }
    await reach(page, /^Add an alternative with it/);
    await keyboard.press('Enter');
    await keyboard.press('Escape');
    await page.getByText(/all answered/).waitFor();
    expect(await paintOf(page, 'A', 'mirrors')).not.toBe(await paintOf(page, 'B', 'mirrors'));
    expect(await page.getByRole('article', { name: /^Score sheet/ }).count()).toBe(2);

    // The order changes by Shift and an arrow key.
    const before = await named(page);
    await reach(page, /^B Marigold$/);
    await keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => named(page)).not.toEqual(before);
    expect((await named(page))[0]).toMatch(/^A Marigold$/);
  });

  it('in the demo’s shape: nothing painted, its open parts and rules kept', async () => {
    const page = await start();
    const dialog = await newBuild(page);
    await dialog.getByRole('radio', { name: /^The demo’s parts/ }).check();
    await button(dialog, 'Begin this build').click();
    await page.getByRole('heading', { name: 'New roadster' }).waitFor();
    expect(await letters(page)).toEqual(['A']);
    await button(page, /parts settled/).click();
    const standings = await page.locator('.part-standing').allTextContents();
    expect(standings.length).toBeGreaterThan(10);
    expect(standings.filter((words) => words.startsWith('painted'))).toEqual([]);
    expect(await page.locator('.rules-section .rule').count()).toBe(4);
    await page.locator('.said').getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { name: 'Dragonfly roadster' }).waitFor();
  });
});

describe('parts', () => {
  it('that are not on the model leave drawings and table, and come back', async () => {
    const page = await start();
    const mirrors = carOf(page, 'A').locator('svg [data-part="mirrors"]').first();
    const card = await cardOf(page, 'Mirrors');
    await card.getByRole('radio', { name: /^Not on this model/ }).check();
    await done(card);
    expect(await mirrors.evaluate((path) => getComputedStyle(path).display)).toBe('none');
    expect(await button(page, /the card of Mirrors$/).count()).toBe(0);
    await button(page, /^1 part not on this model/).click();
    await button(page, /^It is on this model after all\s*: Mirrors/).click();
    expect(await mirrors.evaluate((path) => getComputedStyle(path).display)).not.toBe('none');
    await button(page, /the card of Mirrors$/).waitFor();
  });

  it('are settled and opened, and what they may wear is taken out', async () => {
    const page = await start();
    const card = await cardOf(page, 'Stripes');
    await button(card, /^Take out Slate trim/).click();
    expect(await paintOf(page, 'B', 'stripe-left')).toBe(await paintOf(page, 'A', 'stripe-left'));
    await button(card, 'Undo').click();
    expect(await paintOf(page, 'B', 'stripe-left')).not.toBe(
      await paintOf(page, 'A', 'stripe-left'),
    );
    await card.getByRole('radio', { name: /^Settled/ }).check();
    await card.getByText('Its finish').waitFor();
    expect(await paintOf(page, 'B', 'stripe-left')).toBe(await paintOf(page, 'A', 'stripe-left'));
    await done(card);
  });

  it('are taken apart and sprayed together again', async () => {
    const page = await start();
    const card = await cardOf(page, 'Stripes');
    await button(card, 'Take apart into 2 parts').click();
    const left = page.getByRole('dialog', { name: 'Left stripe' });
    await left.waitFor();
    await button(page, /the card of Right stripe$/).waitFor({ state: 'attached' });
    await left.getByText('Spray together with other parts…').click();
    await left.getByLabel(/^Right stripe/).check();
    await button(left, 'Spray these together').click();
    await left.getByText('Left stripe and Right stripe, sprayed in one go.').waitFor();
    await left.getByRole('textbox', { name: 'Name' }).fill('Both stripes');
    await done(page.getByRole('dialog', { name: 'Both stripes' }));
    await button(page, /the card of Both stripes$/).waitFor();
    // Parts, joining and name are three steps; the table is as before.
    for (let step = 0; step < 3; step++) await undo(page);
    await button(page, /the card of Stripes$/).waitFor();
  });

  it('that a file does not describe are told and added', async () => {
    const page = await start();
    const demo = JSON.parse(
      readFileSync(new URL('../../src/build/demo.json', import.meta.url), 'utf8'),
    );
    const parts = demo.parts.filter(({ id }: { id: string }) => id !== 'carpet');
    const text = JSON.stringify({ ...demo, name: 'Without carpet', parts });
    await dropFile(page, 'bare.json', text);
    await page.getByRole('heading', { name: 'Without carpet' }).waitFor();
    await button(page, /^1 part of the car not described yet/).click();
    await button(page, /^Add it to the table\s*: Carpet/).click();
    const card = page.getByRole('dialog', { name: 'Carpet' });
    await done(card);
    expect(await button(page, /not described yet/).count()).toBe(0);
  });
});

describe('alternatives', () => {
  it('are added, named, copied, moved and taken out; Undo brings them back', async () => {
    const page = await start();
    const first = await named(page);
    await page.locator('summary', { hasText: 'Add an alternative' }).click();
    await button(page, /^like B/).click();
    const card = page.getByRole('dialog', { name: 'Alternative D' });
    await card.getByRole('textbox', { name: 'Name' }).fill('Louder');
    await card.getByRole('textbox', { name: 'Note' }).fill('Slate, but louder.');
    expect(await paintOf(page, 'D', 'mirrors')).toBe(await paintOf(page, 'B', 'mirrors'));
    await button(card, 'Move left').click();
    expect((await named(page))[2]).toMatch(/^C Louder/);
    await button(page.getByRole('dialog', { name: 'Alternative C' }), 'Make a copy').click();
    const copy = page.getByRole('dialog', { name: 'Alternative D' });
    expect(await copy.getByRole('textbox', { name: 'Name' }).inputValue()).toBe('Copy of Louder');
    expect(await copy.getByRole('textbox', { name: 'Note' }).inputValue()).toBe(
      'Slate, but louder.',
    );
    await button(copy, 'Take out').click();
    await page.getByText('Copy of Louder was taken out.').waitFor();
    expect(await named(page)).toHaveLength(4);
    await page.locator('.said').getByRole('button', { name: 'Undo' }).click();
    expect((await named(page))[3]).toMatch(/^D Copy of Louder/);
    for (let step = 0; step < 5; step++) await undo(page);
    expect(await named(page)).toEqual(first);
  });

  it('any two stand side by side under their own letters, in cars, table and sheets', async () => {
    const page = await start();
    await page.getByRole('checkbox', { name: /^B, / }).uncheck();
    expect(await letters(page)).toEqual(['A', 'C']);
    expect((await named(page)).map((name) => name[0])).toEqual(['A', 'C']);
    expect(
      await page
        .getByRole('article', { name: /^Score sheet/ })
        .locator('.letter')
        .allTextContents(),
    ).toEqual(['A', 'C']);
    // Undo is for the build, never for what is looked at.
    expect(await button(page.locator('.head-tools'), 'Undo').first().isDisabled()).toBe(true);
    await page.getByRole('checkbox', { name: /^C, / }).uncheck();
    expect(await page.getByRole('checkbox', { name: /^A, / }).isDisabled()).toBe(true);
    await page.getByRole('checkbox', { name: /^B, / }).check();
    expect(await letters(page)).toEqual(['A', 'B']);
  });

  it('that are all gone leave an invitation', async () => {
    const page = await start();
    for (let left = 3; left > 0; left--) {
      await page.locator('.car .alternative-name').first().click();
      await button(page.getByRole('dialog', { name: 'Alternative A' }), 'Take out').click();
    }
    await page.getByRole('heading', { name: 'Nothing to compare yet' }).waitFor();
    await button(page, 'Add the first alternative').click();
    expect(await letters(page)).toEqual(['A']);
  });
});

describe('the build itself', () => {
  it('is renamed, scaled, dated and looked at from anywhere', async () => {
    const page = await start();
    await button(page, /^Dragonfly roadster/).click();
    const card = page.getByRole('dialog', { name: 'This build' });
    await card.getByRole('textbox', { name: 'Name' }).fill('Renamed');
    await card.getByRole('textbox', { name: 'or any other' }).first().fill('1:0');
    await card.getByText(/a scale from 1:1 to 1:200/).waitFor();
    await card.getByRole('textbox', { name: 'or any other' }).first().fill('1:35');
    await card.getByRole('textbox', { name: 'or any other' }).last().fill('60 cm');
    await card.getByLabel('Wanted by').fill('2031-05-24');
    await button(card, 'No date').waitFor();
    await done(card);
    await page.getByRole('heading', { name: 'Renamed' }).waitFor();
    await page.getByText(/1:35;.*wanted by 24 May 2031/).waitFor();
    expect(await page.getByRole('radio', { name: /^Yours.*0\.6 m/ }).isChecked()).toBe(true);
  });
});
