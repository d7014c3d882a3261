/**
 * Every combination, best first: three parts left open and a rule added by a new user, the answer
 * read and its best row put on the stage; a long search stopped; what cannot be ranked told. Rows
 * are held against every combination scored one by one by the sheet (oracle: enumerated.ts for the
 * rules). Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type Build, isOpen, type Rule, refOf } from '../../src/build/build.ts';
import { settlePart } from '../../src/build/edit/part.ts';
import { parseBuild, textOf } from '../../src/build/file.ts';
import type { SightTable } from '../../src/car/table.ts';
import { compareAlternatives } from '../../src/score/sheet.ts';
import { everyCombination, keeps } from '../build/enumerated.ts';
import { button, letters, undo } from './bench.ts';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { dropFile } from './drop.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const demo = parseBuild(read('../../src/build/demo.json'));
const sight = JSON.parse(read('../../models/roadster.sight.json')) as SightTable;
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
const area = (page: Page) => page.locator('.ranking-area');
const standing = (page: Page) => page.locator('.ranking-words [role="status"]');
const values = (page: Page): Promise<string[]> => page.locator('.ranking-value').allTextContents();
const toRanking = (page: Page): Promise<void> =>
  button(page.getByRole('navigation', { name: 'Beneath the cars' }), 'Ranking').click();
const objections = async (page: Page): Promise<string[]> =>
  (await new AxeBuilder({ page }).include('.ranking-area').analyze()).violations.map(
    ({ id, nodes }) => `${id}: ${nodes[0]?.html}`,
  );
/** Whether the page is as wide as its window and no wider. */
const fits = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);

/** Overalls of all combinations that keep the rules, best first, as they are shown. */
async function enumerated(build: Build, page: Page): Promise<string[]> {
  const today = await page.evaluate(() => {
    const now = new Date();
    const two = (value: number): string => String(value).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  });
  const kept = everyCombination(build).filter((worn) =>
    build.rules.every((rule) => keeps(build, worn, rule)),
  );
  const open = build.parts.filter(isOpen);
  const alternatives = kept.map((worn, at) => ({
    id: `c${at}`,
    name: `c${at}`,
    choices: Object.fromEntries(open.map(({ id }) => [id, worn[id]!])),
  }));
  return compareAlternatives({ ...build, alternatives }, sight, { today, withoutCloseness: true })
    .alternatives.map(({ overall }) => overall)
    .sort((one, other) => other - one)
    .map((overall) => overall.toFixed(1));
}

const settled = ['Stripes', 'Seat inserts', 'Dashboard', 'Wheels'];
const apart: Rule = {
  kind: 'never-together',
  first: { part: 'mirrors', finish: 'corner-shop/marigold' },
  second: { part: 'seat-piping', finish: 'corner-shop/marigold' },
};

describe('every combination, best first', () => {
  it('three parts left open, a rule added, the answer read, its best put on the stage', async () => {
    const page = await start();
    await button(page, 'Mark several parts…').click();
    const list = page.getByRole('dialog', { name: 'All parts' });
    for (const part of settled) await list.getByRole('checkbox', { name: `Tick ${part}` }).check();
    await button(list, 'Settled').click();
    await button(list, 'Done').click();
    await button(page.locator('.rules-section'), 'Add a rule').focus();
    await page.keyboard.press('Enter');
    const isAtKinds = (): Promise<boolean> =>
      page.evaluate(() => document.activeElement?.getAttribute('type') === 'radio');
    await expect.poll(isAtKinds).toBe(true);
    for (const key of ['ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
    for (const blank of ['Mirrors', 'Marigold', 'Seat piping', 'Marigold']) {
      await page.keyboard.press('Tab');
      await page.keyboard.type(blank);
    }
    await button(page, 'Add this rule').click();
    const ruled = page.locator('.rules .rule', { hasText: 'Seat piping in Marigold' });
    await expect.poll(() => ruled.count()).toBe(1);
    await button(page, 'Rank every combination').click();

    await expect.poll(() => standing(page).textContent()).toContain('proved');
    const ids = settled.map((name) => demo.parts.find((part) => part.name === name)!.id);
    const three = ids.reduce((build: Build, id) => settlePart(build, id, false), demo);
    const build = { ...three, rules: [...demo.rules, apart] };
    const expected = await enumerated(build, page);
    expect(await values(page)).toEqual(expected.slice(0, 10));
    // Where what was pressed has gone, the focus is at the heading.
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('ranking-title');
    expect(await page.getByRole('columnheader').allTextContents()).toEqual(
      expect.arrayContaining([expect.stringMatching(/^Seat piping/)]),
    );
    const rows = page.locator('.ranking-lines');
    expect(await rows.first().textContent()).toMatch(/ahead of number 2|Level with number 2/);
    expect(await rows.first().textContent()).toMatch(/To buy: |Nothing to buy/);
    await expect.poll(() => page.locator('.ranking-costs li').count()).toBe(build.rules.length);
    expect(await page.locator('.ranking-costs li').last().textContent()).toMatch(/Rule 5 costs/);
    expect(await objections(page)).toEqual([]);

    const put = rows.first().getByRole('button');
    await put.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => letters(page)).toEqual(['A', 'B', 'C', 'D']);
    expect(await put.textContent()).toContain('Stands as D');
    expect(await page.locator('.said').textContent()).toContain(
      'Number 1 stands on the stage as D.',
    );
    expect(await put.evaluate((element) => element === document.activeElement)).toBe(true);
    // The number on the stage is that of the row, rounded as there.
    const [best] = await values(page);
    const overall = page.getByRole('article', { name: 'Alternative D' }).locator('.overall-value');
    expect(
      Math.abs(Number(/\d+/.exec((await overall.textContent()) ?? '')?.[0]) - Number(best)),
    ).toBeLessThan(0.56);
    await undo(page);
    await expect.poll(() => letters(page)).toEqual(['A', 'B', 'C']);
    expect(await put.textContent()).toContain('Put on the stage');

    // Three parts that may wear whatever the racks hold: thousands of combinations, as many rows.
    await button(page, 'Let open parts wear anything on hand').click();
    await expect
      .poll(() => standing(page).textContent())
      .toMatch(/^These are the best 10 that keep every rule, of \d+,\d+ combinations/);
    expect(await values(page)).toHaveLength(10);
    await undo(page);
    await expect.poll(() => values(page)).toEqual(expected);
  });

  it('on a phone: cards, a part held at one finish, only plainly different ones', async () => {
    const page = await start(phone);
    await toRanking(page);
    await expect.poll(() => standing(page).textContent()).toContain('proved');
    expect(await values(page)).toEqual((await enumerated(demo, page)).slice(0, 10));
    const cards = page.locator('.ranking-card');
    expect(await cards.first().textContent()).toContain('Seat piping');
    expect(await fits(page)).toBe(true);
    expect(await objections(page)).toEqual([]);

    await page.getByText('Hold a part at one finish').click();
    await page
      .getByRole('combobox', { name: 'Mirrors', exact: true })
      .selectOption({ label: 'Oyster' });
    await page.getByText('Mirrors held at Oyster').waitFor();
    const held = {
      ...demo,
      parts: demo.parts.map((part) =>
        part.id === 'mirrors' ? { ...part, candidates: ['bench-drawer/oyster'] } : part,
      ),
    };
    // Families are those of the whole build, so that numbers stay comparable.
    const best = (await enumerated(demo, page))[0]!;
    await expect.poll(async () => (await values(page))[0]).not.toBe(best);
    expect(everyCombination(held).length * 3).toBe(everyCombination(demo).length);
    for (const card of await cards.all()) expect(await card.textContent()).toMatch(/MirrorsOyster/);
    await button(page, /^Let go/).click();
    await expect.poll(async () => (await values(page))[0]).toBe(best);

    await page.getByLabel('Only plainly different ones').check();
    await expect.poll(() => standing(page).textContent()).toMatch(/differ plainly/);
    await expect.poll(async () => (await values(page)).length).toBe(10);
    expect((await values(page))[0]).toBe(best);
  });
});

/** More than can be proved in the time anyone waits: 37 parts, each with 12 of 60 finishes. */
function longBuild(): Build {
  let state = 7;
  const chance = (): number => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
  const model = demo.finishes.find(({ effect }) => effect === 'solid')!;
  const finishes = Array.from({ length: 60 }, (_, at) => ({
    ...model,
    id: `colour-${at}`,
    name: `Colour ${at}`,
    colour: {
      lab: [20 + 70 * chance(), 90 * chance() - 45, 90 * chance() - 45] as [number, number, number],
      light: 'D65' as const,
    },
    gloss60: Math.round(5 + 90 * chance()),
  }));
  const refs = finishes.map(refOf);
  const parts = sight.parts
    .filter(({ role }) => role === 'feature' || role === 'ground')
    .map(({ id, name }) => {
      const from = Math.floor(chance() * refs.length);
      const candidates = Array.from({ length: 12 }, (_, k) => refs[(from + 7 * k) % refs.length]!);
      return { id, name, covers: [id], absent: false, candidates };
    });
  const plain = { ...demo, id: 'long', name: 'Long', finishes, parts, rules: [], mustRead: [] };
  return parseBuild(textOf({ ...plain, alternatives: [] }));
}

describe('a search that takes its time', () => {
  it('tells how far it has come, stops at once, and keeps what was found', async () => {
    const page = await start();
    await dropFile(page, 'long.json', textOf(longBuild()));
    await page.getByRole('heading', { name: 'Long', level: 1 }).waitFor();
    await toRanking(page);
    const words = page.locator('.ranking-words');
    await expect
      .poll(() => words.textContent())
      .toMatch(/Searching …Best found so far: [\d.]+; no combination can beat it by more than/);
    // The page's own thread is free: what is pressed is answered while the search goes on.
    const stop = button(words, 'Stop');
    await stop.focus();
    await page.keyboard.press('Enter');
    expect(await standing(page).textContent()).toMatch(/^Stopped\. Best found/);
    expect(await values(page)).toHaveLength(10);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Rank again');
    await page.keyboard.press('Enter');
    await expect.poll(() => standing(page).textContent()).toBe('Searching …');
    await page.keyboard.press('Enter');
    await expect.poll(() => standing(page).textContent()).toMatch(/^Stopped/);
    // Under another lamp the rows are of before; so long a search is not begun unasked.
    await page.getByRole('radio', { name: 'Daylight', exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => standing(page).textContent()).toMatch(/^The build has changed since/);
    expect(await values(page)).toHaveLength(10);
    await button(words, 'Rank anew').click();
    await expect.poll(() => standing(page).textContent()).toBe('Searching …');
  });

  it('says why nothing can be ranked, and leads to what would mend it', async () => {
    const page = await start();
    const clash: Rule[] = [
      { kind: 'same', parts: ['mirrors', 'wheels'] },
      { kind: 'most-finishes', count: 40 },
    ];
    await dropFile(
      page,
      'clash.json',
      textOf({ ...demo, id: 'clash', name: 'Clash', rules: clash }),
    );
    await page.getByRole('heading', { name: 'Clash', level: 1 }).waitFor();
    await toRanking(page);
    await page.getByText('Nothing can be ranked as it stands').waitFor();
    await page.getByText(/Rule 1 stands in the way/).waitFor();
    expect(await objections(page)).toEqual([]);
    await button(page, 'Take out rule 1').click();
    await expect.poll(() => standing(page).textContent()).toContain('proved');
    await undo(page);
    await page.getByText('Nothing can be ranked as it stands').waitFor();

    const none = demo.parts
      .filter(isOpen)
      .reduce((b: Build, { id }) => settlePart(b, id, false), demo);
    await dropFile(
      page,
      'none.json',
      textOf({ ...none, id: 'none', name: 'None open', rules: [] }),
    );
    await area(page).getByText('Nothing is left open yet').waitFor();
    await button(page, 'Leave parts open…').click();
    await page.getByRole('dialog', { name: 'Open parts' }).waitFor();
  });
});
