/**
 * Is the work still there? Kept after every change, found again after a crash, never lost where the
 * browser refuses, listed with pictures, opened by dropping and pasting. Needs `npm run build`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { ageRack, fillShelf, keptBuilds, keptNames, keptPictures } from './kept.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const released = readFileSync(
  fileURLToPath(new URL('../build/released/version-1.json', import.meta.url)),
  'utf8',
);
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
const again = async (page: Page): Promise<void> => {
  await page.reload({ waitUntil: 'commit' });
  await page.locator('.car svg').first().waitFor();
};
/** Opens the page afresh once the browser has been made so; the store is still bare. */
const startWhere = async (made: () => void, screen = desktop): Promise<Page> => {
  const page = await start(screen);
  await page.addInitScript(made);
  await again(page);
  return page;
};
/** Puts a finish on the stripes of an alternative. */
const paintStripes = async (page: Page, letter: string, finish: RegExp): Promise<void> => {
  await page.getByRole('button', { name: new RegExp(`^Stripes on ${letter}:`) }).click();
  await page.getByRole('dialog').getByRole('radio', { name: finish }).check({ force: true });
  await page.keyboard.press('Escape');
};
const isKept = (page: Page) => page.locator('[data-kept="kept"]').waitFor();
const nameOf = (page: Page): Promise<string | null> =>
  page.getByRole('heading', { level: 1 }).textContent();
const showBuilds = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Builds…' }).click();
  await page
    .getByRole('dialog', { name: 'Builds' })
    .getByText(/^Demo:/)
    .waitFor();
};
/** The JSON of the file that pressing a button saves. */
const savedBy = async (page: Page, save: Locator): Promise<unknown> => {
  const downloading = page.waitForEvent('download');
  await save.click();
  const chunks: Buffer[] = [];
  for await (const chunk of await (await downloading).createReadStream()) {
    chunks.push(chunk as Buffer);
  }
  return JSON.parse(Buffer.concat(chunks).toString('utf8'));
};
const lineOf = (page: Page, name: string) => page.locator('.builds-line', { hasText: name });
/** Drops or pastes files, or pastes text, where nothing is being typed. */
const hand = (page: Page, how: 'drop' | 'paste', name: string, type: string, text: string) =>
  page.evaluate(
    ([by, file, kind, content]) => {
      const data = new DataTransfer();
      if (file === '') data.setData('text/plain', content!);
      else data.items.add(new File([content!], file!, { type: kind! }));
      const target = document.activeElement ?? document.body;
      target.dispatchEvent(
        by === 'drop'
          ? new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true })
          : new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
      );
    },
    [how, name, type, text],
  );
/** Drops several files at once. */
const dropTogether = (page: Page, files: Readonly<Record<string, string>>): Promise<void> =>
  page.evaluate((named) => {
    const dataTransfer = new DataTransfer();
    for (const [name, text] of Object.entries(named)) {
      dataTransfer.items.add(new File([text], name));
    }
    document.body.dispatchEvent(
      new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }),
    );
  }, files);
const json = 'application/json';
const called = (name: string): string =>
  released.replace(/"name": "[^"]*"/, `"name": ${JSON.stringify(name)}`);

describe('every change', () => {
  it('is kept by itself and lies on the bench on the next visit; the untouched demo is not', async () => {
    const page = await start();
    expect(await page.locator('[data-kept]').textContent()).toBe('');
    expect(await keptBuilds(page)).toEqual([]);
    await paintStripes(page, 'A', /Moonstone/);
    await isKept(page);
    await expect.poll(() => page.locator('[data-kept]').textContent()).toBe('Kept');
    const [kept] = await keptBuilds(page);
    expect(kept!.document.alternatives[0]!.choices.stripes).toBe('corner-shop/moonstone');
    await again(page);
    await isKept(page);
    await page.getByRole('button', { name: /^Stripes on A: Moonstone/ }).waitFor();
    expect(await keptBuilds(page)).toHaveLength(1);
  });

  it('survives a tab that crashes in the middle of it', async () => {
    const page = await start();
    await paintStripes(page, 'A', /Moonstone/);
    await page.getByRole('heading', { level: 1 }).getByRole('button').click();
    const field = page.getByRole('dialog').getByLabel('Name');
    await field.fill('Half a na');
    await expect.poll(() => keptNames(page)).toEqual(['Half a na']);
    const hands = await page.context().newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    // The answer never comes: the page is gone.
    void hands.send('Page.crash').catch(() => {});
    await crashed;
    const next = await page.context().newPage();
    await next.goto(host.url, { waitUntil: 'commit' });
    await next.locator('.car svg').first().waitFor();
    expect(await nameOf(next)).toBe('Half a na');
    await next.getByRole('button', { name: /^Stripes on A: Moonstone/ }).waitFor();
  });

  it('goes to the build it belongs to, also after undo has gone back across opening', async () => {
    const page = await start();
    await paintStripes(page, 'A', /Moonstone/);
    await hand(page, 'drop', 'other.json', json, called('The other one'));
    await page.getByRole('heading', { name: 'The other one' }).waitFor();
    await expect.poll(() => keptNames(page)).toEqual(['Dragonfly roadster', 'The other one']);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { name: 'Dragonfly roadster' }).waitFor();
    await paintStripes(page, 'B', /Oyster/);
    await expect
      .poll(async () => {
        const all = await keptBuilds(page);
        const own = all.find(({ document }) => document.name === 'Dragonfly roadster');
        return own?.document.alternatives.map(({ choices }) => choices.stripes).slice(0, 2);
      })
      .toEqual(['corner-shop/moonstone', expect.stringMatching(/oyster/)]);
    expect(await keptBuilds(page)).toHaveLength(2);
    await again(page);
    expect(await nameOf(page)).toBe('Dragonfly roadster');
  });
});

describe('a browser that refuses', () => {
  it('because it is full says so once, works on, and keeps everything once there is room', async () => {
    const page = await startWhere(() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = function refusing(this: IDBObjectStore, ...what) {
        if (sessionStorage.getItem('room') === null) {
          throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
        }
        return put.apply(this, what);
      };
    });
    await paintStripes(page, 'A', /Moonstone/);
    const notice = page.locator('.notice', { hasText: 'storage of this browser is full' });
    await notice.waitFor();
    await page.getByText('Not kept', { exact: true }).waitFor();
    await notice.getByRole('button', { name: 'Close this line' }).click();
    await paintStripes(page, 'B', /Oyster/);
    expect(await notice.count()).toBe(0);
    expect(await keptBuilds(page)).toEqual([]);
    await page.evaluate(() => sessionStorage.setItem('room', 'there is'));
    // It asks again by itself.
    await isKept(page);
    const choices = (await keptBuilds(page))[0]!.document.alternatives.map((one) => one.choices);
    expect(choices[0]!.stripes).toMatch(/moonstone/);
    expect(choices[1]!.stripes).toMatch(/oyster/);
  });

  it('because it has no store at all still opens earlier work, and leaves it where it is', async () => {
    const page = await start();
    await page.evaluate((text) => localStorage.setItem('testspoon.build', text), called('Earlier'));
    await page.addInitScript(() => {
      Object.defineProperty(window, 'indexedDB', { value: undefined });
    });
    await again(page);
    expect(await nameOf(page)).toBe('Earlier');
    await page.getByText(/keeps nothing between visits/).waitFor();
    await page
      .getByRole('button', { name: /: try another|^.* on A: / })
      .first()
      .waitFor();
    await showBuilds(page);
    await page
      .getByRole('dialog')
      .getByText(/keeps nothing between visits/)
      .waitFor();
    expect(await page.evaluate(() => localStorage.getItem('testspoon.build'))).toBe(
      called('Earlier'),
    );
  });
});

describe('work of another Testspoon', () => {
  it('from before is taken over whole', async () => {
    const page = await start();
    await page.evaluate((text) => localStorage.setItem('testspoon.build', text), called('Earlier'));
    await again(page);
    expect(await nameOf(page)).toBe('Earlier');
    await isKept(page);
    expect(await keptNames(page)).toEqual(['Earlier']);
    expect(await page.evaluate(() => localStorage.getItem('testspoon.build'))).toBeNull();
  });

  it('that is newer is refused untouched, stays listed, and can be had as a file', async () => {
    const page = await start();
    const newer = called('From the future').replace('"version": 1', '"version": 99');
    await page.evaluate((text) => localStorage.setItem('testspoon.build', text), newer);
    await again(page);
    await page.getByText(/made by a newer Testspoon/).waitFor();
    expect(await nameOf(page)).toBe('Dragonfly roadster');
    await paintStripes(page, 'A', /Moonstone/);
    await isKept(page);
    await showBuilds(page);
    const line = lineOf(page, 'From the future');
    expect(await line.textContent()).toMatch(/newer Testspoon; it stays untouched/);
    expect(await line.getByRole('button', { name: /^Open/ }).count()).toBe(0);
    const saved = await savedBy(page, line.getByRole('button', { name: /^Save to file/ }));
    expect(saved).toEqual(JSON.parse(newer));
    expect(await keptNames(page)).toEqual(['Dragonfly roadster', 'From the future']);
  });
});

describe('a rack of a newer Testspoon', () => {
  it('is told, left as it is, and can be had as a file', async () => {
    const page = await start();
    await page.getByRole('button', { name: 'Rack', exact: true }).click();
    await page.getByRole('button', { name: 'New rack' }).click();
    await expect.poll(() => ageRack(page).catch(() => undefined)).toBeTruthy();
    const aged = await ageRack(page);
    await again(page);
    const notice = page.locator('.notice', { hasText: 'kept in this browser could not be read' });
    const save = notice.getByRole('button', { name: 'Save what could not be read' });
    expect(await savedBy(page, save)).toEqual(aged);
  });
});

describe('the list of builds', () => {
  it('is empty at first but for the demo, and has nothing for axe to object to', async () => {
    const page = await start();
    await showBuilds(page);
    await page.getByText(/No builds of your own yet/).waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
  });

  it('opens, copies, deletes and brings back', async () => {
    const page = await start();
    await paintStripes(page, 'A', /Moonstone/);
    await isKept(page);
    await showBuilds(page);
    await page.getByRole('button', { name: 'Copy Dragonfly roadster' }).click();
    await lineOf(page, 'Copy of Dragonfly roadster').waitFor();
    await page.getByRole('button', { name: 'Open Copy of Dragonfly roadster' }).click();
    await page.getByRole('heading', { level: 1, name: 'Copy of Dragonfly roadster' }).waitFor();
    await showBuilds(page);
    // The open one goes too; what was open before takes its place.
    await page.getByRole('button', { name: 'Delete Copy of Dragonfly roadster' }).click();
    await page.getByText('Copy of Dragonfly roadster was deleted.').waitFor();
    expect(await keptNames(page)).toEqual(['Dragonfly roadster']);
    expect(await nameOf(page)).toBe('Dragonfly roadster');
    await page.getByRole('dialog').getByRole('button', { name: 'Undo' }).click();
    await lineOf(page, 'Copy of Dragonfly roadster').waitFor();
    expect(await keptNames(page)).toEqual(['Copy of Dragonfly roadster', 'Dragonfly roadster']);
    await page.getByRole('button', { name: /^Open the demo again/ }).click();
    await page.getByRole('button', { name: /^Stripes on A: Oyster/ }).waitFor();
    expect(await keptBuilds(page)).toHaveLength(2);
  });

  it('of two hundred builds with pictures is searched by name; axe finds nothing', async () => {
    const page = await start();
    await paintStripes(page, 'A', /Moonstone/);
    // A picture is taken once nothing changes any more.
    await expect.poll(() => keptPictures(page)).toHaveLength(1);
    expect((await keptPictures(page))[0]).toMatch(/^data:image\/jpeg;base64,/);
    await fillShelf(page, 200);
    await showBuilds(page);
    await expect.poll(() => page.locator('.builds-line').count()).toBe(202);
    const { violations } = await new AxeBuilder({ page }).include('dialog').analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.getByRole('searchbox', { name: 'Search by name' }).fill('model 77');
    await expect.poll(() => page.locator('.builds-line').count()).toBe(2);
    expect(
      await lineOf(page, 'Shelf model 77')
        .locator('img')
        .evaluate((img: HTMLImageElement) => img.decode().then(() => img.naturalWidth)),
    ).toBeGreaterThan(168);
    await page.getByRole('button', { name: 'Open Shelf model 77' }).click();
    await page.getByRole('heading', { level: 1, name: 'Shelf model 77' }).waitFor();
  });
});

describe('files and text from elsewhere', () => {
  it('a build pasted as a file or as text is opened and kept; typing is left alone', async () => {
    const page = await start();
    await hand(page, 'paste', 'pasted.json', json, called('As a file'));
    await page.getByRole('heading', { name: 'As a file' }).waitFor();
    await hand(page, 'paste', '', '', called('As text'));
    await page.getByRole('heading', { name: 'As text' }).waitFor();
    await expect.poll(() => keptNames(page)).toEqual(['As a file', 'As text']);
    await page.getByRole('heading', { level: 1 }).getByRole('button').click();
    await page.getByRole('dialog').getByLabel('Name').focus();
    await hand(page, 'paste', '', '', called('Into a field'));
    await page.keyboard.press('Escape');
    expect(await nameOf(page)).toBe('As text');
  });

  it('of files dropped together none is passed over: builds, then racks, then what is refused', async () => {
    const page = await start();
    const rack = 'name,colour\nTar,#101010\n';
    await dropTogether(page, {
      'rack.csv': rack,
      'broken.json': '{"format": "testspoon-build"',
      'one.json': called('One'),
      'other.json': called('Other'),
    });
    await page.getByRole('heading', { level: 1, name: 'Other' }).waitFor();
    const adding = page.getByRole('dialog', { name: 'Add finishes' });
    await adding.getByRole('heading', { name: 'rack.csv' }).waitFor();
    await adding
      .getByRole('region', { name: 'broken.json' })
      .getByText(/Nothing can be/)
      .waitFor();
    expect(await page.locator('dialog[open]').count()).toBe(1);
    await expect.poll(() => keptNames(page)).toEqual(['One', 'Other']);
    await page.keyboard.press('Escape');
    await dropTogether(page, { 'bad.json': 'no', 'good.json': called('Good'), 'worse.json': '[' });
    await page.getByRole('heading', { level: 1, name: 'Good' }).waitFor();
    const refusal = page.getByRole('dialog', { name: '2 files were not opened' });
    await refusal.waitFor();
    expect(await refusal.getByRole('heading', { level: 3 }).allTextContents()).toEqual([
      'bad.json',
      'worse.json',
    ]);
    expect(await refusal.textContent()).toMatch(/What came with them was opened/);
    const { violations } = await new AxeBuilder({ page }).include('dialog[open]').analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    // A rack that comes now brings the refusals into its own dialog.
    await dropTogether(page, { 'rack.csv': rack });
    await expect
      .poll(() => adding.locator('.files-read h3').allTextContents())
      .toEqual(['rack.csv', 'bad.json', 'worse.json']);
    expect(await page.locator('dialog[open]').count()).toBe(1);
  });

  it('ordinary text that is pasted is left alone; a table of finishes is taken', async () => {
    const page = await start();
    await hand(page, 'paste', '', '', 'hello, world, again\nthis is, an e-mail, indeed');
    await hand(page, 'paste', '', '', '{ this is code }\n{ "format": "other" }');
    await hand(page, 'paste', '', '', 'Name;Hex\nTar;#101010');
    const adding = page.getByRole('dialog', { name: 'Add finishes' });
    await adding.getByText('1 finish can come in.').waitFor();
    expect(await adding.locator('.files-read').count()).toBe(1);
    expect(await page.locator('dialog[open]').count()).toBe(1);
  });

  it('a picture is refused in words, a rack goes to the rack’s own dialog', async () => {
    const page = await start();
    await hand(page, 'drop', 'reference.jpg', 'image/jpeg', 'ÿØÿà');
    const refusal = page.getByRole('dialog', { name: 'reference.jpg was not opened' });
    expect(await refusal.textContent()).toMatch(/a picture/);
    await page.keyboard.press('Escape');
    await hand(page, 'drop', 'rack.csv', 'text/csv', 'name,colour\nTar,#101010\n');
    await page
      .getByRole('dialog')
      .getByText(/rack\.csv/)
      .first()
      .waitFor();
    expect(await nameOf(page)).toBe('Dragonfly roadster');
  });
});

describe('a browser that may clear what it keeps', () => {
  it('is asked not to after the first change, never on arrival, and is spoken of after many', async () => {
    const page = await startWhere(() => {
      StorageManager.prototype.persisted = async () => false;
      StorageManager.prototype.persist = async () => {
        const asked = Number(sessionStorage.getItem('asked') ?? 0);
        sessionStorage.setItem('asked', String(asked + 1));
        return false;
      };
    });
    const asked = () => page.evaluate(() => sessionStorage.getItem('asked'));
    expect(await asked()).toBeNull();
    await paintStripes(page, 'A', /Moonstone/);
    await expect.poll(asked).toBe('1');
    const notice = page.getByText(/it may clear them when space runs short/);
    expect(await notice.count()).toBe(0);
    const slope = page.getByRole('radio', { name: /^(Desk|Cabinet)/ });
    for (let change = 0; change < 64; change++) {
      await slope.nth((change + 1) % 2).check({ force: true });
      await isKept(page);
    }
    await notice.waitFor();
    await page.locator('.notice').getByRole('button', { name: 'Save a file' }).click();
    await notice.waitFor({ state: 'detached' });
    expect(await asked()).toBe('1');
  });
});

describe('the head on a phone', () => {
  it('takes two lines; the rest is behind More, and axe finds nothing', async () => {
    const page = await start(phone);
    const { height } = (await page.getByRole('banner').boundingBox())!;
    expect(height).toBeLessThan(90);
    await page.getByRole('button', { name: 'More', exact: true }).click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.getByRole('button', { name: 'Builds…' }).click();
    await page.getByRole('dialog', { name: 'Builds' }).waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(390);
  });
});
