/**
 * Before any suite: the terminal program is built again where it is missing or older than what it
 * is made of, so that its tests always run the file a builder would run.
 */
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { isStale } from '../../src/server/freshness.ts';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

export async function setup(): Promise<void> {
  const sources = ['src', 'models', 'palettes', 'package.json'].map(at);
  if (!isStale(at('dist/cli.js'), sources)) return;
  await build({ configFile: at('src/cli/vite.config.ts'), logLevel: 'warn' });
}
