/**
 * What somebody who is asked does on the page of a round, in a real browser without 3D, against the
 * built page under a sub-path. Replies are read back by the room that tells the terminal what they
 * mean; what beats what in pairs is told by one fixed order of liking. Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import type { Build } from '../../src/build/build.ts';
import { openBuild } from '../../src/build/file.ts';
import { addressOf, linkOf } from '../../src/opinion/link/link.ts';
import { readReply } from '../../src/opinion/reply/read.ts';
import { lettersIn, type Round, roundOf } from '../../src/opinion/round.ts';
import { button, reach } from './bench.ts';
import { desktop, phone, startBrowser } from './browser.ts';
import { type Host, serve } from './serve.ts';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const demo = openBuild(readFileSync(at('src/build/demo.json'), 'utf8'));
const three = roundOf(demo, { parts: ['stripes', 'mirrors'] });
const five = roundOf(withMore(demo));

/** The demo with two more alternatives. */
function withMore(build: Build): Build {
  const [first, second, third] = build.alternatives;
  const more = [
    { ...second!, id: 'fourth', choices: { ...second!.choices, stripes: 'bench-drawer/oyster' } },
    { ...third!, id: 'fifth', choices: { ...first!.choices, mirrors: 'corner-shop/marigold' } },
  ];
  return { ...build, alternatives: [...build.alternatives, ...more] };
}

let browser: Browser;
let host: Host;
let page: Page;
const strangers: string[] = [];
const errors: string[] = [];

beforeAll(async () => {
  if (!existsSync(at('dist/app/round.html'))) throw new Error('dist/app is missing: npm run build');
  [browser, host] = await Promise.all([startBrowser(), serve(at('dist/app/'), '/some/where/')]);
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});
afterEach(async () => {
  // Whatever a viewer does, the page meets no error, asks nobody else and misses no file.
  expect(errors.splice(0)).toEqual([]);
  expect(strangers.splice(0)).toEqual([]);
  expect(host.missing).toEqual([]);
  await page.context().close();
});

/** A fresh visitor at an address. */
async function visit(address: string, screen: BrowserContextOptions = phone): Promise<Page> {
  const context = await browser.newContext({ ...screen, reducedMotion: 'reduce' });
  page = await context.newPage();
  page.on('request', (request) => {
    if (!request.url().startsWith(host.url)) strangers.push(request.url());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(address, { waitUntil: 'commit' });
  await page.locator('h1').waitFor();
  return page;
}
async function open(round: Round, screen?: BrowserContextOptions): Promise<Page> {
  await visit(addressOf(host.url, round), screen);
  await page.locator('.round-picture svg').first().waitFor();
  return page;
}
const car = (letter: string): Locator =>
  page.getByRole('radio', { name: `Car ${letter}`, exact: true });
const order = (): Promise<string[]> => page.locator('.round-car .letter').allTextContents();
const replyText = (): Promise<string> =>
  page.getByRole('textbox', { name: /^Your reply/ }).inputValue();
const violations = async (): Promise<string[]> =>
  (await new AxeBuilder({ page }).analyze()).violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
  );

it('is answered by a tap on a phone: nothing chosen before, parts and words besides, and the reply is read as meant', async () => {
  await open(three);
  expect(await page.locator('h1').textContent()).toBe(demo.name);
  expect((await order()).sort()).toEqual(['A', 'B', 'C']);
  expect(await page.locator('input:checked').count()).toBe(0);
  expect(await page.getByRole('textbox').count()).toBe(0);
  expect(await violations()).toEqual([]);
  // What tells the cars apart is said in words, and every picture is named.
  expect(await car('B').getAttribute('aria-describedby')).not.toBeNull();
  const words = await page.locator(`[id="${await car('B').getAttribute('aria-describedby')}"]`);
  expect(await words.textContent()).toContain('Mirrors: Marigold');
  expect(await page.getByRole('img', { name: 'Drawing of car A' }).count()).toBe(1);
  await car('C').tap();
  await page
    .getByRole('group', {
      name: /^Stripes: as A and C, or as B\?$|^Stripes: as B, or as A and C\?$/,
    })
    .getByRole('radio', { name: /^As B/ })
    .tap();
  await page
    .getByRole('textbox', { name: /^Anything to say/ })
    .fill('Slate is  quieter.\nI like it.');
  const said = readReply(await replyText(), three);
  expect(said).toMatchObject({ letter: 'C', parts: { stripes: 'B' } });
  expect(said.words.replace(/\s+/g, ' ')).toBe('Slate is quieter. I like it.');
  expect(await violations()).toEqual([]);
  // A change of mind changes the reply; an answer about a part can be taken back.
  await car('A').tap();
  await button(page, 'No answer about Stripes').tap();
  expect(readReply(await replyText(), three)).toMatchObject({ letter: 'A', parts: {} });
  const start = await page.getByRole('link', { name: 'Start from this' }).getAttribute('href');
  expect(start).toBe(`./index.html#start-A-${linkOf(three)}`);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
});

it('says so when the reply is copied, and marks it where copying is not allowed', async () => {
  await open(three);
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await car('B').tap();
  await button(page, 'Copy reply').tap();
  await page.getByText(/^Copied\./).waitFor();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(await replyText());
  await page.evaluate(() => {
    navigator.clipboard.writeText = () => Promise.reject(new DOMException('no', 'NotAllowedError'));
    document.execCommand = () => false;
  });
  await car('A').tap();
  expect(await page.getByText(/^Copied\./).count()).toBe(0);
  await button(page, 'Copy reply').tap();
  await page.getByText(/copy it by hand/).waitFor();
  expect(await page.evaluate(() => String(getSelection()))).toBe(await replyText());
  // A phone that shares is handed the same words.
  expect(await button(page, 'Share…').count()).toBe(0);
  await page.addInitScript(() => {
    navigator.share = async ({ text } = {}) => {
      document.title = text ?? '';
    };
  });
  await page.reload({ waitUntil: 'commit' });
  await car('C').tap();
  await button(page, 'Share…').tap();
  expect(readReply(await page.title(), three).letter).toBe('C');
});

it('is answered by keyboard alone, without a mouse and without 3D', async () => {
  await open(three, desktop);
  await reach(page, /^Car [ABC]$/);
  await page.keyboard.press('ArrowDown');
  const second = (await order())[1]!;
  expect(await car(second).isChecked()).toBe(true);
  await reach(page, /^To your reply$/);
  await page.keyboard.press('Enter');
  await reach(page, /^Copy reply$/);
  expect(readReply(await replyText(), three).letter).toBe(second);
  // Turned they cannot be here: the page says so, and the answer stays.
  await reach(page, /^Turn it in 3D$/, true);
  await page.keyboard.press('Enter');
  await page.getByText(/^This browser draws no 3D/).waitFor();
  expect(await violations()).toEqual([]);
  expect(readReply(await replyText(), three).letter).toBe(second);
});

it('shows the cars in an order by chance, which a reload keeps', async () => {
  const seen = new Set<string>();
  const all = async (): Promise<string> => {
    await button(page, 'See all').tap();
    return (await order()).join('');
  };
  // Were the order always the same, so would be these; by chance three alike come once in 14 400.
  await visit(addressOf(host.url, five));
  for (let visitor = 0; visitor < 3; visitor++) {
    await page.evaluate(() => localStorage.clear());
    await page.reload({ waitUntil: 'commit' });
    seen.add(await all());
  }
  expect(seen.size).toBeGreaterThan(1);
  const before = (await order()).join('');
  await page.reload({ waitUntil: 'commit' });
  expect(await all()).toBe(before);
});

it('puts five cars in pairs, with a way back and a way to see all', async () => {
  await open(five);
  // Somebody who likes what comes earlier in this row.
  const liking = ['D', 'A', 'E', 'C', 'B'];
  const likes = (shown: readonly string[]): string =>
    [...shown].sort((one, other) => liking.indexOf(one) - liking.indexOf(other))[0]!;
  const better = (shown: readonly string[]): Locator =>
    button(page, new RegExp(`^Car ${likes(shown)} rather`));
  await page.getByText(/^Pair 1 of 4/).waitFor();
  expect(await violations()).toEqual([]);
  const pairs: string[] = [];
  for (let at = 1; at <= 4; at++) {
    await page.getByText(new RegExp(`^Pair ${at} of 4`)).waitFor();
    const shown = await order();
    expect(shown).toHaveLength(2);
    pairs.push(shown.join(''));
    if (at === 3) {
      await button(page, 'Back a pair').tap();
      await page.getByText(/^Pair 2 of 4/).waitFor();
      expect((await order()).join('')).toBe(pairs[1]);
      await better(await order()).tap({ position: { x: 200, y: 60 } });
      await page.getByText(/^Pair 3 of 4/).waitFor();
    }
    expect(await page.getByRole('textbox').count()).toBe(0);
    // Somebody who presses twice means one pair, not the next as well.
    await better(shown).dblclick({ position: { x: 30 * at, y: 30 } });
  }
  const said = readReply(await replyText(), five);
  expect(said.letter).toBe('D');
  expect(said.pairs).toHaveLength(4);
  for (const { chosen, over } of said.pairs) expect(likes([chosen, over])).toBe(chosen);
  await button(page, 'See all').tap();
  expect((await order()).sort()).toEqual(lettersIn(five));
  await car('E').tap();
  expect(readReply(await replyText(), five)).toMatchObject({ letter: 'E', pairs: [] });
});

it('says which fault a link has, how much of it arrived and what to do, and opens one that comes whole', async () => {
  const link = linkOf(three);
  const half = link.length >> 1;
  await visit(`${host.url}round.html#${link.slice(0, half)}`);
  await page.getByRole('heading', { name: 'Part of this link is missing' }).waitFor();
  await page
    .getByText(`${half} of its ${link.length} characters arrived.`, { exact: false })
    .waitFor();
  expect(await page.getByRole('radio').count()).toBe(0);
  expect(await violations()).toEqual([]);
  const other = link.at(half) === 'A' ? 'B' : 'A';
  const go = (fragment: string) =>
    page.evaluate((hash) => {
      location.hash = hash;
    }, fragment);
  await go(`${link.slice(0, half)}${other}${link.slice(half + 1)}`);
  await page.getByRole('heading', { name: 'This link was changed on its way' }).waitFor();
  await go('“”');
  await page.getByRole('heading', { name: 'There is no link of ours in this address' }).waitFor();
  await go('');
  await page.getByRole('heading', { name: 'No cars have been put to you yet' }).waitFor();
  expect(await page.getByRole('link', { name: /bench/ }).getAttribute('href')).toBe('./index.html');
  await go(link);
  await page.getByRole('heading', { name: demo.name }).waitFor();
  expect(await page.getByRole('radio').count()).toBe(3);
});

it('shows names of any kind as text, and holds them within a small window at large type', async () => {
  const markup = '<img src=x onerror=alert(1)>';
  const hostile = roundOf({
    ...demo,
    name: markup,
    parts: demo.parts.map((part) =>
      part.id === 'stripes' ? { ...part, name: 'خطوط السباق على غطاء المحرك' } : part,
    ),
    finishes: demo.finishes.map((finish) =>
      finish.id === 'marigold' ? { ...finish, name: 'M'.repeat(120) } : finish,
    ),
  });
  await open(hostile, { ...phone, viewport: { width: 320, height: 640 } });
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
  expect(await page.locator('h1').textContent()).toBe(markup);
  expect(await page.locator('main img').count()).toBe(0);
  await car('B').tap();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
  expect(await violations()).toEqual([]);
});

it('can be answered by the words where the pictures never come', async () => {
  await visit(`${host.url}round.html`);
  await page.route(/\.svg$/, (route) => route.abort());
  await page.evaluate((hash) => {
    location.hash = hash;
  }, linkOf(three));
  await page.getByText(/^The pictures could not be fetched/).waitFor();
  await car('B').tap();
  expect(readReply(await replyText(), three).letter).toBe('B');
  await page.unroute(/\.svg$/);
  await button(page, 'Try again').tap();
  await page.locator('.round-picture svg').first().waitFor();
  expect(await car('B').isChecked()).toBe(true);
  // The browser itself tells of what this journey took away.
  expect(errors.splice(0).every((error) => /ERR_FAILED/.test(error))).toBe(true);
});
