/**
 * Two tabs of one browser: nothing that either does is lost, in whatever order, with the browser's
 * locks and without. Needs `npm run build`.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type OpenPage, startBrowser, visit } from './browser.ts';
import { keptBuilds, keptNames } from './kept.ts';
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
  await opened.page.context().close();
});

/** Another tab, on what was open last. */
const another = async (beside: Page): Promise<Page> => {
  const page = await beside.context().newPage();
  page.on('pageerror', (error) => opened.errors.push(error.message));
  await page.goto(host.url, { waitUntil: 'commit' });
  await page.locator('.car svg').first().waitFor();
  return page;
};
const paint = async (page: Page, part: string, letter: string, finish: RegExp): Promise<void> => {
  await page.bringToFront();
  await page.getByRole('button', { name: new RegExp(`^${part} on ${letter}:`) }).click();
  await page.getByRole('dialog').getByRole('radio', { name: finish }).check({ force: true });
  await page.keyboard.press('Escape');
};
const isKept = (page: Page) => page.locator('[data-kept="kept"]').waitFor();
const name = (page: Page): Promise<string | null> =>
  page.getByRole('heading', { level: 1 }).textContent();
const isOn = (page: Page, part: string, letter: string, finish: string) =>
  page.getByRole('button', { name: new RegExp(`^${part} on ${letter}: ${finish}`) }).waitFor();
const alsoOpen = (page: Page) => page.getByText(/Also open in another tab/);
const original = 'Dragonfly roadster';
const copy = 'Dragonfly roadster (second tab)';

for (const [how, hasLocks] of [
  ['with the browser’s locks', true],
  ['by asking each other, where there are no locks', false],
] as const) {
  /** Two tabs with the same build, the first of which opened it first. */
  const two = async (): Promise<readonly [Page, Page]> => {
    opened = await visit(browser, host.url);
    const { page: first } = opened;
    if (!hasLocks) {
      await first.context().addInitScript(() => {
        Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });
      });
      await first.reload({ waitUntil: 'commit' });
      await first.locator('.car svg').first().waitFor();
    }
    await paint(first, 'Stripes', 'A', /Moonstone/);
    await isKept(first);
    const second = await another(first);
    await alsoOpen(second).waitFor();
    expect(await name(second)).toBe(original);
    return [first, second];
  };

  describe(`a build in two tabs, ${how}`, () => {
    it('changed in the second goes on there as a copy with a name of its own', async () => {
      const [first, second] = await two();
      await paint(second, 'Stripes', 'B', /Oyster/);
      await second.getByRole('heading', { name: copy }).waitFor();
      await expect.poll(() => keptNames(first)).toEqual([original, copy]);
      await alsoOpen(second).waitFor({ state: 'detached' });
      await paint(first, 'Stripes', 'C', /Moonstone/);
      await expect
        .poll(async () =>
          (await keptBuilds(first))
            .sort((one, other) => one.document.name.length - other.document.name.length)
            .map(({ document }) =>
              document.alternatives.map(({ choices }) => choices.stripes!.split('/')[1]),
            ),
        )
        .toEqual([
          ['moonstone', 'slate-trim', 'moonstone'],
          ['moonstone', 'oyster', 'oyster'],
        ]);
      // Undo in the second tab takes back its change, not its copy.
      await second.bringToFront();
      await second.getByRole('button', { name: 'Undo' }).click();
      await isOn(second, 'Stripes', 'B', 'Slate');
      expect(await name(second)).toBe(copy);
      expect(await keptNames(first)).toEqual([original, copy]);
    });

    it('changed in the first shows in the second', async () => {
      const [first, second] = await two();
      await paint(first, 'Stripes', 'C', /Moonstone/);
      await isOn(second, 'Stripes', 'C', 'Moonstone');
      expect(await keptNames(first)).toEqual([original]);
    });

    it('is taken over by the second when the first is closed, last change included', async () => {
      const [first, second] = await two();
      await paint(first, 'Stripes', 'C', /Moonstone/);
      await isKept(first);
      await first.close({ runBeforeUnload: true });
      await alsoOpen(second).waitFor({ state: 'detached' });
      await isOn(second, 'Stripes', 'C', 'Moonstone');
      await paint(second, 'Stripes', 'B', /Oyster/);
      await isKept(second);
      await expect.poll(() => keptNames(second)).toEqual([original]);
      expect(
        (await keptBuilds(second))[0]!.document.alternatives.map(({ choices }) => choices.stripes),
      ).toEqual([
        expect.stringMatching(/moonstone/),
        expect.stringMatching(/oyster/),
        expect.stringMatching(/moonstone/),
      ]);
    });

    it('left by the first for another build is the second’s', async () => {
      const [first, second] = await two();
      await first.bringToFront();
      await first.getByRole('button', { name: 'Builds…' }).click();
      await first.getByRole('button', { name: /^Open the demo again/ }).click();
      await alsoOpen(second).waitFor({ state: 'detached' });
      await paint(second, 'Stripes', 'B', /Oyster/);
      await isKept(second);
      expect(await name(second)).toBe(original);
      // Undo brings the first back to the build, where it is second now and sees what was done.
      await first.bringToFront();
      await first.getByRole('button', { name: 'Undo' }).click();
      await alsoOpen(first).waitFor();
      await isOn(first, 'Stripes', 'B', 'Oyster');
      expect(await keptNames(first)).toEqual([original]);
    });

    const deleteIn = async (page: Page): Promise<void> => {
      await page.bringToFront();
      await page.getByRole('button', { name: 'Builds…' }).click();
      // The open one of its own tab: it goes, though it is open elsewhere too.
      await page.getByRole('button', { name: `Delete ${original}` }).click();
      await expect.poll(() => keptNames(page)).toEqual([]);
    };
    const deletedElsewhere = (page: Page) => page.getByText(/was deleted in another tab/);

    it('deleted in one is kept again once the other changes it', async () => {
      const [first, second] = await two();
      await deleteIn(second);
      await deletedElsewhere(first).waitFor();
      await paint(first, 'Stripes', 'C', /Moonstone/);
      await isKept(first);
      expect(await keptNames(first)).toEqual([original]);
      expect(await deletedElsewhere(first).count()).toBe(0);
    });

    it('deleted in one and had back there by undo is itself in both', async () => {
      const both = await two();
      // The one that was first here, the one that came second there; which of them makes no odds.
      const [here, there] = hasLocks ? both : [both[1], both[0]];
      await deleteIn(here);
      await deletedElsewhere(there).waitFor();
      await here.keyboard.press('Escape');
      await here.getByRole('button', { name: 'Undo' }).click();
      await isKept(here);
      await deletedElsewhere(there).waitFor({ state: 'detached' });
      expect([await name(here), await keptNames(here)]).toEqual([original, [original]]);
      // Whoever came to hold it goes on with it, and the other follows.
      await paint(there, 'Stripes', 'C', /Moonstone/);
      await isOn(here, 'Stripes', 'C', 'Moonstone');
      expect(await keptNames(here)).toEqual([original]);
    });

    it('deleted in one and put back is as it was for the other', async () => {
      const [first, second] = await two();
      await deleteIn(second);
      await deletedElsewhere(first).waitFor();
      await second.getByRole('dialog').getByRole('button', { name: 'Undo' }).click();
      await deletedElsewhere(first).waitFor({ state: 'detached' });
      await paint(first, 'Stripes', 'C', /Moonstone/);
      await isKept(first);
      expect(await keptNames(first)).toEqual([original]);
    });
  });
}

describe('racks in two tabs', () => {
  const rackNames = (page: Page): Promise<string[]> =>
    page.getByRole('combobox', { name: 'Which rack' }).getByRole('option').allTextContents();
  const showRack = async (page: Page): Promise<void> => {
    await page.bringToFront();
    await page.getByRole('button', { name: 'Rack', exact: true }).click();
    await page.getByRole('combobox', { name: 'Which rack' }).waitFor();
  };
  const addRack = async (page: Page, called: string): Promise<void> => {
    await page.bringToFront();
    await page.getByRole('button', { name: 'New rack' }).click();
    const field = page.locator('.rack-head').getByRole('textbox');
    await field.fill(called);
    await field.press('Enter');
  };

  it('come together: what either adds shows in both, and is there on the next visit', async () => {
    opened = await visit(browser, host.url);
    const { page: first } = opened;
    const second = await another(first);
    await showRack(first);
    await showRack(second);
    const starters = await rackNames(first);
    await addRack(first, 'Of the first');
    await expect
      .poll(() => rackNames(second))
      .toEqual(expect.arrayContaining([expect.stringMatching(/^Of the first/)]));
    await addRack(second, 'Of the second');
    for (const page of [first, second]) {
      await expect
        .poll(() => rackNames(page))
        .toEqual([
          ...starters,
          expect.stringMatching(/^Of the first/),
          expect.stringMatching(/^Of the second/),
        ]);
    }
    // Undo in the first takes back its own change, and leaves what the second has done.
    await first.bringToFront();
    const undo = first.getByRole('button', { name: 'Undo' });
    while (await undo.isEnabled()) await undo.click();
    for (const page of [first, second]) {
      await expect
        .poll(() => rackNames(page))
        .toEqual([...starters, expect.stringMatching(/^Of the second/)]);
    }
    await first.reload({ waitUntil: 'commit' });
    await showRack(first);
    await expect
      .poll(() => rackNames(first))
      .toEqual([...starters, expect.stringMatching(/^Of the second/)]);
  });
});
