/**
 * Pictures to take away, opened again and looked at: sizes, surround, cars in their own colours, and
 * the full screen. Once from drawings, which every browser has, and once from the live cars.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/difference.ts';
import { labFromHex } from '../../src/colour/srgb.ts';
import { desktop, liveInSoftware, startBrowser, visit } from './browser.ts';
import { type Host, serve } from './serve.ts';

const built = fileURLToPath(new URL('../../dist/app/', import.meta.url));
let host: Host;
let browser: Browser;
let live: Browser;

beforeAll(async () => {
  if (!existsSync(`${built}index.html`)) throw new Error('dist/app is missing: npm run build');
  [host, browser, live] = await Promise.all([
    serve(built, '/some/where/'),
    startBrowser(),
    startBrowser(liveInSoftware),
  ]);
});
afterAll(async () => {
  await browser?.close();
  await live?.close();
  await host?.close();
});

interface Sampled {
  readonly width: number;
  readonly height: number;
  /** RGBA at each corner. */
  readonly corners: readonly (readonly number[])[];
  /** Hex codes on a coarse grid, opaque pixels only. */
  readonly grid: readonly string[];
}

/** What a saved picture holds, read by the browser itself. */
async function saved(page: Page, press: () => Promise<void>): Promise<Sampled & { name: string }> {
  const downloading = page.waitForEvent('download', { timeout: 120_000 });
  await press();
  const download = await downloading;
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  const sampled = await page.evaluate(
    async (src) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      const sheet = document.createElement('canvas');
      const { naturalWidth: width, naturalHeight: height } = image;
      sheet.width = width;
      sheet.height = height;
      const paper = sheet.getContext('2d')!;
      paper.drawImage(image, 0, 0);
      const at = (x: number, y: number): number[] => [...paper.getImageData(x, y, 1, 1).data];
      const grid: string[] = [];
      for (let row = 1; row < 60; row++) {
        for (let column = 1; column < 80; column++) {
          const [r, g, b, alpha] = at(
            Math.floor((width * column) / 80),
            Math.floor((height * row) / 60),
          ) as [number, number, number, number];
          if (alpha < 255) continue;
          grid.push(`#${[r, g, b].map((value) => value.toString(16).padStart(2, '0')).join('')}`);
        }
      }
      const edge = [at(0, 0), at(width - 1, 0), at(0, height - 1), at(width - 1, height - 1)];
      return { width, height, corners: edge, grid };
    },
    `data:image/png;base64,${Buffer.concat(chunks).toString('base64')}`,
  );
  return { ...sampled, name: download.suggestedFilename() };
}

const near = (grid: readonly string[], hex: string, within: number): number =>
  grid.filter((one) => ciede2000(labFromHex(one), labFromHex(hex)) <= within).length / grid.length;
/** The demo's scored body colour, Lab 42, −24, −18, as a screen shows it (colorjs.io agrees). */
const bodyHex = '#006f80';

describe('pictures of drawings', () => {
  it.each([
    ['Wide', 3840, 2160],
    ['Square', 2160, 2160],
  ])(
    'saves the comparison %s, neutral round the cars and true to the body',
    async (shape, width, height) => {
      const { page, errors } = await visit(browser, host.url, desktop);
      await page.getByRole('button', { name: 'Picture…' }).click();
      await page.getByRole('radio', { name: new RegExp(`^${shape}`) }).check({ force: true });
      const picture = await saved(page, () =>
        page.getByRole('button', { name: 'Save picture' }).click(),
      );
      expect([picture.width, picture.height]).toEqual([width, height]);
      expect(picture.name).toMatch(/\.png$/);
      for (const [r, g, b, alpha] of picture.corners) {
        expect(alpha).toBe(255);
        expect(Math.max(r!, g!, b!) - Math.min(r!, g!, b!)).toBeLessThanOrEqual(1);
      }
      expect(near(picture.grid, bodyHex, 2)).toBeGreaterThan(0.005);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations).toEqual([]);
      expect(errors).toEqual([]);
      await page.context().close();
    },
    120_000,
  );
});

describe('pictures of live cars', () => {
  it('saves one car on clear ground, and fills the screen with all of them', async () => {
    const { page, errors } = await visit(live, host.url, {
      viewport: { width: 1000, height: 700 },
    });
    page.setDefaultTimeout(80_000);
    await page.locator('.stage[data-liveness="live"]').waitFor();
    await page.getByRole('button', { name: 'Picture…' }).click();
    const picture = await saved(page, () =>
      page.getByRole('button', { name: 'Save car A' }).click(),
    );
    expect(picture.width).toBeGreaterThan(2000);
    for (const corner of picture.corners) expect(corner[3]).toBe(0);
    // The room is mirrored too, so the body is near its scored colour rather than at it: within the
    // 4 % that a polished film adds, and a stop of light either way.
    expect(near(picture.grid, bodyHex, 18)).toBeGreaterThan(0.15);
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: 'Full screen' }).click();
    await expect
      .poll(async () => {
        const boxes = await Promise.all(
          ['A', 'B', 'C'].map((letter) =>
            page
              .getByRole('article', { name: `Alternative ${letter}`, exact: true })
              .locator('.stand')
              .boundingBox(),
          ),
        );
        return boxes.every(
          (box) =>
            box !== null &&
            box.x >= 0 &&
            box.y >= 0 &&
            box.x + box.width <= 1001 &&
            box.y + box.height <= 701 &&
            box.width * box.height > 0.15 * 1000 * 700,
        );
      })
      .toBe(true);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Full screen' }).waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  }, 180_000);
});
