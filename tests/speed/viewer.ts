/**
 * How much does a phone fetch until somebody who is asked can answer? The demo's round is opened
 * from a static host that packs, and the browser itself says how many bytes came. Run `npm run
 * build` first.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openBuild } from '../../src/build/file.ts';
import { addressOf } from '../../src/opinion/link/link.ts';
import { roundOf } from '../../src/opinion/round.ts';
import { phone, startBrowser } from '../browser/browser.ts';
import { serve } from '../browser/serve.ts';
import type { Row } from './row.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
/** What is weighed, by the ends of addresses, with its limit in bytes. */
const weighed = [
  { id: 'page.viewer', what: 'script', end: '.js', limitBytes: 90_000 },
  { id: 'page.viewer.pictures', what: 'pictures', end: '.svg', limitBytes: 60_000 },
] as const;

/** Scripts and pictures until an answer can be given. */
export async function viewerRows(): Promise<Row[]> {
  const [browser, host] = await Promise.all([
    startBrowser(),
    serve(here('../../dist/app/'), '/some/where/', true),
  ]);
  try {
    const demo = openBuild(readFileSync(here('../../src/build/demo.json'), 'utf8'));
    const page = await (await browser.newContext(phone)).newPage();
    await page.goto(addressOf(host.url, roundOf(demo)), { waitUntil: 'commit' });
    await page
      .locator('.round-picture svg')
      .nth(demo.alternatives.length - 1)
      .waitFor();
    await page.getByRole('radio').first().check();
    await page.getByRole('button', { name: 'Copy reply' }).waitFor();
    const fetched = await page.evaluate(() =>
      performance.getEntriesByType('resource').map((one) => ({
        name: one.name,
        bytes: (one as PerformanceResourceTiming).encodedBodySize,
      })),
    );
    return weighed.map(({ id, what, end, limitBytes }) => {
      const ours = fetched.filter(({ name }) => new URL(name).pathname.endsWith(end));
      const bytes = ours.reduce((sum, one) => sum + one.bytes, 0);
      return {
        id,
        value: bytes / 1000,
        unit: 'kB gzip',
        against: `the limit of ${limitBytes / 1000} kB (1 kB = 1000 bytes)`,
        note: `${bytes} bytes of ${what} in ${ours.length} file${ours.length === 1 ? '' : 's'} until an answer can be given`,
      };
    });
  } finally {
    await browser.close();
    await host.close();
  }
}
