/**
 * Does the page serve everyone, everywhere? The command search by keyboard, paper, names of any
 * length and direction, large text, narrow screens, small cars while one works beneath them.
 *
 * Thresholds are those of WCAG 2.2: reflow at 320 CSS pixels (1.4.10), text at 200 % (1.4.4), focus
 * not obscured (2.4.11), targets of 24 CSS pixels (2.5.8). Names are invented.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Build } from '../../src/build/build.ts';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { dropFile } from './drop.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const demo = (): Build =>
  JSON.parse(readFileSync(new URL('../../src/build/demo.json', import.meta.url), 'utf8')) as Build;
const narrow: BrowserContextOptions = { viewport: { width: 320, height: 640 }, hasTouch: true };
let browser: Browser;
let host: Host;
let opened: OpenPage;

beforeAll(async () => {
  if (!existsSync(`${built}index.html`)) throw new Error('dist/app is missing: npm run build');
  [browser, host] = await Promise.all([startBrowser(), serve(built, '/')]);
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

const start = async (screen: BrowserContextOptions = desktop): Promise<Page> => {
  opened = await visit(browser, host.url, screen);
  return opened.page;
};
/** What axe objects to within an element; the whole bench is another suite's. */
const objections = async (page: Page, within: string): Promise<string[]> =>
  (await new AxeBuilder({ page }).include(within).analyze()).violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
const enlarge = (page: Page): Promise<void> =>
  page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
const field = (page: Page) => page.getByRole('combobox', { name: 'What to do or go to' });
const find = async (page: Page, words: string): Promise<void> => {
  await page.keyboard.press('Control+k');
  await field(page).waitFor();
  await page.keyboard.type(words);
};
/** The demo with other names for the build, an alternative, a part and a finish. */
function renamed(names: Readonly<Record<'build' | 'alternative' | 'part' | 'finish', string>>) {
  const build = demo();
  return JSON.stringify({
    ...build,
    name: names.build,
    parts: build.parts.map((part) =>
      part.id === 'mirrors' ? { ...part, name: names.part } : part,
    ),
    alternatives: build.alternatives.map((one, at) =>
      at === 0 ? { ...one, name: names.alternative } : one,
    ),
    finishes: build.finishes.map((one) =>
      one.id === 'marigold' ? { ...one, name: names.finish } : one,
    ),
  });
}

describe('the command search', () => {
  it('finds a part by keyboard, opens its spoons and gives the focus back to its cell', async () => {
    const page = await start();
    await find(page, 'mirr b');
    const chosen = page.getByRole('option', { selected: true });
    expect(await chosen.textContent()).toMatch(/^Mirrors on B/);
    // The field says which line is meant, since it keeps the focus.
    expect(await field(page).getAttribute('aria-activedescendant')).toBe(
      await chosen.getAttribute('id'),
    );
    await page.keyboard.press('Enter');
    const spoons = page.getByRole('dialog', { name: 'Mirrors on B' });
    await spoons.waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Escape');
    await spoons.waitFor({ state: 'hidden' });
    const cell = page.getByRole('button', { name: /^Mirrors on B:/ });
    await expect
      .poll(() => cell.evaluate((button) => button === document.activeElement))
      .toBe(true);
    expect(await cell.textContent()).not.toContain('Marigold');
  });

  it('puts a finish on a part in two steps, and undo takes it back', async () => {
    const page = await start();
    await find(page, 'bronze leaf put');
    await page.keyboard.press('Enter');
    await page.getByText('Put Bronze leaf on…').waitFor();
    await page.keyboard.type('wheels c');
    await page.keyboard.press('Enter');
    await page.getByRole('status').filter({ hasText: 'Bronze leaf is on Wheels of C.' }).waitFor();
    const cell = page.getByRole('button', { name: /^Wheels on C:/ });
    await expect.poll(() => cell.textContent()).toContain('Bronze leaf');
    await page.keyboard.press('Control+z');
    await expect.poll(() => cell.textContent()).not.toContain('Bronze leaf');
  });

  it('changes light and view, remembers what was used, and says what it does not know', async () => {
    const page = await start();
    await find(page, 'warm lamp');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByRole('radio', { name: 'Warm lamp' }).isChecked()).toBe(true);
    await find(page, '');
    expect(await page.getByRole('option').first().textContent()).toContain('warm lamp');
    await page.keyboard.type('zyzzyva');
    await page.getByText(/Nothing here is called “zyzzyva”. There are parts/).waitFor();
    expect(await page.getByRole('option').count()).toBe(0);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await field(page).waitFor({ state: 'detached' });
  });

  it('works by finger, shows every key, and leaves axe nothing to object to', async () => {
    const page = await start(phone);
    await page.keyboard.press('Control+k');
    await field(page).waitFor();
    expect(await objections(page, 'dialog')).toEqual([]);
    await page.getByRole('button', { name: 'Keys', exact: true }).tap();
    await page.getByText('Find anything by its name').waitFor();
    expect(await objections(page, 'dialog')).toEqual([]);
    await page.getByRole('button', { name: 'Search', exact: true }).tap();
    await field(page).fill('rear view');
    await page.getByRole('option').first().tap();
    await expect.poll(() => page.getByRole('radio', { name: 'Rear' }).isChecked()).toBe(true);
  });
});

describe('paper', () => {
  it('holds every part, every finish by its name, every rule and every sentence', async () => {
    const page = await start();
    await expect.poll(() => page.getByText(/stays ahead of|too close to call/i).count()).toBe(3);
    // Laid out once the page has come to rest.
    await expect
      .poll(async () => {
        await page.emulateMedia({ media: 'screen' });
        await page.emulateMedia({ media: 'print' });
        return page.locator('.paper').count();
      })
      .toBe(1);
    const paper = page.locator('.paper');
    const text = ((await paper.textContent()) ?? '').replace(/\s+/g, ' ');
    const { parts, alternatives, name } = demo();
    for (const words of [name, '1:24', 'daylight', '0.4 m', String(new Date().getFullYear())]) {
      expect(text).toContain(words);
    }
    for (const one of [...parts, ...alternatives]) expect(text).toContain(one.name);
    // As many rows as the build has parts, a finish for each alternative.
    const table = paper.getByRole('table').first();
    expect(await table.locator('tbody tr:not(.paper-group)').count()).toBe(parts.length);
    const told = await table
      .locator('td:has(.paper-mark)')
      .evaluateAll((cells) => cells.map((one) => (one as HTMLTableCellElement).colSpan));
    // A cell may speak for several alternatives at once.
    expect(told.reduce((sum, span) => sum + span, 0)).toBe(parts.length * 3);
    expect(await paper.locator('.paper-rules li').count()).toBe(demo().rules.length);
    expect(await paper.getByRole('button').count()).toBe(0);
    expect(await page.locator('.page').isVisible()).toBe(false);
    // Every sentence of the screen, those behind “more” included.
    await page.emulateMedia({ media: 'screen' });
    await paper.waitFor({ state: 'detached' });
    for (const fold of await page.locator('.sheet details').all()) {
      await fold.evaluate((element) => element.setAttribute('open', ''));
    }
    const sentences = await page.locator('.sheet .finding').allTextContents();
    expect(sentences.length).toBeGreaterThan(20);
    for (const sentence of sentences) expect(text).toContain(sentence.replace(/\s+/g, ' '));
  });

  it('prints colours as they are, on A4 and Letter, without a page that is nearly empty', async () => {
    const page = await start();
    await expect
      .poll(async () => {
        await page.emulateMedia({ media: 'screen' });
        await page.emulateMedia({ media: 'print' });
        return page.locator('.paper').count();
      })
      .toBe(1);
    const square = page.locator('.paper-square').first();
    const style = await square.evaluate((element) => {
      const { printColorAdjust, backgroundColor } = getComputedStyle(element);
      return { printColorAdjust, backgroundColor };
    });
    expect(style.printColorAdjust).toBe('exact');
    expect(style.backgroundColor).not.toBe('rgba(0, 0, 0, 0)');
    for (const paper of [{ format: 'A4' }, { format: 'Letter', landscape: true }]) {
      const pdf = (await page.pdf(paper)).toString('latin1');
      const pages = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
      // Three alternatives with all their sentences take three to six pages by reckoning.
      expect(pages, paper.format).toBeGreaterThanOrEqual(3);
      expect(pages, paper.format).toBeLessThanOrEqual(6);
    }
  });
});

describe('names', () => {
  const kinds = {
    'from right to left': {
      build: 'سيارة اليعسوب (الثانية) في الحديقة',
      alternative: 'חוט של ציפורני חתול',
      part: 'مرآة الباب (يمين)',
      finish: 'صبغة القطيفة',
    },
    'of 120 letters without a space': {
      build: 'Probelackierungsanordnung'.repeat(5).slice(0, 120),
      alternative: 'Zierstreifenabklebeversuch'.repeat(5).slice(0, 120),
      part: 'Aussenspiegelgehaeuse'.repeat(6).slice(0, 120),
      finish: 'Ringelblumengelbglaenzend'.repeat(5).slice(0, 120),
    },
  };
  for (const [kind, names] of Object.entries(kinds)) {
    for (const [width, screen] of [
      [1440, desktop],
      [390, phone],
      [320, narrow],
    ] as const) {
      it(`${kind} widen nothing at ${width} pixels, at 200 % text too`, async () => {
        const page = await start(screen);
        await dropFile(page, 'named.json', renamed(names));
        await page.getByRole('heading', { name: names.build }).waitFor();
        expect(await overflow(page)).toBeLessThanOrEqual(0);
        // Nothing of a car's card reaches over its neighbour.
        const cards = await page.locator('.car').evaluateAll((all) =>
          all.map((card) => {
            const right = card.getBoundingClientRect().right;
            const inside = card.querySelectorAll('h2, .overall, .finding, .car-verdict button');
            return Math.max(...[...inside].map((one) => one.getBoundingClientRect().right - right));
          }),
        );
        for (const beyond of cards) expect(beyond).toBeLessThanOrEqual(0.5);
        await enlarge(page);
        expect(await overflow(page)).toBeLessThanOrEqual(0);
      });
    }
  }

  it('keep their own direction beside words in another', async () => {
    const page = await start();
    await dropFile(page, 'named.json', renamed(kinds['from right to left']));
    const name = page.getByRole('heading', { level: 1 }).locator('bdi');
    await expect.poll(() => name.textContent()).toBe(kinds['from right to left'].build);
    expect(await name.evaluate((element) => getComputedStyle(element).direction)).toBe('rtl');
    expect(await page.evaluate(() => getComputedStyle(document.body).direction)).toBe('ltr');
  });
});

describe('the stage while one works beneath it', () => {
  const top = (page: Page): Promise<number> =>
    page.locator('#parts-title').evaluate((heading) => heading.getBoundingClientRect().top);
  const stage = (page: Page) =>
    page.locator('.stage').evaluate((element) => ({
      size: (element as HTMLElement).dataset.size,
      bottom: element.getBoundingClientRect().bottom,
    }));

  it('shrinks to a strip and grows again, and nothing beneath it moves by more than the scrolling', async () => {
    const page = await start();
    // Sentences that come later would move things too.
    await expect.poll(() => page.getByText(/stays ahead of|too close to call/i).count()).toBe(3);
    await page.waitForLoadState('networkidle');
    // Nor do remedies, once one has come and nothing more follows.
    await page.locator('.remedies').first().waitFor();
    let before = Number.NaN;
    for (let now = await top(page); now !== before; now = await top(page)) {
      before = now;
      await page.waitForTimeout(1500);
    }
    const sizes = new Set<string | undefined>();
    for (let y = 0; y <= 600; y += 20) {
      await page.evaluate((to) => scrollTo(0, to), y);
      await expect.poll(() => page.evaluate(() => scrollY)).toBe(y);
      // A frame for the page to answer.
      await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(drawn)));
      expect(Math.abs((await top(page)) - (before - y))).toBeLessThan(1);
      sizes.add((await stage(page)).size);
    }
    expect([...sizes]).toEqual(['whole', 'compact']);
    expect((await stage(page)).bottom).toBeLessThan(225);
    await page.evaluate(() => scrollTo(0, 0));
    await expect.poll(async () => (await stage(page)).size).toBe('whole');
  });

  it('is whole while a key’s focus is in it, and never hides what has the focus', async () => {
    const page = await start();
    await page.evaluate(() => scrollTo(0, 600));
    await expect.poll(async () => (await stage(page)).size).toBe('compact');
    await page.getByRole('button', { name: /^Stripes on A:/ }).focus();
    await page.keyboard.press('Tab');
    const obscured = await page.evaluate(() => {
      const { top } = document.activeElement!.getBoundingClientRect();
      return top < document.querySelector('.stage')!.getBoundingClientRect().bottom;
    });
    expect(obscured).toBe(false);
    await page.getByRole('radio', { name: 'Daylight', exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(async () => (await stage(page)).size).toBe('grown');
    expect(await page.getByRole('radio', { name: 'Warm lamp' }).isChecked()).toBe(true);
  });

  it('small or grown, leaves axe nothing to object to', async () => {
    const page = await start();
    await page.evaluate(() => scrollTo(0, 600));
    await expect.poll(async () => (await stage(page)).size).toBe('compact');
    expect(await objections(page, '.stage')).toEqual([]);
    await page.getByText('Show the switches').click();
    await expect.poll(async () => (await stage(page)).size).toBe('grown');
    expect(await objections(page, '.stage')).toEqual([]);
  });
});

describe('by keyboard alone', () => {
  it('every control of the bench is reached, in sight, with a ring round it, and none holds one back', async () => {
    const page = await start();
    const faults: string[] = [];
    const reached = new Set<string>();
    for (let at = 0; at < 160; at++) {
      await page.keyboard.press('Tab');
      const met = await page.evaluate(() => {
        const element = document.activeElement as HTMLElement | null;
        if (element === null || element === document.body) return undefined;
        const shown = element.closest('label') ?? element;
        const { left, top, width, height } = shown.getBoundingClientRect();
        const over = document.elementFromPoint(left + Math.min(width / 2, 20), top + height / 2);
        const styles = [element, shown.querySelector('span') ?? shown].map((one) =>
          getComputedStyle(one),
        );
        return {
          name: `${element.className} ${element.getAttribute('aria-label') ?? shown.textContent}`,
          isCovered: over === null || !(shown.contains(over) || over.contains(shown)),
          hasRing: styles.some(({ outlineStyle }) => outlineStyle !== 'none'),
        };
      });
      if (met === undefined) break;
      reached.add(met.name);
      if (met.isCovered) faults.push(`covered: ${met.name}`);
      if (!met.hasRing) faults.push(`no ring: ${met.name}`);
    }
    expect(faults).toEqual([]);
    for (const words of ['Undo', 'Daylight', 'Stripes on A:', 'Add a rule', 'Full screen']) {
      const found = [...reached].some((name) => name.includes(words));
      if (words !== 'Undo') expect(found, words).toBe(true);
    }
  });

  it('targets are at least 24 pixels either way, on a phone too', async () => {
    for (const screen of [desktop, phone]) {
      const page = await start(screen);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('button, a[href], select, summary')]
          .filter((one) => one.checkVisibility({ opacityProperty: true, visibilityProperty: true }))
          .map((one) => ({ name: one.textContent, ...one.getBoundingClientRect().toJSON() }))
          .filter(({ width, height }) => width > 1 && (width < 23.5 || height < 23.5))
          .map(({ name, width, height }) => `${name}: ${width} × ${height}`),
      );
      expect(small).toEqual([]);
      if (screen === desktop) await page.context().close();
    }
  });
});
