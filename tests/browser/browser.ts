/**
 * The one browser that all journeys share: an installed Chromium, Chrome or Edge, headless, with
 * colours and network pinned down. Every page gets a context of its own, so no journey sees what
 * another has kept.
 */
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { findBrowser } from './find.ts';

const flags = [
  '--headless=new',
  '--no-sandbox',
  '--force-color-profile=srgb',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];
/** Drawings stand in for the live cars: the same everywhere, and many times faster in software. */
const drawnOnly = ['--disable-3d-apis'];
/** Live cars, drawn in software so that pictures are the same on every machine. */
export const liveInSoftware = ['--use-angle=swiftshader', '--enable-unsafe-swiftshader'];

/**
 * Starts the browser, without 3D or with further flags instead; throws with what to do where this
 * machine has none.
 */
export async function startBrowser(further: readonly string[] = drawnOnly): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === undefined) {
    throw new Error(
      'The browser journeys need Chromium, Chrome or Edge. Install one, or say where it is: ' +
        'BROWSER_PATH=/path/to/browser npm test',
    );
  }
  return chromium.launch({ executablePath, args: [...flags, ...further] });
}

export interface OpenPage {
  readonly page: Page;
  /** Addresses asked for that are not on the page's own origin. */
  readonly strangers: string[];
  /** Errors the page met, from its console and its scripts. */
  readonly errors: string[];
}

export const desktop: BrowserContextOptions = { viewport: { width: 1440, height: 900 } };
export const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
};

/** A fresh visitor's page at `url`, ready once the bench is laid out. */
export async function visit(
  browser: Browser,
  url: string,
  screen: BrowserContextOptions = desktop,
): Promise<OpenPage> {
  const context = await browser.newContext({ ...screen, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const strangers: string[] = [];
  const errors: string[] = [];
  const { origin } = new URL(url);
  page.on('request', (request) => {
    const asked = new URL(request.url());
    if (asked.origin !== origin && asked.protocol !== 'blob:') strangers.push(request.url());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(url, { waitUntil: 'commit' });
  await page.locator('.car svg').first().waitFor();
  return { page, strangers, errors };
}
