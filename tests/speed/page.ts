/** How heavy is the script of the first page before anything lazy? Run `npm run build` first. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Row } from './row.ts';

const root = fileURLToPath(new URL('../../dist/app/', import.meta.url));
const limitBytes = 150_000;

/** Every script that index.html loads at once, with what those import without waiting. */
function firstPageScripts(): string[] {
  if (!existsSync(`${root}index.html`)) {
    throw new Error('dist/app is missing; run `npm run build` first');
  }
  const html = readFileSync(`${root}index.html`, 'utf8');
  const found = new Set<string>();
  const queue = [...html.matchAll(/<(?:script|link)\b[^>]*?(?:src|href)="([^"]+\.js)"/g)].map(
    (match) => match[1]!,
  );
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    const name = new URL(path, 'http://page/').pathname.slice(1);
    if (found.has(name)) continue;
    found.add(name);
    const code = readFileSync(root + name, 'utf8');
    // Static imports only: `import … from "./x.js"`, `import "./x.js"`, `export … from "./x.js"`.
    for (const match of code.matchAll(/(?:from|import)\s*["'](\.[^"']+\.js)["']/g)) {
      queue.push(new URL(match[1]!, `http://page/${name}`).pathname);
    }
  }
  return [...found].sort();
}

/** Sizes of the built page. */
export function pageRows(): Row[] {
  const scripts = firstPageScripts();
  const bytes = scripts.reduce((sum, name) => sum + gzipSync(readFileSync(root + name)).length, 0);
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
