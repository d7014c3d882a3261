/** How heavy is the first page before anything lazy? */
import { firstPageScriptBytes } from '../browser/script-size.ts';
import type { Row } from './row.ts';

const limitBytes = 150_000;

/** Sizes of the built page; run `npm run build` first. */
export function pageRows(): Row[] {
  const bytes = firstPageScriptBytes();
  return [
    {
      id: 'page.script',
      value: bytes / 1000,
      unit: 'kB gzip',
      against: `the limit of ${limitBytes / 1000} kB (1 kB = 1000 bytes)`,
      note: `${bytes} bytes of script that the first page loads before anything lazy`,
    },
  ];
}
