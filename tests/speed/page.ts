/** How heavy is the script of the first page before anything lazy? Run `npm run build` first. */
import type { Row } from './row.ts';
import { firstPageScripts, packedBytes } from './scripts.ts';

const limitBytes = 150_000;

/** Sizes of the built page. */
export function pageRows(): Row[] {
  const scripts = firstPageScripts();
  const bytes = packedBytes(scripts);
  return [
    {
      id: 'page.script',
      value: bytes / 1000,
      unit: 'kB gzip',
      against: `the limit of ${limitBytes / 1000} kB (1 kB = 1000 bytes)`,
      note: `${bytes} bytes in ${scripts.length} script${scripts.length === 1 ? '' : 's'} before anything lazy`,
    },
  ];
}
