/**
 * Viewers are asked from the bench, and a link comes back onto one: by mouse, keyboard and finger,
 * in a real browser without 3D. The code on the screen is read by a decoder that is not ours (jsQR).
 * Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { inflateSync } from 'node:zlib';
import { AxeBuilder } from '@axe-core/playwright';
import jsqr from 'jsqr';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import type { Build } from '../../src/build/build.ts';
import { openBuild, textOf } from '../../src/build/file.ts';
import { addressOf, linkOf, roundFrom } from '../../src/opinion/link/link.ts';
import { roundOf } from '../../src/opinion/round.ts';
import { button, letters, named, reach, undo } from './bench.ts';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { dropFile } from './drop.ts';
import { type Host, serve } from './serve.ts';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const demo = openBuild(readFileSync(at('src/build/demo.json'), 'utf8'));

let browser: Browser;
let host: Host;
let opened: OpenPage;

beforeAll(async () => {
  if (!existsSync(at('dist/app/round.html'))) throw new Error('dist/app is missing: npm run build');
  [browser, host] = await Promise.all([startBrowser(), serve(at('dist/app/'), '/some/where/')]);
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

const start = async (screen = desktop, address = host.url): Promise<Page> => {
  opened = await visit(browser, address, screen);
  return opened.page;
};
const dialogOf = (page: Page): Locator => page.getByRole('dialog', { name: 'Ask viewers' });
const addressIn = (page: Page): Promise<string> =>
  dialogOf(page).getByLabel('Address for viewers').inputValue();
const heading = (page: Page): Promise<string | null> => page.locator('.head h1').textContent();

/** Opens the dialog from beside the cars. */
async function ask(page: Page): Promise<Locator> {
  await page.locator('.picture-tools').getByRole('button', { name: 'Ask viewers…' }).click();
  await dialogOf(page).waitFor();
  return dialogOf(page);
}

/** Nothing for axe to object to, and nothing wider than the window. */
async function check(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).include('dialog[open]').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html)}`)).toEqual([]);
  const wider = await page.evaluate(() => {
    const dialog = document.querySelector('dialog.ask')!;
    return Math.max(
      dialog.scrollWidth - dialog.clientWidth,
      document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
  });
  expect(wider).toBeLessThanOrEqual(0);
}

/** Text in the clipboard of the page. */
const copied = (page: Page): Promise<string> => page.evaluate(() => navigator.clipboard.readText());

/** What is pasted anywhere on the page. */
const paste = (page: Page, text: string): Promise<void> =>
  page.evaluate((words) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', words);
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
  }, text);

/** Pixels of a PNG of 8 bits RGB or RGBA, as screenshots are by the PNG specification, from memory. */
function pixelsOf(png: Buffer): { data: Uint8ClampedArray; width: number; height: number } {
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  const channels = png[25] === 6 ? 4 : 3;
  const packed: Buffer[] = [];
  for (let from = 8; from < png.length; ) {
    const size = png.readUInt32BE(from);
    if (png.toString('latin1', from + 4, from + 8) === 'IDAT') {
      packed.push(png.subarray(from + 8, from + 8 + size));
    }
    from += size + 12;
  }
  const rows = inflateSync(Buffer.concat(packed));
  const row = width * channels;
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  let last = new Uint8Array(row);
  for (let y = 0; y < height; y++) {
    const filter = rows[y * (row + 1)]!;
    const now = new Uint8Array(row);
    for (let x = 0; x < row; x++) {
      const left = now[x - channels] ?? 0;
      const up = last[x]!;
      const corner = x < channels ? 0 : last[x - channels]!;
      const guess = left + up - corner;
      const [a, b, c] = [left, up, corner].map((one) => Math.abs(guess - one)) as [
        number,
        number,
        number,
      ];
      const paeth = a <= b && a <= c ? left : b <= c ? up : corner;
      const added = [0, left, up, (left + up) >> 1, paeth][filter]!;
      now[x] = rows[y * (row + 1) + 1 + x]! + added;
      const pixel = Math.floor(x / channels);
      if (x % channels < 3) data[(y * width + pixel) * 4 + (x % channels)] = now[x]!;
    }
    last = now;
  }
  return { data, width, height };
}

it('a link made by mouse holds what was ticked, and so do the code on the screen and the copy', async () => {
  const page = await start();
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  const dialog = await ask(page);
  const all = roundOf(demo);
  expect(roundFrom(await addressIn(page))).toEqual(all);
  expect(await addressIn(page)).toBe(addressOf(host.url, all));
  await dialog.getByText('Nobody else can open it yet').first().waitFor();
  await check(page);

  await dialog.getByRole('checkbox', { name: /^B / }).uncheck();
  for (const part of ['Mirrors', 'Badges']) await dialog.getByLabel(part, { exact: true }).check();
  await dialog.getByLabel('The story goes along').check();
  await dialog.getByLabel('Address where the page’s files stand').fill('cars.example/bench');
  const ids = demo.alternatives.map(({ id }) => id);
  const asked = roundOf(demo, {
    alternatives: [ids[0]!, ids[2]!],
    parts: ['mirrors', 'badges'],
    withStory: true,
  });
  const address = await addressIn(page);
  expect(address).toBe(addressOf('https://cars.example/bench/', asked));
  expect(roundFrom(address)).toEqual(asked);
  await dialog.getByText(`${address.length} characters, fits anywhere we know of.`).waitFor();

  const shot = pixelsOf(await dialog.locator('.ask-code').first().screenshot());
  expect(jsqr(shot.data, shot.width, shot.height)?.data).toBe(address);

  await button(dialog, 'Copy link').click();
  await dialog.getByText('Copied.').waitFor();
  expect(await copied(page)).toBe(address);

  const text = dialog.getByLabel('Text; change it as you like');
  expect(await text.inputValue()).toContain(address);
  await text.fill(`${'x'.repeat(160)}\n${address}`);
  await dialog.getByText('160 of 150 characters, 10 too many.').waitFor();
  await button(dialog, 'Copy text').click();
  expect(await copied(page)).toBe(`${'x'.repeat(160)}\n${address}`);

  // The last letter alone leaves nothing to choose.
  await dialog.getByRole('checkbox', { name: /^C / }).uncheck();
  await dialog.getByText('Viewers need at least two to choose from.').waitFor();
  expect(await dialog.getByLabel('Address for viewers').count()).toBe(0);
});

it('by keyboard: found by its name, tried as a viewer, shown large, closed again', async () => {
  const page = await start();
  const { keyboard } = page;
  await keyboard.press('Control+k');
  await page.getByRole('combobox').waitFor();
  await keyboard.type('ask viewers');
  await keyboard.press('Enter');
  await dialogOf(page).waitFor();
  await reach(page, /^Mirrors$/);
  await keyboard.press('Space');
  const round = roundOf(demo, { parts: ['mirrors'] });
  expect(roundFrom(await addressIn(page))).toEqual(round);
  await reach(page, /^Try it as a viewer$/);
  const coming = page.context().waitForEvent('page');
  await keyboard.press('Enter');
  const viewer = await coming;
  await viewer.getByText('Dragonfly roadster').first().waitFor();
  expect(viewer.url()).toBe(`${host.url}round.html#${linkOf(round)}`);
  await viewer.close();
  await reach(page, /^Show large$/);
  await keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'Code to scan' }).waitFor();
  await keyboard.press('Escape');
  await page.getByRole('dialog', { name: 'Code to scan' }).waitFor({ state: 'hidden' });
  expect(await dialogOf(page).isVisible()).toBe(true);
  await keyboard.press('Escape');
  await dialogOf(page).waitFor({ state: 'hidden' });
});

it('on a phone: a link that is too long is told, nothing for axe to object to', async () => {
  const page = await start(phone);
  // Spectra cannot be packed small: 41 figures each, no two alike.
  const nm = Array.from({ length: 41 }, (_, k) => 380 + 10 * k);
  const measured: Build = {
    ...demo,
    name: 'Measured',
    // By daylight a spectrum shows nothing that its Lab does not, and is left out.
    viewing: { ...demo.viewing, light: 'A' },
    finishes: demo.finishes.map((finish, k) => {
      const reflectance = nm.map((_, j) =>
        Number((0.5 + 0.4 * Math.sin(k * 7 + j * j)).toFixed(4)),
      );
      return { ...finish, colour: { spectrum: { nm, reflectance } } };
    }),
  };
  await dropFile(page, 'measured.json', textOf(measured));
  await page.getByRole('heading', { name: 'Measured' }).waitFor();
  const dialog = await ask(page);
  expect((await addressIn(page)).length).toBeGreaterThan(2000);
  await dialog.getByText('Over 2,000, comments and chats may cut it or hold it back.').waitFor();
  await check(page);
  const before = (await addressIn(page)).length;
  const costs = dialog.getByRole('list', { name: /^What can be left out/ });
  const dearest = costs.getByRole('listitem').first();
  const [, told = ''] = /: ([\d,]+) characters/.exec((await dearest.textContent()) ?? '') ?? [];
  await button(dearest, /^Leave it out/).click();
  // What is promised is what comes.
  expect(before - (await addressIn(page)).length).toBe(Number(told.replace(',', '')));
  await button(dialog, 'Put back').click();
  expect((await addressIn(page)).length).toBe(before);
});

it('“Start from this” lays a copy on the bench, keeps the old build, and undo leads back', async () => {
  const page = await start();
  await dropFile(page, 'mine.json', textOf({ ...demo, name: 'My own' }));
  await page.locator('[data-kept="kept"]').waitFor();
  const other = { ...demo, name: 'Shown by a friend' };
  const link = linkOf(roundOf(other));
  await page.goto(`${host.url}index.html#start-B-${link}`, { waitUntil: 'commit' });
  await page.getByText('You chose B.').waitFor();
  expect(await heading(page)).toBe('Shown by a friend');
  expect(await letters(page)).toEqual(['A', 'B', 'C']);
  expect(new URL(page.url()).hash).toBe('');
  for (const name of await named(page)) expect(name).not.toMatch(/^([A-Z]) \1$/);
  await page.locator('[data-kept="kept"]').waitFor();
  await undo(page);
  expect(await heading(page)).toBe('My own');
  await page.locator('.picture-tools').waitFor();
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox').fill('Shown by a friend');
  await page.getByRole('option', { name: /^Open Shown by a friend/ }).waitFor();
});

it('a pasted or dropped link opens, a mangled one says why not, other words do nothing', async () => {
  const page = await start();
  const address = addressOf('https://cars.example/', roundOf({ ...demo, name: 'Pasted in' }));
  await paste(page, 'nothing of ours, not even https://cars.example/page#a-heading-of-some-length');
  await paste(page, `Which one?\n<${address}>.`);
  await page.getByRole('heading', { name: 'Pasted in' }).waitFor();
  expect(await page.locator('dialog[open]').count()).toBe(0);

  await paste(page, address.slice(0, -40));
  const refusal = page.locator('dialog.problems');
  await refusal.waitFor();
  const link = address.split('#')[1]!;
  await refusal.getByText(`${link.length - 40} of ${link.length} characters`).waitFor();
  await refusal.getByText('What you had open is untouched.').waitFor();
  await button(refusal, 'Back to the bench').click();
  expect(await heading(page)).toBe('Pasted in');

  await undo(page);
  await page.evaluate((words) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.setData('text/plain', words);
    for (const type of ['dragover', 'drop']) {
      document.body.dispatchEvent(
        new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }),
      );
    }
  }, address);
  await page.getByRole('heading', { name: 'Pasted in' }).waitFor();
});
