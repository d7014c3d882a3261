/**
 * A module as the page and the terminal run it: bundled as they are, in a folder of its own that goes
 * when it has been read. The loader of tests wraps every function to keep its name, which costs small
 * ones a multiple of their time.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

/** What a TypeScript module exports, `path` from the root of the repository. */
export async function bundled<Module>(path: string): Promise<Module> {
  const outDir = mkdtempSync(join(tmpdir(), 'bundled-'));
  try {
    await build({
      configFile: false,
      root: fileURLToPath(new URL('../..', import.meta.url)),
      publicDir: false,
      logLevel: 'silent',
      ssr: { noExternal: true, target: 'node' },
      build: {
        ssr: path,
        target: 'node20',
        outDir,
        rolldownOptions: { output: { entryFileNames: 'module.mjs', codeSplitting: false } },
      },
    });
    return (await import(pathToFileURL(join(outDir, 'module.mjs')).href)) as Module;
  } finally {
    rmSync(outDir, { recursive: true });
  }
}
