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
      // On a slow machine it would tell which plugins took long; a builder can change none of them.
      checks: { bundlerTimings: false },
      // The glTF reader would fetch these to read from a disk, which a page never asks of it.
      external: (id, importer) =>
        /^node:(fs|path)$/.test(id) && (importer?.includes('@gltf-transform') ?? false),
      output: {
        // What the first page needs comes as one file; what is fetched later stays in its own pieces.
        codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] },
      },
    },
  },
});
