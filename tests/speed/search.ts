/**
 * How long does a search over 10,000 finishes take, for each letter that is typed? Once the search
 * and its order alone, and once in a real browser against the built page, until the spoons found
 * stand on screen.
 *
 * Alone: from the words to the sorted list of all that is found, with and without a colour to be
 * near to; the index stands already, and so does the order of nearness, which changes with the
 * colour and not with the words (its own row). In the browser: the page's own thread, from the
 * letter until the spoons stand in the document, and from the start of the next frame until it has
 * been handed over; drawings stand in for the cars. Run `npm run build` first.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { appearanceOf } from '../../src/finish/appearance.ts';
import { find, indexOf } from '../../src/finish/rack/find.ts';
import { nearnessTo, noteLab, unknownLabs } from '../../src/finish/rack/nearness.ts';
import { asLab } from '../../src/ground/unit.ts';
import { startBrowser, visit } from '../browser/browser.ts';
import { dropFile } from '../browser/drop.ts';
import { serve } from '../browser/serve.ts';
import { thousandsOf } from '../finish/rack/thousands.ts';
import { frameSeconds } from './change.ts';
import { median, type Row, spent } from './row.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const count = 10_000;
/** Typed a letter at a time, taken away again. */
const typed = ['harbour grey', 'toffee', 'mist coats', 'metallic satin', 'crème 12', 'zzz'];
const keystrokes = typed.flatMap((text) => [
  ...[...text].map((_, k) => text.slice(0, k + 1)),
  text.slice(0, 2),
  '',
]);

/** Search alone, nearness alone, and search until it is seen. */
export async function searchRows(): Promise<Row[]> {
  return [...aloneRows(), await shownRow()];
}

const p95 = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(0.95 * values.length)]!;

const against = 'a frame of 1/60 s on this machine; limit 1';

function aloneRows(): Row[] {
  // Seed 2031.
  const finishes = thousandsOf(count, 2031);
  const index = indexOf(finishes);
  const labs = unknownLabs(count);
  finishes.forEach((finish, at) => {
    noteLab(labs, at, appearanceOf(finish, 'D65').lab);
  });
  const target = asLab(55, 20, 30);
  const near = nearnessTo(target, labs);
  const searches: number[] = [];
  const orders: number[] = [];
  for (let round = 0; round < 8; round++) {
    for (const words of keystrokes) {
      for (const wanted of [{ words }, { words, near }]) {
        const start = performance.now();
        find(index, wanted);
        // The first round warms the engine.
        if (round > 0) searches.push((performance.now() - start) / 1000);
      }
    }
    for (let k = 0; k < 10; k++) {
      const start = performance.now();
      nearnessTo(asLab(10 * k, 20, 30), labs);
      if (round > 0) orders.push((performance.now() - start) / 1000);
    }
  }
  return [
    {
      id: 'page.search',
      value: median(searches) / frameSeconds,
      unit: 'frames',
      against,
      note: `a letter typed over ${count} finishes, search and order alone: median ${spent(median(searches))}, 95 of 100 within ${spent(p95(searches))}`,
    },
    {
      id: 'page.search.near',
      value: median(orders) / frameSeconds,
      unit: 'frames',
      against,
      note: `another colour to be near to: ΔE2000 of all ${count} and their order, looks known; median ${spent(median(orders))}, 95 of 100 within ${spent(p95(orders))}`,
    },
  ];
}

async function shownRow(): Promise<Row> {
  const [browser, host] = await Promise.all([startBrowser(), serve(`${root}dist/app/`, '/')]);
  try {
    const { page } = await visit(browser, host.url);
    const demo = JSON.parse(readFileSync(`${root}src/build/demo.json`, 'utf8')) as {
      name: string;
      finishes: object[];
    };
    demo.name = 'A long shelf';
    demo.finishes.push(...thousandsOf(count - demo.finishes.length, 2031));
    await dropFile(page, 'long.json', JSON.stringify(demo));
    await page.getByText('A long shelf').first().waitFor();
    await page.getByRole('button', { name: 'Rack', exact: true }).click();
    await page.locator('.spoon-place').first().waitFor();
    await page.waitForTimeout(1500);
    const times: number[] = [];
    for (const [k, words] of [...keystrokes.slice(0, 6), ...keystrokes].entries()) {
      const time = await typeOnce(page, words);
      // The first ones warm the engine.
      if (k >= 6) times.push(time);
      await page.waitForTimeout(120);
    }
    return {
      id: 'page.search.shown',
      value: median(times) / frameSeconds,
      unit: 'frames',
      against,
      note: `a letter typed over ${count} finishes, until the spoons found are on screen, drawings for cars: median ${spent(median(times))}, 95 of 100 within ${spent(p95(times))}`,
    };
  } finally {
    await browser.close();
    await host.close();
  }
}

/** Seconds of the page's own thread for one change of the words. */
const typeOnce = (page: Page, words: string): Promise<number> =>
  page.evaluate(
    (text) =>
      new Promise<number>((answer) => {
        const input = document.querySelector<HTMLInputElement>('.filters input[type=search]')!;
        const value = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!;
        const start = performance.now();
        value.set!.call(input, text);
        input.dispatchEvent(new Event('input', { bubbles: true }));
        const done = performance.now();
        requestAnimationFrame((began) => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () =>
            answer((done - start + performance.now() - Math.max(began, done)) / 1000);
          // Handed over once this frame's own work is done.
          port2.postMessage(0);
        });
      }),
    words,
  );
