/**
 * Opens the test studio: bundles its page into a temporary folder, serves it on loopback and drives
 * it in a browser that draws WebGL in software, so that a machine without a graphics card gets the
 * same pictures. Nothing of `dist` is read or written.
 */
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { liveInSoftware, startBrowser } from '../browser.ts';
import { serve } from '../serve.ts';
import type { Bench, Sent } from './page/bench.ts';

const entry = fileURLToPath(new URL('./page/main.tsx', import.meta.url));
const car = fileURLToPath(new URL('../../../models/roadster.glb', import.meta.url));

type Asked = {
  readonly [K in keyof Bench]: (
    ...given: Parameters<Bench[K]>
  ) => Promise<Awaited<ReturnType<Bench[K]>>>;
};

export interface StudioPage {
  readonly bench: Asked;
  readonly page: Page;
  /** Errors that the page's console and scripts met. */
  readonly errors: string[];
}

export interface TestStudio {
  /** A fresh page of the studio. */
  open(): Promise<StudioPage>;
  close(): Promise<void>;
}

export async function openStudio(): Promise<TestStudio> {
  const folder = mkdtempSync(join(tmpdir(), 'stage-'));
  await build({
    configFile: false,
    root: fileURLToPath(new URL('./page/', import.meta.url)),
    base: './',
    logLevel: 'error',
    publicDir: false,
    build: {
      outDir: folder,
      emptyOutDir: true,
      target: 'es2022',
      modulePreload: false,
      rolldownOptions: { input: entry, output: { entryFileNames: 'main.js' } },
    },
  });
  copyFileSync(car, join(folder, 'roadster.glb'));
  writeFileSync(
    join(folder, 'index.html'),
    '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,"><title>Stage</title>' +
      '<body style="margin:0;background:#a6a6a6"><script type="module" src="main.js"></script>',
  );
  const [host, browser] = await Promise.all([serve(folder, '/'), startBrowser(liveInSoftware)]);
  return {
    open: () => openPage(browser, host.url),
    async close() {
      await browser.close();
      await host.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function openPage(browser: Browser, url: string): Promise<StudioPage> {
  const page = await browser.newPage({ viewport: { width: 1400, height: 500 } });
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(url, { waitUntil: 'commit' });
  await page.waitForFunction('window.bench !== undefined');
  const bench = new Proxy({} as Asked, {
    get:
      (_, name: string) =>
      (...given: unknown[]) =>
        page.evaluate(`window.bench.${name}(...${JSON.stringify(given)})`),
  });
  return { bench, page, errors };
}

/** The bytes of a picture. */
export const bytesOf = ({ bytes }: Sent): Uint8Array =>
  new Uint8Array(Buffer.from(bytes, 'base64'));
