/**
 * Makes the stored cars: `npx tsx models/make.ts`. Writes models/roadster.glb.
 * Everything is generated, so the same sources give the same bytes.
 */
import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { modelBytes } from './roadster/model.ts';

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

const roadster = await modelBytes();
await writeFile(here('roadster.glb'), roadster);
// The sight table and the side and front outlines are measured from `roadster` here.
