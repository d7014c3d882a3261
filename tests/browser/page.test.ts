/**
 * What a builder does on the first page, in a real browser, against the built page served under a
 * sub-path as any web space would. Needs `npm run build`.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
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
  // Whatever a journey does, it meets no error, asks nobody else and misses no file.
  expect(opened.errors).toEqual([]);
  expect(opened.strangers).toEqual([]);
  expect(host.missing).toEqual([]);
  await opened.page.context().close();
});

const start = async (screen = desktop): Promise<Page> => {
  opened = await visit(browser, host.url, screen);
  return opened.page;
};
const carOf = (page: Page, letter: string) =>
  page.getByRole('article', { name: `Alternative ${letter}`, exact: true });
const overallOf = async (page: Page, letter: string): Promise<number> =>
  Number((await carOf(page, letter).locator('.overall-value').textContent())!.match(/\d+/)![0]);
const paintOf = (page: Page, letter: string, part: string): Promise<string> =>
  carOf(page, letter)
    .locator(`svg [data-part="${part}"]`)
    .first()
    .evaluate((path) => getComputedStyle(path).fill);
const cell = (page: Page, part: string, letter: string) =>
  page.getByRole('button', { name: new RegExp(`^${part} on ${letter}:`) });

/** A point of the window where the part is what a mouse would meet on an alternative's picture. */
const pointOn = (page: Page, letter: string, part: string): Promise<{ x: number; y: number }> =>
  carOf(page, letter)
    .locator(`svg [data-part="${part}"]`)
    .first()
    .evaluate((path) => {
      const { left, top, width, height } = path.getBoundingClientRect();
      for (let row = 1; row < 40; row++) {
        for (let column = 1; column < 40; column++) {
          const [x, y] = [left + (width * column) / 40, top + (height * row) / 40];
          if (document.elementFromPoint(x, y) === path) return { x, y };
        }
      }
      throw new Error('nothing of the part can be pointed at');
    });

/** A dropped file, as a file manager would hand it over. */
const drop = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(
    ([fileName, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content!], fileName!, { type: 'application/json' }));
      for (const type of ['dragover', 'drop']) {
        document.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true }));
      }
    },
    [name, text],
  );
const savedText = async (page: Page): Promise<string> => {
  const downloading = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const stream = await (await downloading).createReadStream();
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
};

describe('the first minute', () => {
  it('opens on the demo with its open decision laid out, three cars side by side', async () => {
    const page = await start();
    expect(await page.getByRole('article', { name: /^Alternative/ }).count()).toBe(3);
    expect(await page.getByRole('article', { name: /^Score sheet/ }).count()).toBe(3);
    for (const letter of ['A', 'B', 'C']) {
      expect(await overallOf(page, letter)).toBeGreaterThan(0);
      expect(await carOf(page, letter).locator('svg [data-part]').count()).toBeGreaterThan(24);
    }
    await expect.poll(() => page.getByText(/stays ahead of|too close to call/i).count()).toBe(3);
    expect(await page.getByRole('row').count()).toBeGreaterThan(3);
  });

  it('publishes the schemas of its files beside the page', async () => {
    const page = await start();
    for (const name of ['build', 'rack', 'sight']) {
      const schema = await page.evaluate(
        async (url) => (await fetch(url)).json() as Promise<Record<string, unknown>>,
        `schema/${name}.json`,
      );
      expect(schema.$schema).toMatch(/json-schema/);
    }
  });
});

describe('changing a finish', () => {
  it('changes picture, score and sentences at once; undo and redo take it back and forth', async () => {
    const page = await start();
    const sheet = page.locator('body');
    const before = {
      paint: await paintOf(page, 'A', 'mirrors'),
      overall: await overallOf(page, 'A'),
    };
    expect(await sheet.textContent()).toMatch(/Marigold shows in the cabin only/);
    await cell(page, 'Mirrors', 'A').click();
    await page
      .getByRole('dialog')
      .getByRole('radio', { name: /Marigold/ })
      .check({ force: true });
    await page.keyboard.press('Escape');
    const after = {
      paint: await paintOf(page, 'A', 'mirrors'),
      overall: await overallOf(page, 'A'),
    };
    expect(after.paint).not.toBe(before.paint);
    expect(after.overall).toBeGreaterThan(before.overall);
    // On the card in the same frame; sheets out of sight follow in the next.
    expect(await page.getByRole('article', { name: 'Alternative A' }).textContent()).not.toMatch(
      /Marigold shows in the cabin only/,
    );
    await expect.poll(() => sheet.textContent()).not.toMatch(/Marigold shows in the cabin only/);

    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await overallOf(page, 'A')).toBe(before.overall);
    expect(await paintOf(page, 'A', 'mirrors')).toBe(before.paint);
    await page.keyboard.press('Control+Shift+Z');
    expect(await overallOf(page, 'A')).toBe(after.overall);
    await page.keyboard.press('Control+Z');
    expect(await overallOf(page, 'A')).toBe(before.overall);
  });

  it('can be done by keyboard alone', async () => {
    const page = await start();
    const before = await overallOf(page, 'A');
    await cell(page, 'Mirrors', 'A').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Escape');
    expect(await overallOf(page, 'A')).not.toBe(before);
    // The focus comes back to the cell, whose row stays though it now tells nothing apart.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toMatch(/^Mirrors on A/);
  });

  it('is still there on the next visit', async () => {
    const page = await start();
    await cell(page, 'Badges', 'B').click();
    await page
      .getByRole('dialog')
      .getByRole('radio', { name: /Oyster/ })
      .check({ force: true });
    await page.keyboard.press('Escape');
    const changed = await overallOf(page, 'B');
    await page.locator('[data-kept="kept"]').waitFor();
    await page.reload({ waitUntil: 'commit' });
    await page.locator('.car svg').first().waitFor();
    expect(await overallOf(page, 'B')).toBe(changed);
    // The demo as it was made lies at the end of the builds.
    await page.getByRole('button', { name: 'Builds…' }).click();
    await page.getByRole('button', { name: /demo again/ }).click();
    await expect.poll(() => overallOf(page, 'B')).not.toBe(changed);
  });
});

describe('work kept from an earlier visit', () => {
  it('that cannot be opened is set aside whole, and the demo opens', async () => {
    const page = await start();
    const bad = '{"format": "testspoon-build", "version": 1, "id": "half';
    await page.evaluate((text) => localStorage.setItem('testspoon.build', text), bad);
    await page.reload({ waitUntil: 'commit' });
    await page.locator('.car svg').first().waitFor();
    await page.getByText(/was set aside/).waitFor();
    const kept = await page.evaluate(() => ({ ...localStorage }) as Record<string, string>);
    expect(Object.entries(kept).find(([, text]) => text === bad)?.[0]).toBe('testspoon.unreadable');
    expect(kept['testspoon.build']).not.toBe(bad);
  });
});

describe('light and distance', () => {
  it('change picture and scores together', async () => {
    const page = await start();
    const before = { paint: await paintOf(page, 'C', 'body'), overall: await overallOf(page, 'C') };
    await page.getByRole('radio', { name: 'Warm lamp' }).check({ force: true });
    expect(await paintOf(page, 'C', 'body')).not.toBe(before.paint);
    await page.getByRole('radio', { name: /^Show/ }).check({ force: true });
    expect(await overallOf(page, 'C')).not.toBe(before.overall);
  });
});

describe('pointing', () => {
  it('at a sentence lights its parts on every car and in the table', async () => {
    const page = await start();
    const sentence = page.getByRole('button', { name: /^Marigold shows in the cabin only/ }).last();
    await sentence.hover();
    await expect
      .poll(() => page.locator('.part-table tr.is-lit th').allTextContents())
      .toEqual([expect.stringContaining('Seat piping')]);
    for (const letter of ['A', 'B', 'C']) {
      expect(await carOf(page, letter).locator('svg g.light path').count()).toBeGreaterThan(0);
    }
  });

  it('at a part of the table by keyboard lights it on every car and in the sentences', async () => {
    const page = await start();
    await page.getByRole('button', { name: /^Stripes\s*: where else/ }).focus();
    await expect.poll(() => page.locator('.finding.is-lit').count()).toBeGreaterThan(0);
    for (const letter of ['A', 'B', 'C']) {
      expect(await carOf(page, letter).locator('svg g.light path').count()).toBeGreaterThan(0);
    }
  });

  it('at a part of a picture rings it on every car; pressing it opens its spoons', async () => {
    const page = await start();
    const at = await pointOn(page, 'B', 'mirrors');
    await page.mouse.move(at.x, at.y);
    await expect
      .poll(() => page.locator('.part-table tr.is-lit th').allTextContents())
      .toEqual([expect.stringContaining('Mirrors')]);
    for (const letter of ['A', 'B', 'C']) {
      expect(await carOf(page, letter).locator('svg g.light path').count()).toBeGreaterThan(0);
    }
    await page.mouse.down();
    await page.mouse.up();
    await page.getByRole('dialog', { name: 'Mirrors on B' }).waitFor();
  });

  it('at a part asks where else its colour appears', async () => {
    const page = await start();
    await page.getByRole('button', { name: /^Seat piping\s*: where else/ }).click();
    await page.getByText(/appears nowhere else/).waitFor();
    expect(await page.getByText(/appears again on/).count()).toBeGreaterThan(0);
  });
});

describe('build files', () => {
  it('are saved whole: what is saved opens again and scores the same', async () => {
    const page = await start();
    const text = await savedText(page);
    const renamed = text.replace('"Dragonfly roadster"', '"Opened again"');
    expect(renamed).not.toBe(text);
    const overall = await overallOf(page, 'C');
    await drop(page, 'again.json', renamed);
    await page.getByRole('heading', { name: 'Opened again' }).waitFor();
    expect(await overallOf(page, 'C')).toBe(overall);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { name: 'Dragonfly roadster' }).waitFor();
  });

  it('keep what departs from a settled part, which says that painted ones mean stripping', async () => {
    const page = await start();
    await page.getByRole('button', { name: /parts settled/ }).click();
    await cell(page, 'Calipers', 'B').click();
    const dialog = page.getByRole('dialog');
    await dialog.getByText(/painted already: another finish means stripping/).waitFor();
    await dialog.getByText(/more finishes in this build/).click();
    await dialog.getByRole('searchbox').fill('marigold');
    await dialog.getByRole('option', { name: /^Marigold/ }).click();
    await page.keyboard.press('Escape');
    await page.getByText(/would have to be stripped/).waitFor();
    const text = (await savedText(page)).replace('"Dragonfly roadster"', '"With other calipers"');
    await drop(page, 'calipers.json', text);
    await page.getByRole('heading', { name: 'With other calipers' }).waitFor();
    await page.getByText(/would have to be stripped/).waitFor();
  });

  it('that are wrong leave the open work untouched and say what, where and how to mend it', async () => {
    const page = await start();
    const text = await savedText(page);
    const overall = await overallOf(page, 'C');
    for (const [name, bad, told] of [
      ['cut.json', text.slice(0, 900), /line/],
      ['newer.json', text.replace(/"version": \d+/, '"version": 99'), /99/],
      [
        'unknown.json',
        text.replaceAll('"corner-shop/marigold"', '"corner-shop/marigld"'),
        /marigld/,
      ],
      ['colour.json', text.replace('"scale": 24', '"scale": -3'), /scale/],
    ] as const) {
      await drop(page, name, bad);
      const dialog = page.getByRole('dialog', { name: /was not opened/ });
      await dialog.waitFor();
      expect(await dialog.textContent()).toMatch(told);
      expect(await dialog.textContent()).toMatch(/To mend it/i);
      await page.keyboard.press('Escape');
      await page.locator('.problems').waitFor({ state: 'detached' });
      expect(await overallOf(page, 'C')).toBe(overall);
    }
  });

  it('with 9,000 finishes stay workable: spoons can be found by name and tried', async () => {
    const page = await start();
    const build = JSON.parse(await savedText(page)) as { name: string; finishes: object[] };
    build.name = 'A large shelf';
    const shade = (k: number) => ({ ...build.finishes[0], id: `shade-${k}`, name: `Shade ${k}` });
    build.finishes.push(...Array.from({ length: 9000 }, (_, k) => shade(k)));
    await drop(page, 'large.json', JSON.stringify(build));
    await page.getByRole('heading', { name: 'A large shelf' }).waitFor();
    const before = await paintOf(page, 'A', 'stripe-left');
    await cell(page, 'Stripes', 'A').click();
    await page.getByText(/more finishes in this build/).click();
    const candidates = page.getByRole('dialog').getByRole('radio');
    const shown = await candidates.count();
    await page.getByRole('searchbox').fill('shade 8999');
    await page.getByRole('option', { name: /^Shade 8999/ }).click();
    // What is tried from elsewhere moves none of the spoons.
    expect(await candidates.count()).toBe(shown);
    expect(await page.locator('.spoon').count()).toBeLessThan(200);
    await page.keyboard.press('Escape');
    expect(await paintOf(page, 'A', 'stripe-left')).not.toBe(before);
    await expect.poll(() => page.getByText(/stays ahead of|too close to call/i).count()).toBe(3);
  });

  it('with hostile names show them as text', async () => {
    const page = await start();
    const text = await savedText(page);
    const markup = '<img src=x onerror=document.title=1><b>bold</b>';
    await drop(page, 'markup.json', text.replace('"Dragonfly roadster"', JSON.stringify(markup)));
    await page.getByRole('heading', { name: markup }).waitFor();
    expect(await page.title()).not.toBe('1');
    expect(await page.locator('h1 b, h1 img').count()).toBe(0);
  });
});

describe('every screen', () => {
  for (const [name, screen] of [
    ['desktop', desktop],
    ['phone', phone],
  ] as const) {
    it(`${name}: nothing for axe to object to, with and without the spoons open`, async () => {
      const page = await start(screen);
      const objections = async (): Promise<string[]> =>
        (await new AxeBuilder({ page }).analyze()).violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
        );
      expect(await objections()).toEqual([]);
      await cell(page, 'Mirrors', 'A').click();
      expect(await objections()).toEqual([]);
    });

    it(`${name}: the page never scrolls sideways, at 200 % text too`, async () => {
      const page = await start(screen);
      for (const size of ['100%', '200%']) {
        await page.evaluate((fontSize) => {
          document.documentElement.style.fontSize = fontSize;
        }, size);
        const { wide, shown } = await page.evaluate(() => ({
          wide: document.documentElement.scrollWidth,
          shown: document.documentElement.clientWidth,
        }));
        expect(wide, size).toBeLessThanOrEqual(shown);
      }
    });
  }
});
