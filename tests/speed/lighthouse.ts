/**
 * What does Lighthouse 12.2.3 make of the viewers' page on its usual slow phone? The demo's round
 * is opened from a packed static host; scores are of 100. Its throttling is simulated, so a busy
 * machine moves the figures little, but three runs are taken and the middle one told. Run `npm run
 * build` first.
 */
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import lighthouse from 'lighthouse';
import { openBuild } from '../../src/build/file.ts';
import { addressOf } from '../../src/opinion/link/link.ts';
import { roundOf } from '../../src/opinion/round.ts';
import { startBrowser } from '../browser/browser.ts';
import { serve } from '../browser/serve.ts';
import { median, type Row } from './row.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const categories = ['performance', 'accessibility', 'best-practices'] as const;
const runs = 3;

/** One row for each category. */
export async function lighthouseRows(): Promise<Row[]> {
  const port = await freePort();
  const [browser, host] = await Promise.all([
    startBrowser([`--remote-debugging-port=${port}`]),
    serve(here('../../dist/app/'), '/some/where/', true),
  ]);
  try {
    const demo = openBuild(readFileSync(here('../../src/build/demo.json'), 'utf8'));
    const address = addressOf(host.url, roundOf(demo));
    const scores = new Map<string, number[]>(categories.map((name) => [name, []]));
    const faults = new Set<string>();
    for (let run = 0; run < runs; run++) {
      const report = await lighthouse(address, { port, onlyCategories: [...categories] });
      if (report === undefined) throw new Error('Lighthouse gave no report');
      for (const name of categories) {
        const category = report.lhr.categories[name];
        if (category?.score == null) throw new Error(`Lighthouse gave no score for ${name}`);
        scores.get(name)?.push(category.score * 100);
        for (const { id, weight } of category.auditRefs) {
          const { score, title } = report.lhr.audits[id] ?? {};
          if (weight > 0 && score != null && score < 0.9) faults.add(title ?? id);
        }
      }
    }
    const note = faults.size === 0 ? 'nothing to object to' : [...faults].join('; ');
    return categories.map((name) => ({
      id: `page.viewer.${name}`,
      value: median(scores.get(name) ?? []),
      unit: 'of 100',
      against: 'Lighthouse 12.2.3, mobile; limit 95',
      note: `${runs} runs: ${scores.get(name)?.join(', ')}; ${note}`,
    }));
  } finally {
    await browser.close();
    await host.close();
  }
}

/** A port of this machine that is free now. */
async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  await new Promise((closed) => server.close(closed));
  return port;
}
