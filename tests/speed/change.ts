/**
 * How long until a changed finish is seen, scored and told? In a real browser against the built
 * page: a press on another spoon of the mirrors, on the demo.
 *
 * What counts is the work of the page's own thread: from the press until scores, sentences and
 * spoons in sight stand in the document, and from the start of the next frame until it has been
 * styled, laid out, painted and handed over. Waiting for that frame to begin is left out, since it
 * depends on when one presses; so are the card's own time and what follows from the worker (how
 * surely one is ahead). Run `npm run build` first.
 */
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { liveInSoftware, startBrowser, visit } from '../browser/browser.ts';
import { serve } from '../browser/serve.ts';
import { median, type Row, spent } from './row.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
/** A frame of a screen that shows sixty a second, seconds. */
export const frameSeconds = 1 / 60;
const changes = 41;

/** The figure with drawings standing in, with the sheets scrolled into sight, and with live cars. */
export async function changeRows(): Promise<Row[]> {
  return [
    await changeRow('page.change', 'drawings'),
    await changeRow('page.change.sheets', 'drawings made small, the sheets in sight'),
    await changeRow('page.change.live', 'live cars'),
  ];
}

async function changeRow(id: string, what: string): Promise<Row> {
  const isLive = id === 'page.change.live';
  const hasSheets = id === 'page.change.sheets';
  const toldIn = hasSheets ? '.cars, .sheets' : '.cars';
  const [browser, host] = await Promise.all([
    startBrowser(isLive ? liveInSoftware : undefined),
    serve(built, '/'),
  ]);
  try {
    const { page } = await visit(browser, host.url);
    if (isLive) await page.waitForSelector('[data-liveness="live"]', { timeout: 60_000 });
    // By key: over a page that has just changed, a mouse asks for layout before the frame begins.
    await page.locator('[data-cell$="/mirrors"]').first().press('Enter');
    await page.locator('.chooser input[type=radio]').nth(2).waitFor();
    if (hasSheets) {
      await page.evaluate(() => document.querySelector('.sheets')?.scrollIntoView());
    }
    await page.waitForTimeout(isLive ? 5000 : 1500);
    const works: Work[] = [];
    for (let k = 0; k < (isLive ? 13 : changes); k++) {
      works.push(await changeOnce(page, (k + 1) % 2, toldIn));
      // Answers from the worker and pictures of the card are left to come before the next press.
      await page.waitForTimeout(isLive ? 1500 : 250);
    }
    // The first ones warm the engine.
    const warm = works.slice(3);
    const whole = median(warm.map(({ script, frame }) => script + frame));
    const worst = Math.max(...warm.map(({ script, frame }) => script + frame));
    return {
      id,
      value: whole / frameSeconds,
      unit: 'frames',
      against: 'a frame of 1/60 s on this machine; limit 1',
      note: `${what}; until all stands in the document ${spent(median(warm.map(({ script }) => script)))}, styled and painted ${spent(median(warm.map(({ frame }) => frame)))}; worst of ${warm.length}: ${spent(worst)}${isLive ? '; the card’s own time not included' : ''}`,
    };
  } finally {
    await browser.close();
    await host.close();
  }
}

/** Seconds on the page's thread. */
interface Work {
  readonly script: number;
  readonly frame: number;
}

/** One press; every place of `toldIn` has to tell something else once it is over. */
const changeOnce = (page: Page, spoon: number, toldIn: string): Promise<Work> =>
  page.evaluate(
    ({ at, places }) =>
      new Promise<Work>((answer, refuse) => {
        const spoons = document.querySelectorAll<HTMLInputElement>('.chooser input[type=radio]');
        const told = [...document.querySelectorAll(places)];
        const before = told.map(({ textContent }) => textContent);
        let start = 0;
        let done = 0;
        // Asked for first, so that it is called first when the frame begins.
        requestAnimationFrame(() => {
          const began = performance.now();
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () =>
            answer({ script: (done - start) / 1000, frame: (performance.now() - began) / 1000 });
          // Handed over once this frame's own work is done.
          port2.postMessage(0);
        });
        start = performance.now();
        spoons[at]!.click();
        done = performance.now();
        if (told.some(({ textContent }, k) => textContent === before[k])) {
          refuse(new Error('the press changed nothing that is told'));
        }
      }),
    { at: spoon, places: toldIn },
  );
