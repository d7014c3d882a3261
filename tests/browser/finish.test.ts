/**
 * A finish of one's own, from nothing known to what the car wears, in a real browser. What screens
 * should show of a Lab colour is worked out by colorjs.io, a second library. Needs `npm run build`.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import Color from 'colorjs.io';
import type { Browser, Page } from 'playwright-core';
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

const editor = (page: Page) => page.getByRole('dialog');
const field = (page: Page, label: string | RegExp) =>
  editor(page).getByRole('textbox', { name: label, exact: true });

/** The rack, with its spoons. */
const rack = async (screen = desktop): Promise<Page> => {
  opened = await visit(browser, host.url, screen);
  await opened.page.getByRole('button', { name: 'Rack', exact: true }).click();
  await opened.page.getByRole('button', { name: 'New finish' }).waitFor();
  return opened.page;
};
/** The editor on a new finish. */
const fresh = async (screen = desktop): Promise<Page> => begun(await rack(screen));
const begun = async (page: Page): Promise<Page> => {
  await page.getByRole('button', { name: 'New finish' }).click();
  await field(page, 'Name').waitFor();
  return page;
};
/** Tries the finish on a part of the cars. */
const showOn = (page: Page, part: string) =>
  editor(page).getByRole('combobox', { name: 'Show on the car' }).selectOption(part);
/** The editor on the finish found by its name. */
const editing = async (name: string): Promise<Page> => {
  const page = await rack();
  await page.getByRole('searchbox').first().fill(name);
  await page
    .getByRole('option', { name: new RegExp(name) })
    .first()
    .click();
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  await field(page, 'Name').waitFor();
  return page;
};
const way = (page: Page, name: string) => editor(page).getByRole('radio', { name, exact: true });

const fillOf = (page: Page, part: string): Promise<string> =>
  page
    .getByRole('article', { name: 'Alternative A', exact: true })
    .locator(`svg [data-part="${part}"]`)
    .first()
    .evaluate((path) => getComputedStyle(path).fill);
/** How a screen shows a Lab colour (D65), by another library. */
const shown = (l: number, a: number, b: number): number[] =>
  new Color('lab-d65', [l, a, b]).to('srgb').coords.map((channel) => 255 * Number(channel));
const channels = (fill: string): number[] => fill.match(/[\d.]+/g)!.map(Number);
/** One step of a screen's 256, for the rounding of a code. */
const isShownAs = async (page: Page, part: string, lab: [number, number, number]) => {
  const wanted = shown(...lab);
  await expect
    .poll(async () =>
      Math.max(
        ...channels(await fillOf(page, part)).map((value, at) => Math.abs(value - wanted[at]!)),
      ),
    )
    .toBeLessThan(1.1);
};
const overall = async (page: Page): Promise<string> =>
  (await page.locator('.overall-value').first().textContent()) ?? '';
const objections = async (page: Page): Promise<string[]> =>
  (await new AxeBuilder({ page }).include('dialog').analyze()).violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );

describe('a new finish', () => {
  it('by Lab figures: the car wears it for a look, the build and its scores do not', async () => {
    const page = await rack();
    const [body, mirrors] = [await fillOf(page, 'body'), await fillOf(page, 'mirrors')];
    const score = await overall(page);
    await begun(page);
    // Nothing is painted before one says where.
    expect(await fillOf(page, 'body')).toBe(body);
    await field(page, 'Name').fill('Quarry tile');
    await showOn(page, 'Body');
    await way(page, 'Lab figures').check();
    await field(page, /^L\*/).fill('45');
    await field(page, /^a\*/).fill('34,5');
    await field(page, /^b\*/).fill('28');
    await isShownAs(page, 'body', [45, 34.5, 28]);
    expect(await overall(page)).toBe(score);
    await showOn(page, 'Mirrors');
    await isShownAs(page, 'mirrors', [45, 34.5, 28]);
    expect(await fillOf(page, 'body')).toBe(body);
    await editor(page).getByRole('button', { name: 'Done' }).click();
    await expect.poll(() => fillOf(page, 'mirrors')).toBe(mirrors);
    // Where it was tried is where it is offered.
    expect(await page.getByLabel('Put it on').locator('option:checked').textContent()).toBe(
      'Mirrors',
    );
    await page.getByRole('searchbox').first().fill('Quarry');
    expect(await page.getByRole('option', { name: /Quarry tile/ }).count()).toBe(1);
  });

  it('figures that cannot be used stay in their field with what to write; the last stays on', async () => {
    const page = await fresh();
    await showOn(page, 'Body');
    await way(page, 'Lab figures').check();
    await field(page, /^L\*/).fill('60');
    await isShownAs(page, 'body', [60, 0, 0]);
    await field(page, /^L\*/).fill('600');
    expect(
      await editor(page)
        .getByText(/600 is too high; write a number from 0 to 100/)
        .count(),
    ).toBe(1);
    await isShownAs(page, 'body', [60, 0, 0]);
    await field(page, 'Name').focus();
    expect(await field(page, /^L\*/).inputValue()).toBe('600');
    await field(page, /^L\*/).fill('40');
    await isShownAs(page, 'body', [40, 0, 0]);
  });

  it('by a pasted spectrum: a faulty line is named, a mended table is measured', async () => {
    const page = await fresh();
    await showOn(page, 'Body');
    await way(page, 'Spectrum').check();
    const paste = field(page, /Wavelength in nm/);
    const lines = Array.from({ length: 31 }, (_, band) => `${400 + 10 * band}\t18.4187`);
    await paste.fill(lines.with(4, '440\tn/a').join('\n'));
    await editor(page)
      .getByText(/line 5: found “n\/a”/)
      .waitFor();
    // CIE 1976: L* 50 is a reflectance of (66 / 116)³, 18.4187 %, in every band.
    await paste.fill(lines.join('\n'));
    await isShownAs(page, 'body', [50, 0, 0]);
    expect(
      await editor(page)
        .getByRole('img', { name: /18 % at 500 nm/ })
        .count(),
    ).toBe(1);
    expect(await way(page, 'Measured').isChecked()).toBe(true);
  });

  it('beside a spoon, by keyboard alone: takes its colour, steps away, and says so', async () => {
    const page = await fresh();
    await showOn(page, 'Body');
    await way(page, 'Screen colour').focus();
    await page.keyboard.press('ArrowRight');
    await editor(page).getByRole('searchbox').focus();
    await page.keyboard.type('Rowan');
    const spoons = editor(page).getByRole('listbox', { name: /Beside which spoon/ });
    await expect.poll(() => spoons.getByRole('option').count()).toBe(1);
    await spoons.focus();
    await page.keyboard.press('Enter');
    const told = editor(page).locator('.pair [role=status]');
    await expect.poll(() => told.textContent()).toBe('The same colour by daylight');
    const before = await fillOf(page, 'body');
    await editor(page).getByRole('button', { name: 'Darker' }).focus();
    for (let press = 0; press < 3; press++) await page.keyboard.press('Enter');
    await expect.poll(() => told.textContent()).toMatch(/^ΔE (2\.9|3\.0|3\.1) apart.*darker/);
    expect(await fillOf(page, 'body')).not.toBe(before);
    expect(await field(page, 'Where it comes from').inputValue()).toBe('Beside Rowan red');
    expect(await way(page, 'Beside a swatch').isChecked()).toBe(true);
    await page.keyboard.press('Escape');
    expect(await editor(page).count()).toBe(0);
  });
});

describe('a finish that is missed', () => {
  it('goes again where the editor is closed on it untouched, and nothing is left to undo', async () => {
    const page = await fresh();
    await page.keyboard.press('Escape');
    await editor(page).waitFor({ state: 'detached' });
    await page.getByRole('searchbox').first().fill('New finish');
    await page.getByText('No finish here has all of that.').waitFor();
    const undo = page.locator('.head').getByRole('button', { name: 'Undo' });
    expect(await undo.isDisabled()).toBe(true);
  });

  it('is made from what was typed on the rack, and again in a cell, which wears it at once', async () => {
    const page = await rack();
    await page.getByRole('searchbox').first().fill('smoked quince #b8a05a');
    await page.getByText('No finish here has all of that.').waitFor();
    await page.getByRole('button', { name: 'Make a finish called “smoked quince”…' }).click();
    await expect.poll(() => field(page, 'Name').inputValue()).toBe('smoked quince');
    expect(await field(page, /^Screen code/).inputValue()).toBe('#b8a05a');
    await editor(page).getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: 'Bench', exact: true }).click();
    await page.getByRole('button', { name: /^Mirrors on A:/ }).click();
    const spoons = editor(page);
    await spoons.getByText(/more finishes? in this build/).click();
    await spoons.getByRole('searchbox').fill('burnt fig');
    await spoons.getByRole('button', { name: 'Make a finish called “burnt fig”…' }).click();
    const form = page.getByRole('dialog', { name: 'burnt fig' });
    await form.getByText(/^Worn on Mirrors \(A\)/).waitFor();
    await form.getByRole('textbox', { name: /^Screen code/ }).fill('#5a2036');
    await expect.poll(async () => channels(await fillOf(page, 'mirrors'))).toEqual([90, 32, 54]);
    expect(await objections(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await form.waitFor({ state: 'detached' });
    await spoons.getByRole('option', { name: /^burnt fig/ }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^Mirrors on A: burnt fig/ }).waitFor();
  });
});

describe('a finish that the build wears', () => {
  it('gloss by a word changes car, sheet and table at once, and is taken back whole', async () => {
    const page = await editing('Dragonfly');
    const [body, score] = [await fillOf(page, 'body'), await overall(page)];
    expect(
      await editor(page)
        .getByText(/Worn on Body/)
        .count(),
    ).toBe(1);
    await way(page, 'dead matt').check();
    expect(await field(page, 'Reading at 60°').inputValue()).toBe('2');
    await field(page, /^L\*/).fill('70');
    await expect.poll(() => overall(page)).not.toBe(score);
    expect(await fillOf(page, 'body')).not.toBe(body);
    // The build has the jar on hand although the shop's rack does not: that stays so.
    expect(await page.getByText(/bottles may be bought/).count()).toBe(0);
    await field(page, /^a\*/).fill('red');
    await editor(page).getByRole('button', { name: 'Take back' }).click();
    await expect.poll(() => fillOf(page, 'body')).toBe(body);
    expect(await overall(page)).toBe(score);
    expect(await field(page, /^a\*/).inputValue()).not.toBe('red');
    expect(await way(page, 'high gloss').isChecked()).toBe(true);
  });

  it('another kind of finish drops what it cannot have, says what, and brings it back', async () => {
    const page = await editing('Bronze leaf');
    await way(page, 'Flock').check();
    const dropped = editor(page).getByText(/Dropped, since this kind has none/);
    expect(await dropped.textContent()).toMatch(/face.*flop.*undercoat \(Black primer\).*2 coats/);
    expect(await editor(page).getByText('At the bench').count()).toBe(0);
    await editor(page).getByRole('button', { name: 'Bring it back' }).click();
    expect(await way(page, 'Metallic').isChecked()).toBe(true);
    expect(await field(page, /^Face/).inputValue()).toBe('lab 68 16 36');
    expect(await dropped.count()).toBe(0);
  });

  it('says who else uses a bottle, and what to mind of a two-part clear', async () => {
    const page = await editing('Night ferry blue');
    expect(
      await editor(page)
        .getByText(/Also used by \d+ others/)
        .count(),
    ).toBeGreaterThan(0);
    expect(
      await editor(page)
        .getByText(/lasting asthma/)
        .count(),
    ).toBe(1);
    expect(
      await editor(page)
        .getByText(/data sheet/)
        .count(),
    ).toBeGreaterThan(0);
    expect(await editor(page).textContent()).not.toMatch(/\b(is|are|be) safe\b/);
  });
});

describe('for everyone', () => {
  for (const [name, screen] of Object.entries({ desktop, phone })) {
    it(`${name}: nothing for axe to object to, with everything unfolded`, async () => {
      const page = await fresh(screen);
      await way(page, 'Metallic').check();
      await way(page, 'Flop index').check();
      await editor(page).getByRole('button', { name: 'Beside reference spoons' }).click();
      await editor(page)
        .getByRole('button', { name: /Add an undercoat/ })
        .click();
      await editor(page).getByRole('checkbox', { name: 'A clear coat lies over it' }).check();
      await field(page, 'Reading at 60°').fill('-');
      await way(page, name === 'phone' ? 'Spectrum' : 'Beside a spoon').check();
      if (name === 'desktop') await editor(page).getByRole('listbox').waitFor();
      expect(await objections(page)).toEqual([]);
    });
  }

  it('on a phone the car stands above the sheet, which never scrolls sideways', async () => {
    const page = await fresh(phone);
    const car = (await page.locator('.picture-frame').first().boundingBox())!;
    const sheet = (await editor(page).boundingBox())!;
    expect(car.y).toBeGreaterThanOrEqual(0);
    expect(car.y + car.height).toBeLessThanOrEqual(sheet.y + 1);
    const overflow = await editor(page).evaluate(
      ({ scrollWidth, clientWidth }) => scrollWidth - clientWidth,
    );
    expect(overflow).toBe(0);
  });
});
