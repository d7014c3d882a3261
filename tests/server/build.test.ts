/** What the first start says while it builds the page: no warnings that a builder cannot act on. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

it('building the page warns of nothing, and no script of it asks for a disk', () => {
  const outDir = mkdtempSync(join(tmpdir(), 'testspoon-'));
  const { NODE_ENV: _, ...env } = process.env;
  const order = ['build', '--config', 'src/app/vite.config.ts', '--outDir', outDir];
  try {
    const { stdout, stderr, status } = spawnSync(
      process.execPath,
      ['node_modules/vite/bin/vite.js', ...order, '--logLevel', 'warn'],
      { cwd: root, env, encoding: 'utf8' },
    );
    expect({ status, said: stdout + stderr }).toEqual({ status: 0, said: '' });
    const scripts = readdirSync(join(outDir, 'assets')).filter((name) => name.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(10);
    for (const name of scripts) {
      expect(readFileSync(join(outDir, 'assets', name), 'utf8'), name).not.toMatch(/["']node:/);
    }
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}, 60_000);
