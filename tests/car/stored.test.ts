/** Are the files beside the car what the code makes of it? Measured and traced again from its GLB. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { sightOfGlb } from '../../models/measure.ts';
import { picturesOfGlb } from '../../models/trace.ts';

const models = fileURLToPath(new URL('../../models/', import.meta.url));
const glb = new Uint8Array(readFileSync(`${models}roadster.glb`));

// Some ten seconds each on an idle core; several times that while other suites share it.
const limitMs = 180_000;

describe('the stored roadster', { timeout: limitMs }, () => {
  it('has the sight table that its mesh gives', async () => {
    const stored = JSON.parse(readFileSync(`${models}roadster.sight.json`, 'utf8'));
    const measured = await sightOfGlb(glb, 'roadster', 'Roadster');
    expect(JSON.parse(JSON.stringify(measured))).toEqual(stored);
  });

  it('has the pictures that its mesh gives, each at most 40,000 bytes packed', async () => {
    for (const { id, svg } of await picturesOfGlb(glb)) {
      expect(readFileSync(`${models}roadster.${id}.svg`, 'utf8') === svg, `view ${id}`).toBe(true);
      expect(gzipSync(svg, { level: 9 }).length, `view ${id}`).toBeLessThanOrEqual(40_000);
    }
  });
});
