/**
 * Builds `dist/cli.js`: the whole terminal program in one file that plain Node runs from any
 * folder. Racks, sight tables and the demo are embedded (see `shelf.ts`), packages are bundled.
 */
import { chmodSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Lets a shell start the file by name. */
const executable: Plugin = {
  name: 'executable',
  writeBundle: () => chmodSync(at('../../dist/cli.js'), 0o755),
};

export default defineConfig({
  root: at('../..'),
  plugins: [executable],
  publicDir: false,
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: 'src/cli/main.ts',
    target: 'node20',
    outDir: 'dist',
    // `dist/app` is built by its own room and stays.
    emptyOutDir: false,
    rolldownOptions: {
      output: { entryFileNames: 'cli.js', codeSplitting: false, banner: '#!/usr/bin/env node' },
    },
  },
});
