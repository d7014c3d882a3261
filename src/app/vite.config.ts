/**
 * How the page is built: from `src/app` into `dist/app`, with addresses relative to the page so
 * that it works from any folder of any static host. Nothing is inlined as data or script, so that
 * the strict content policy in `index.html` holds.
 */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { schemas } from './schemas.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** What is known of a module when it is put into a piece. */
interface Known {
  getModuleInfo(id: string): {
    readonly importedIds: readonly string[];
    readonly dynamicallyImportedIds: readonly string[];
  } | null;
}

/** Modules that a page needs: at once, or also those it may fetch later. */
function neededBy(page: string, known: Known, isLaterToo: boolean): ReadonlySet<string> {
  const needed = new Set([here(page)]);
  for (const id of needed) {
    const info = known.getModuleInfo(id);
    for (const next of info?.importedIds ?? []) needed.add(next);
    if (isLaterToo) for (const next of info?.dynamicallyImportedIds ?? []) needed.add(next);
  }
  return needed;
}

/** What both pages need at once, what the round's page may fetch later, and the rest of the bench. */
const pieces = ['both', 'shared', 'first'] as const;

type Needs = Readonly<Record<'bench' | 'round' | 'roundEver', ReadonlySet<string>>>;
const needs = new WeakMap<Known, Needs>();

/**
 * The piece a module goes into; none for what is fetched later or needed by the round's page alone,
 * which the build divides well by itself. What both may fetch must not lie with the bench's own
 * beginning, which would lay out a bench in the round's page.
 */
function pieceOf(id: string, known: Known): (typeof pieces)[number] | null {
  const { bench, round, roundEver } = needs.get(known) ?? {
    bench: neededBy('main.tsx', known, false),
    round: neededBy('round/main.tsx', known, false),
    roundEver: neededBy('round/main.tsx', known, true),
  };
  needs.set(known, { bench, round, roundEver });
  if (!bench.has(id)) return null;
  return round.has(id) ? 'both' : roundEver.has(id) ? 'shared' : 'first';
}

export default defineConfig({
  root: here('.'),
  base: './',
  plugins: [react(), schemas()],
  worker: { format: 'es' },
  build: {
    outDir: here('../../dist/app'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The stage with its 3D library is one piece of 570 kB, fetched once the page stands and can be used.
    chunkSizeWarningLimit: 600,
    rolldownOptions: {
      // The bench, and the page of those who are asked.
      input: { index: here('index.html'), round: here('round.html') },
      // On a slow machine it would tell which plugins took long; a builder can change none of them.
      checks: { bundlerTimings: false },
      // The glTF reader would fetch these to read from a disk, which a page never asks of it.
      external: (id, importer) =>
        /^node:(fs|path)$/.test(id) && (importer?.includes('@gltf-transform') ?? false),
      output: {
        // What a page needs at once comes as one file, but for what both pages need; what is fetched
        // later stays in its own pieces.
        codeSplitting: {
          groups: pieces.map((piece, at) => ({
            name: (id: string, known: Known) => (pieceOf(id, known) === piece ? piece : null),
            // A piece takes along what its modules import, unless another has taken that before.
            priority: pieces.length - at,
          })),
        },
      },
    },
  },
});
