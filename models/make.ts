/**
 * Makes the stored cars: `npm run models`. Writes models/roadster.glb and, measured from its
 * bytes, models/roadster.sight.json and the pictures models/roadster.VIEW.svg.
 * Everything is generated, so the same sources give the same bytes.
 */
import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { sightOfGlb, textOfSight } from './measure.ts';
import { modelBytes } from './roadster/model.ts';
import { picturesOfGlb } from './trace.ts';

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

const roadster = await modelBytes();
await writeFile(here('roadster.glb'), roadster);
await writeFile(
  here('roadster.sight.json'),
  textOfSight(await sightOfGlb(roadster, 'roadster', 'Roadster')),
);
for (const { id, svg } of await picturesOfGlb(roadster)) {
  await writeFile(here(`roadster.${id}.svg`), svg);
}
