/**
 * How heavy is the script of the first page before anything lazy, and how quickly does the page
 * answer? Run `npm run build` first.
 */
import { changeRows } from './change.ts';
import type { Row } from './row.ts';
import { firstPageScripts, packedBytes } from './scripts.ts';
import { searchRows } from './search.ts';

const limitBytes = 160_000;

/** Size and speed of the built page. */
export async function pageRows(): Promise<Row[]> {
  return [scriptRow(), ...(await changeRows()), ...(await searchRows())];
}

function scriptRow(): Row {
  const scripts = firstPageScripts();
  const bytes = packedBytes(scripts);
  return {
    id: 'page.script',
    value: bytes / 1000,
    unit: 'kB gzip',
    against: `the limit of ${limitBytes / 1000} kB (1 kB = 1000 bytes)`,
    note: `${bytes} bytes in ${scripts.length} script${scripts.length === 1 ? '' : 's'} before anything lazy`,
  };
}
