/** Long work says so while it runs, on standard error only; quick work stays silent. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const run = (work: string) =>
  spawnSync(
    process.execPath,
    [
      '--import',
      'tsx',
      '--input-type=module',
      '--eval',
      `import { told } from './src/cli/draw/progress.ts'; console.log(await told('Sanding', () => { ${work} }));`,
    ],
    { cwd: root, encoding: 'utf8' },
  );

describe('progress', () => {
  it('is told while the work holds the main thread, and the result still comes', () => {
    const { stdout, stderr, status } = run(
      'const end = Date.now() + 3000; while (Date.now() < end); return "smooth";',
    );
    expect(status).toBe(0);
    expect(stdout).toBe('smooth\n');
    expect(stderr).toContain('Sanding …');
  });

  it('is not told of quick work, and a fault comes through', () => {
    expect(run('return "smooth";').stderr).toBe('');
    const { status, stderr } = run('throw new Error("sanded through");');
    expect(status).not.toBe(0);
    expect(stderr).toContain('sanded through');
  });
});
