/** Which scripts of the built page load which others? Read from `dist/app`; run `npm run build` first. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const root = fileURLToPath(new URL('../../dist/app/', import.meta.url));

/** `import … from "./x.js"`, `import "./x.js"`, `export … from "./x.js"`. */
const atOnce = /(?:from|import)\s*["'](\.[^"']+\.js)["']/g;
/** `import("./x.js")`, and addresses of workers. */
const later = /(?:import|new URL)\(\s*["'`](\.[^"'`]+\.js)["'`]/g;

/**
 * Scripts reachable from these by what the patterns find, themselves included, but not through
 * those that are there already.
 */
function reachable(
  from: readonly string[],
  patterns: readonly RegExp[],
  there: readonly string[] = [],
): Set<string> {
  const found = new Set<string>();
  const queue = [...from];
  for (let name = queue.pop(); name !== undefined; name = queue.pop()) {
    if (found.has(name) || there.includes(name)) continue;
    found.add(name);
    queue.push(...importsOf(name, patterns));
  }
  return found;
}

function importsOf(name: string, patterns: readonly RegExp[]): string[] {
  const code = readFileSync(root + name, 'utf8');
  return patterns.flatMap((pattern) =>
    [...code.matchAll(pattern)].map((match) =>
      new URL(match[1]!, `http://page/${name}`).pathname.slice(1),
    ),
  );
}

/** Every script that index.html loads at once, with what those import without waiting. */
export function firstPageScripts(): string[] {
  if (!existsSync(`${root}index.html`)) {
    throw new Error('dist/app is missing; run `npm run build` first');
  }
  const html = readFileSync(`${root}index.html`, 'utf8');
  const named = [...html.matchAll(/<(?:script|link)\b[^>]*?(?:src|href)="([^"]+\.js)"/g)].map(
    (match) => new URL(match[1]!, 'http://page/').pathname.slice(1),
  );
  return [...reachable(named, [atOnce])].sort();
}

/**
 * Scripts fetched after the first page for what chunks of these names bring, however they are
 * reached from there.
 * @throws Error where the page loads no such chunk later.
 */
export function lazyScripts(chunks: readonly string[]): string[] {
  const first = firstPageScripts();
  const lazy = first.flatMap((name) => importsOf(name, [later]));
  const roots = chunks.map((chunk) => {
    const found = lazy.find((name) => name.startsWith(`assets/${chunk}-`));
    if (found === undefined) throw new Error(`the first page fetches no chunk ${chunk} later`);
    return found;
  });
  return [...reachable(roots, [atOnce, later], first)].sort();
}

/** Their size as a web space would send them, gzip. */
export const packedBytes = (scripts: readonly string[]): number =>
  scripts.reduce((sum, name) => sum + gzipSync(readFileSync(root + name)).length, 0);
