/**
 * Rules in the builder's words: written by keyboard, seen to be kept or broken, counted, brought to
 * a clash and mended. Counts are held against trying every combination (oracle: enumerated.ts).
 * Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type Build, type Rule, refOf } from '../../src/build/build.ts';
import { setCandidate } from '../../src/build/edit/part.ts';
import { parseBuild, textOf } from '../../src/build/file.ts';
import { countKeeping } from '../build/enumerated.ts';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const demoText = readFileSync(new URL('../../src/build/demo.json', import.meta.url), 'utf8');
const demo = parseBuild(demoText);
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
  await section(opened.page)
    .getByRole('heading', { name: /^Rules/ })
    .waitFor();
  return opened.page;
};
const section = (page: Page) => page.locator('.rules-section');
const form = (page: Page) => section(page).getByRole('form');
const total = (page: Page) => section(page).locator('.section-title small');
const sentences = (page: Page): Promise<string[]> =>
  section(page).locator('.rules .rule .rule-sentence').allTextContents();
const undo = (page: Page): Promise<void> =>
  page.locator('header').getByRole('button', { name: 'Undo' }).first().click();

/** Kinds in the order they are offered. */
const kinds = ['same', 'if-then', 'never-together', 'must-echo', 'most-share', 'most-finishes'];
kinds.push('most-new-bottles', 'ready-by');

/** Opens the form with the keyboard alone and goes to a kind. */
async function begin(page: Page, kind: Rule['kind']): Promise<void> {
  await section(page).getByRole('button', { name: 'Add a rule' }).focus();
  await page.keyboard.press('Enter');
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('type')))
    .toBe('radio');
  for (let step = 0; step < kinds.indexOf(kind); step++) await page.keyboard.press('ArrowRight');
}
/** Goes to the next blank and types what it should say. */
async function fill(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Tab');
  await page.keyboard.type(text);
}
/** Adds what was written, from anywhere in the form. */
async function add(page: Page): Promise<void> {
  await form(page).getByRole('button', { name: 'Add this rule' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => form(page).count()).toBe(0);
}
const withRules = (...rules: Rule[]): Build => ({ ...demo, rules: [...demo.rules, ...rules] });
const keepers = (build: Build): string => countKeeping(build, build.rules).toLocaleString('en-GB');

const alike: Rule = { kind: 'same', parts: ['stripes', 'mirrors'] };

/** A dropped file, as a file manager would hand it over. */
const drop = (page: Page, text: string): Promise<void> =>
  page.evaluate((content) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([content], 'build.json', { type: 'application/json' }));
    for (const type of ['dragover', 'drop']) {
      document.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true }));
    }
  }, text);

const objections = async (page: Page): Promise<string[]> =>
  (await new AxeBuilder({ page }).include('.rules-section').analyze()).violations.map(
    ({ id, nodes }) => `${id}: ${nodes[0]?.html}`,
  );

describe('the rules of a build', () => {
  it('are told as sentences, with how they stand and how much they leave', async () => {
    const page = await start();
    const told = await sentences(page);
    expect(told).toHaveLength(demo.rules.length);
    expect(told[0]).toContain('Mirrors must wear the same as Badges.');
    expect(told[1]).toMatch(/With Dashboard in Marigold, Seat piping must wear Oat ribbon or /);
    expect(await section(page).getByText('Kept by A, B and C.').count()).toBe(demo.rules.length);
    // Derived: seven open parts of three candidates each.
    await expect
      .poll(() => total(page).textContent())
      .toBe(
        `The open choices allow ${(3 ** 7).toLocaleString('en-GB')} combinations; ${keepers(demo)} of them keep the rules.`,
      );
  });

  it('light their parts when pointed at', async () => {
    const page = await start();
    await section(page).locator('.rule').nth(1).hover();
    const lit = page.locator('.part-table tr.is-lit th .part-name');
    await expect.poll(() => lit.count()).toBeGreaterThan(0);
    expect((await lit.allTextContents()).join()).toMatch(/Dashboard|Seat piping/);
  });
});

describe('writing a rule by keyboard alone', () => {
  it('two parts alike: counted and broken before it is added, taken back by undo', async () => {
    const page = await start();
    await begin(page, 'same');
    await fill(page, 'Stripes');
    await fill(page, 'Mirrors');
    const would = form(page).locator('.rule-would');
    await expect
      .poll(() => would.textContent())
      .toContain(`It would leave ${keepers(withRules(alike))} combinations of 2,187`);
    for (const letter of ['A', 'B', 'C']) {
      expect(await would.textContent()).toContain(`${letter} would break it: they differ`);
    }
    await add(page);
    expect((await sentences(page)).at(-1)).toContain('Stripes must wear the same as Mirrors.');
    const row = section(page).locator('.rule').last();
    expect(await row.textContent()).not.toContain('cannot hold together');
    expect(await row.textContent()).toContain('Broken by A: they differ: Stripes in Oyster');
    await expect.poll(() => total(page).textContent()).toContain(keepers(withRules(alike)));
    expect(await page.getByRole('list', { name: 'Rules broken' }).count()).toBe(3);
    // Focus waits where the next thing is likely to be done.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Change');
    await undo(page);
    await expect.poll(() => section(page).locator('.rule').count()).toBe(demo.rules.length);
  });

  it('if one choice, then one of several', async () => {
    const page = await start();
    await begin(page, 'if-then');
    await fill(page, 'Badges');
    await fill(page, 'Dragonfly');
    await fill(page, 'Dashboard');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await add(page);
    expect((await sentences(page)).at(-1)).toMatch(
      /With Badges in Dragonfly, Dashboard must wear .+ or .+\./,
    );
    await expect.poll(() => total(page).textContent()).toMatch(/of them keep the rules/);
  });

  it('two choices never together, one of which an alternative has', async () => {
    const page = await start();
    await begin(page, 'never-together');
    await fill(page, 'Mirrors');
    await fill(page, 'Marigold');
    await fill(page, 'Stripes');
    await fill(page, 'Slate trim');
    await add(page);
    const row = section(page).locator('.rule').last();
    expect(await row.textContent()).toMatch(/Broken by B: they do\..*Kept by A and C\./);
  });

  it('limits and dates, which say what they do not count', async () => {
    const page = await start();
    await begin(page, 'most-new-bottles');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('many');
    expect(await form(page).textContent()).toContain('a whole number from 0 to 1000');
    expect(await form(page).getByRole('button', { name: 'Add this rule' }).isDisabled()).toBe(true);
    await page.keyboard.press('Control+A');
    await page.keyboard.type('0');
    await add(page);
    expect(await section(page).locator('.rule').last().textContent()).toMatch(
      /Broken by A, B and C: 1 is needed/,
    );
    for (const [kind, blanks, says] of [
      ['must-echo', ['Mirrors'], /The colour of Mirrors must show again in another zone/],
      ['most-share', ['Stripes'], /The colour of Stripes may take at most 5 %/],
      ['most-finishes', [], /At most 5 finishes may be used/],
    ] as const) {
      await begin(page, kind);
      for (const text of blanks) await fill(page, text);
      await add(page);
      expect((await sentences(page)).at(-1)).toMatch(says);
    }
    await begin(page, 'ready-by');
    await form(page).getByLabel('Date', { exact: true }).fill('2001-02-03');
    await add(page);
    expect(await section(page).locator('.rule').last().textContent()).toMatch(/Broken by A, B and/);
    expect(await section(page).textContent()).toContain('is not counted');
  });

  it('changes a rule in place, and leaves it alone on Escape', async () => {
    const page = await start();
    const before = await sentences(page);
    await section(page).getByRole('button', { name: 'Change rule 1' }).press('Enter');
    await form(page).waitFor();
    await expect.poll(() => form(page).locator(':focus').count()).toBe(1);
    // What it leaves is held against the rules without it, although it stands.
    const others = keepers({ ...demo, rules: demo.rules.slice(1) });
    expect(others).not.toBe(keepers(demo));
    await expect
      .poll(() => form(page).locator('.rule-would').textContent())
      .toContain(
        `It would leave ${keepers(demo)} combinations of 2,187; without it ${others} keep the rules.`,
      );
    await page.keyboard.press('Escape');
    await expect.poll(() => sentences(page)).toEqual(before);
    await section(page).getByRole('button', { name: 'Change rule 4' }).press('Enter');
    await form(page).getByLabel('Number of bottles').fill('1');
    await form(page).getByRole('button', { name: 'Change the rule' }).press('Enter');
    await expect
      .poll(() => sentences(page))
      .toEqual(before.map((told) => told.replace('At most 2 bottles', 'At most 1 bottle')));
    await undo(page);
    await expect.poll(() => sentences(page)).toEqual(before);
  });

  it('starts from a part of the table with the part filled in', async () => {
    const page = await start();
    await page.locator('.part-name', { hasText: /^Mirrors/ }).click();
    await page.locator('.elsewhere').getByRole('button', { name: 'Rule with this part…' }).click();
    const chosen = form(page).getByLabel('Part 1', { exact: true }).locator('option:checked');
    expect(await chosen.textContent()).toBe('Mirrors');
  });
});

describe('rules that cannot hold together', () => {
  // Derived: alike, the three can only be marigold, which has to be bought.
  const three: Rule = { kind: 'same', parts: ['mirrors', 'dashboard', 'seat-piping'] };
  const without: Build = { ...demo, rules: demo.rules.filter(({ kind }) => kind !== 'if-then') };
  const none: Rule = { kind: 'most-new-bottles', count: 0 };

  it('are brought down to the smallest set, explained, and mended by a button', async () => {
    expect(countKeeping(demo, [three, none])).toBe(0);
    expect(countKeeping(demo, [three])).toBeGreaterThan(0);
    expect(countKeeping(demo, [none])).toBeGreaterThan(0);
    const page = await start();
    await section(page).getByRole('button', { name: 'Take out rule 2' }).click();
    await begin(page, 'same');
    for (const part of ['Mirrors', 'Dashboard', 'Seat piping']) await fill(page, part);
    await add(page);
    await begin(page, 'most-new-bottles');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('0');
    await expect
      .poll(() => form(page).textContent())
      .toContain('It cannot hold together with rule 4.');
    await add(page);
    const clash = section(page).getByRole('region', { name: '2 rules cannot hold together' });
    await clash.waitFor();
    expect(await total(page).textContent()).toContain('none keeps the rules');
    expect(await clash.locator('.clash-rules').textContent()).toMatch(
      /Rule 4: Mirrors, Dashboard and Seat piping must all wear the same\..*Rule 5: At most 0 bottles/,
    );
    expect(await section(page).locator('.rule').last().textContent()).toContain(
      'It cannot hold together with rule 4.',
    );
    expect(await clash.locator('.argument').textContent()).toContain('left for them: Marigold.');
    const left = countKeeping(demo, [...without.rules, none]);
    expect(await clash.locator('.ways li').first().textContent()).toBe(
      `Take out rule 4leaves ${left} combinations`,
    );
    await clash.getByRole('button', { name: 'Take out rule 4' }).press('Enter');
    await expect.poll(() => clash.count()).toBe(0);
    await expect.poll(() => total(page).textContent()).toContain(`${left} of them keep the rules`);
    await undo(page);
    await clash.waitFor();
  });

  it('come back from a file, and are explained as before', async () => {
    const page = await start();
    await drop(page, textOf({ ...without, name: 'From a file', rules: [three, none] }));
    await page.getByRole('heading', { level: 1, name: 'From a file' }).waitFor();
    const clash = section(page).getByRole('region', { name: '2 rules cannot hold together' });
    await clash.waitFor();
    expect(await clash.locator('.clash-rules').textContent()).toMatch(
      /Rule 1: Mirrors, Dashboard and Seat piping must all wear the same\..*Rule 2: At most 0 bottles/,
    );
    expect(await page.locator('dialog[open]').count()).toBe(0);
  });

  it('may be freed by one candidate more', async () => {
    const page = await start();
    await drop(page, JSON.stringify({ ...demo, id: 'without-rules', rules: [] }));
    await section(page).getByText('No rules yet').waitFor();
    await begin(page, 'same');
    await fill(page, 'Stripes');
    await fill(page, 'Dashboard');
    await add(page);
    const clash = section(page).getByRole('region', { name: /one rule can never be kept/ });
    const way = clash.locator('.ways li', { hasText: /^Let / }).first();
    const [, part, finish, leaves] = (await way.textContent())!.match(
      /^Let (Stripes|Dashboard) wear (.+) tooleaves ([\d,]+) combinations$/,
    )!;
    const id = part!.toLowerCase();
    const ref = refOf(demo.finishes.find(({ name }) => name === finish)!);
    const rule: Rule = { kind: 'same', parts: ['stripes', 'dashboard'] };
    expect(countKeeping(demo, [rule])).toBe(0);
    const freed = countKeeping(setCandidate(demo, id, ref, true), [rule]);
    expect(leaves).toBe(freed.toLocaleString('en-GB'));
    await way.getByRole('button').press('Enter');
    await expect.poll(() => clash.count()).toBe(0);
    await expect.poll(() => total(page).textContent()).toContain(`${leaves} of them keep`);
    await undo(page);
    await clash.waitFor();
  });
});

describe('a rule whose finish is no candidate any more', () => {
  it('stays, and the section says that it can never apply', async () => {
    const page = await start();
    const parts = demo.parts.map((part) =>
      part.id === 'wheels' && 'candidates' in part
        ? { ...part, candidates: part.candidates.filter((one) => !one.endsWith('bronze-leaf')) }
        : part,
    );
    await drop(page, JSON.stringify({ ...demo, id: 'without-bronze', parts }));
    await section(page)
      .getByText('Can never apply: Bronze leaf is no candidate of Wheels.')
      .waitFor();
    expect(await section(page).locator('.rule').count()).toBe(demo.rules.length);
  });
});

describe('long names, a phone and what axe says', () => {
  const long = 'Wing mirrors with indicator lamps and heated glass, left and right together kept';
  const unbroken = 'Donaudampfschifffahrtselektrizitätenhauptbetriebswerk'.repeat(2);
  const wide = {
    ...demo,
    id: 'long-names',
    parts: demo.parts.map((part) => ({
      ...part,
      name: part.id === 'mirrors' ? long : part.id === 'badges' ? unbroken : part.name,
    })),
    finishes: demo.finishes.map((finish) =>
      finish.id === 'marigold' ? { ...finish, name: unbroken } : finish,
    ),
  };

  it.each([
    ['desktop', desktop],
    ['phone', phone],
  ])('on a %s', async (_name, screen) => {
    const page = await start(screen);
    await drop(page, JSON.stringify(wide));
    await section(page).getByText(long).first().waitFor();
    await section(page).getByRole('button', { name: 'Add a rule' }).click();
    await form(page)
      .getByRole('radio', { name: 'One choice asks for another' })
      .check({ force: true });
    await form(page).getByLabel('First part', { exact: true }).selectOption({ label: unbroken });
    await form(page).getByLabel('Finish of the first part').selectOption({ label: unbroken });
    await form(page).getByLabel('Second part', { exact: true }).selectOption({ label: long });
    await form(page).getByRole('checkbox').first().check();
    await expect.poll(() => form(page).textContent()).toMatch(/It would leave/);
    const sticksOut = await section(page).evaluate((box) =>
      [...box.querySelectorAll('*')]
        .filter((one) => !one.closest('svg') && !one.matches('.unseen, option, optgroup'))
        .filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
        .map((one) => one.className),
    );
    expect(sticksOut).toEqual([]);
    if (screen === phone) expect(await objections(page)).toEqual([]);
  });

  it('with a clash and with no rule', async () => {
    const page = await start();
    await begin(page, 'same');
    for (const part of ['Mirrors', 'Dashboard', 'Seat piping']) await fill(page, part);
    await add(page);
    await section(page).locator('.clash').waitFor();
    expect(await objections(page)).toEqual([]);
    while ((await section(page).locator('.rule').count()) > 0) {
      await section(page)
        .getByRole('button', { name: 'Take out rule 1', exact: true })
        .last()
        .click();
    }
    await section(page).getByText('No rules yet').waitFor();
  });
});
