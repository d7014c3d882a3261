/**
 * Racks in and out of the page as files, by builders who keep spreadsheets: what comes in, what
 * stays out and why, back by undo, and files that read back as they went. Needs `npm run build`.
 *
 * Expected are the rows put in on purpose: a table is made from a seed, seven rows of it faulty in
 * seven ways. Racks that come back are held against the racks of the house.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { rackFromCsv } from '../../src/finish/rack/csv.ts';
import { parseRack } from '../../src/finish/rack/rack.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { desktop, type OpenPage, phone, startBrowser, visit } from './browser.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const drawer = parseRack(
  readFileSync(new URL('../../palettes/bench-drawer.json', import.meta.url), 'utf8'),
  'bench-drawer.json',
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
  expect(host.missing).toEqual([]);
  await opened.page.context().close();
});

/** The rack area of a fresh visitor's page. */
async function atTheRack(screen: BrowserContextOptions = desktop): Promise<Page> {
  opened = await visit(browser, host.url, screen);
  await toTheRack(opened.page);
  return opened.page;
}
async function toTheRack(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Rack', exact: true }).click();
  await page.getByRole('button', { name: 'Add finishes…' }).waitFor();
}
const racksOn = (page: Page): Promise<string[]> =>
  page.getByLabel('Which rack').locator('option').allTextContents();
const dialogOf = (page: Page): Locator => page.getByRole('dialog', { name: 'Add finishes' });
const asFile = (name: string, text: string | Buffer) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(text as string),
});
async function choose(page: Page, ...files: ReturnType<typeof asFile>[]): Promise<Locator> {
  await page.getByRole('button', { name: 'Add finishes…' }).click();
  const dialog = dialogOf(page);
  await dialog.getByLabel('Rack files').setInputFiles(files);
  await dialog.getByRole('button', { name: 'Leave it out' }).first().waitFor();
  return dialog;
}
const faultsIn = (dialog: Locator): Promise<string[][]> =>
  dialog
    .locator('.files-faults tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => cell.textContent ?? '')),
    );
const axeOf = async (page: Page) => {
  const { violations } = await new AxeBuilder({ page }).include('dialog[open]').analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join()}`);
};

/** Ids of the racks that the browser keeps, read past the page. */
const keptRacksOf = (page: Page): Promise<string[]> =>
  page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('testspoon');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const reading = opening.result.transaction('racks').objectStore('racks').getAllKeys();
          reading.onerror = () => reject(reading.error);
          reading.onsuccess = () => {
            opening.result.close();
            resolve(reading.result.map(String));
          };
        };
      }),
  );

/** What is wrong in which row of the table, by the number a spreadsheet shows. */
const faulty = new Map<number, [cells: Record<string, string>, place: string, found: string]>([
  [12, [{ Name: '' }, 'row 12 › Name', 'nothing']],
  [47, [{ Hex: 'reddish' }, 'row 47, “Shade 46” › Hex', '“reddish”']],
  [88, [{ Hex: '#12345' }, 'row 88, “Shade 87” › Hex', '“#12345”']],
  [131, [{ Gloss: '140' }, 'row 131, “Shade 130” › Gloss', '140']],
  [190, [{ Hex: '' }, 'row 190, “Shade 189” › Hex', 'nothing']],
  [233, [{ Name: '=CONCAT(A1,B1)' }, 'row 233 › Name', '“=CONCAT(A1,B1)”']],
  [281, [{ Name: 'Sky\u202eblue' }, 'row 281 › Name', '“Sky\\u202eblue”']],
]);
/** Cells that say nothing usable and that nobody needs: their rows come in. */
const unclear = new Map<number, Record<string, string>>([
  [20, { Finish: 'Sprayed' }],
  [21, { Have: 'maybe' }],
]);
const headings = ['Name', 'Hex', 'Gloss', 'Finish', 'Have', 'Days', 'Notes'] as const;

/** 300 finishes from seed 300, with semicolons and decimal commas. */
function spreadsheet(): string {
  const draw = drawFrom(300);
  const kinds = ['Solid', 'Metallic', 'Pearl', 'Candy', 'Matt', ''];
  const rows = Array.from({ length: 300 }, (_, at) => {
    const digits = draw.below(0x1000000).toString(16).padStart(6, '0');
    const cells: Record<string, string> = {
      Name: `Shade ${at + 1}`,
      Hex: `#${digits}`,
      Gloss: draw.uniform() < 0.3 ? '' : (draw.uniform() * 90).toFixed(1).replace('.', ','),
      Finish: kinds[draw.below(kinds.length)]!,
      Have: draw.uniform() < 0.5 ? 'x' : 'no',
      Days: String(draw.below(15)),
      Notes: draw.uniform() < 0.1 ? '"thin; two coats"' : '',
    };
    Object.assign(cells, unclear.get(at + 2), faulty.get(at + 2)?.[0]);
    return headings.map((heading) => cells[heading]).join(';');
  });
  return `\ufeff${[headings.join(';'), ...rows].join('\r\n')}\r\n`;
}

describe.each([
  ['on a desk', desktop],
  ['on a phone', phone],
] as const)('a spreadsheet of 300 finishes, seven rows faulty, %s', (_, screen) => {
  it('brings in 293, tells why seven stay out, goes back, comes again and is kept', async () => {
    const page = await atTheRack(screen);
    const before = await racksOn(page);
    const dialog = await choose(page, asFile('spare paint.csv', spreadsheet()));
    await dialog.getByText('293 finishes can come in. 7 rows stay out.').waitFor();
    const told = await faultsIn(dialog);
    expect(told.map(([place, found]) => [place, found])).toEqual(
      [...faulty.values()].map(([, place, found]) => [place, found]),
    );
    for (const [, , expected, mend] of told) {
      expect(expected?.length).toBeGreaterThan(5);
      expect(mend).toMatch(/\.$/);
    }
    expect(await dialog.locator('.bowl').count()).toBeGreaterThan(10);
    expect(await dialog.textContent()).toMatch(/had no gloss; taken as semi-gloss, 45 GU/);
    expect(await dialog.textContent()).toContain(
      '2 cells could not be read and count as empty: “Sprayed” under Finish (Shade 19, row 20); ' +
        '“maybe” under Have (Shade 20, row 21).',
    );
    expect(await axeOf(page)).toEqual([]);

    await dialog.getByRole('button', { name: 'Bring in 293 finishes' }).click();
    await dialog.waitFor({ state: 'detached' });
    expect(await racksOn(page)).toEqual([...before, 'spare paint (293)']);
    expect(await page.getByLabel('Which rack').inputValue()).toBe('spare-paint');
    await page.getByText('293 finishes.', { exact: true }).waitFor();

    await page.getByRole('button', { name: 'Undo' }).first().click();
    await expect.poll(() => racksOn(page)).toEqual(before);
    await page.getByRole('button', { name: 'Redo' }).first().click();
    await expect.poll(() => racksOn(page)).toEqual([...before, 'spare paint (293)']);

    await expect.poll(() => keptRacksOf(page)).toContain('spare-paint');
    await page.reload({ waitUntil: 'commit' });
    await toTheRack(page);
    await expect.poll(() => racksOn(page)).toEqual([...before, 'spare paint (293)']);
  });
});

describe('a table pasted from a spreadsheet', () => {
  it('comes onto a rack that is there, each namesake as the builder says', async () => {
    const page = await atTheRack();
    const [grey, white] = drawer.finishes;
    const before = (await racksOn(page)).find((one) => one.startsWith(drawer.name));
    await page.getByLabel('Which rack').selectOption(drawer.id);
    await page.getByRole('button', { name: 'Add finishes…' }).click();
    const dialog = dialogOf(page);
    const table = [
      ['Paint', 'L*', 'a*', 'b*', 'Sheen'],
      [grey!.name, '50,5', '-1,5', '-4', 'satin'],
      [white!.name, '90', '0', '2', 'matt'],
      ['Brand new', '40', '20', '20', 'gloss'],
    ];
    await dialog.getByLabel('Or paste a table').fill(table.map((row) => row.join('\t')).join('\n'));
    await dialog.getByText('3 finishes can come in.').waitFor();
    // It was opened from that rack, so that is where they go.
    expect(await dialog.getByLabel('Put them on').inputValue()).toBe(drawer.id);
    const outcome = dialog.locator('.files-outcome');
    expect(await outcome.textContent()).toMatch(/1 finish is new.*2 finishes take the place/);
    await dialog.getByRole('radio', { name: 'Keep both' }).check();
    expect(await outcome.textContent()).toMatch(/2 finishes stand beside/);
    await dialog.getByRole('radio', { name: 'Keep the old one' }).check();
    expect(await outcome.textContent()).toMatch(/2 finishes stay out/);
    expect(await axeOf(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Bring in 1 finish', exact: true }).click();
    await dialog.waitFor({ state: 'detached' });
    const after = `${drawer.name} (${drawer.finishes.length + 1})`;
    expect(before).toBe(`${drawer.name} (${drawer.finishes.length})`);
    expect(await racksOn(page)).toContain(after);
    await page.getByText(`1 finish brought in on ${drawer.name}.`).waitFor();
    await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => racksOn(page)).toContain(before);
  });
});

describe('a rack saved', () => {
  const saved = async (page: Page, name: string): Promise<string> => {
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: `Save ${name}`, exact: true }).click();
    const download = await downloading;
    expect(download.suggestedFilename()).toBe(name);
    return readFileSync(await download.path(), 'utf8');
  };

  it('as JSON and as CSV is what it was; as design tokens it is its colours', async () => {
    const page = await atTheRack();
    await page.getByLabel('Which rack').selectOption(drawer.id);
    await page.getByRole('button', { name: 'Save as…' }).click();
    await page.getByRole('dialog', { name: 'Save as a file' }).waitFor();
    expect(await axeOf(page)).toEqual([]);
    const { id, name, finishes } = drawer;
    expect(parseRack(await saved(page, `${id}.json`), 'saved.json')).toEqual(drawer);
    const table = rackFromCsv(await saved(page, `${id}.csv`), { id, name });
    expect([table.problems, table.rack.finishes]).toEqual([[], finishes]);
    const tokens = JSON.parse(await saved(page, `${id}.tokens.json`)) as Record<string, unknown>;
    expect(Object.keys(tokens)).toHaveLength(finishes.length + 1);
    expect(tokens[finishes[0]!.name]).toMatchObject({ $type: 'color' });
  });

  it('and dropped again anywhere on the page comes beside the one it was', async () => {
    const page = await atTheRack();
    await page.evaluate((text) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], 'drawer.json', { type: 'application/json' }));
      for (const type of ['dragover', 'drop']) {
        document.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true }));
      }
    }, JSON.stringify(drawer));
    const dialog = dialogOf(page);
    await dialog.getByText(`${drawer.finishes.length} finishes can come in.`).waitFor();
    await dialog.getByRole('button', { name: /^Bring in/ }).click();
    await dialog.waitFor({ state: 'detached' });
    expect(await racksOn(page)).toContain(`${drawer.name} 2 (${drawer.finishes.length})`);
  });
});

describe('what is no rack', () => {
  it('is told in plain words, and nothing can be brought in', async () => {
    const page = await atTheRack();
    const tooMany = `Name,Hex\n${'A,#112233\n'.repeat(20_001)}`;
    const build = readFileSync(new URL('../../src/build/demo.json', import.meta.url));
    const noise = Buffer.from(Array.from({ length: 4000 }, (_, at) => (at * 89) % 251));
    const dialog = await choose(
      page,
      asFile('empty.csv', ''),
      asFile('noise.csv', noise),
      asFile('book.xlsx.csv', 'PK\u0003\u0004\u0014\u0000'),
      asFile('many.csv', tooMany),
      asFile('build.json', build),
      asFile('strange.csv', 'Shelf,Price\n1,2\n'),
    );
    await expect.poll(() => dialog.locator('.files-read').count()).toBe(6);
    expect((await faultsIn(dialog)).map(([, found]) => found)).toEqual([
      expect.stringMatching(/nothing/),
      expect.stringMatching(/no text/),
      expect.stringMatching(/workbook/),
      expect.stringMatching(/20,000 rows/),
      'a build',
      expect.stringMatching(/“Shelf”, “Price”/),
    ]);
    expect(await dialog.getByRole('button', { name: /^Bring in/ }).count()).toBe(0);
    expect(await axeOf(page)).toEqual([]);
  });

  it('but letters as Windows writes them are read, and told', async () => {
    const page = await atTheRack();
    const dialog = await choose(
      page,
      asFile('old.csv', Buffer.from('Name;Hex\r\nCaf\xe9 au lait;#b59a7c\r\n', 'latin1')),
    );
    await dialog.getByText('1 finish can come in.').waitFor();
    expect(await dialog.locator('.files-spoons').textContent()).toContain('Café au lait');
    expect(await dialog.textContent()).toMatch(/not UTF-8/);
  });
});
