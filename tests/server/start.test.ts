/** `npm start`: builds what is missing, says where the page is, and explains a bad or taken port. */
import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
let child: ChildProcess | undefined;
afterEach(() => {
  child?.kill();
});

/** Starts the server on `port`; resolves with all it said once it is ready or has ended. */
function started(port: string): Promise<{ said: string; status: number | null }> {
  const own = spawn(process.execPath, ['--import', 'tsx', 'src/server/start.ts'], {
    cwd: root,
    env: { ...process.env, PORT: port },
  });
  child = own;
  let said = '';
  return new Promise((resolve) => {
    const hear = (part: Buffer): void => {
      said += part.toString();
      if (said.includes('Ctrl+C')) resolve({ said, status: null });
    };
    own.stdout.on('data', hear);
    own.stderr.on('data', hear);
    own.on('close', (status) => resolve({ said, status }));
  });
}

describe('npm start', () => {
  it('serves the page on this machine only and prints its address', async () => {
    const { said } = await started('0');
    const address = said.match(/http:\/\/127\.0\.0\.1:\d+\//)?.[0];
    expect(address).toBeDefined();
    const page = await fetch(address ?? '');
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Testspoon</title>');
  });

  it('says when the port is taken and how to choose another', async () => {
    const holder = createServer();
    await new Promise<void>((resolve) => {
      holder.listen(0, '127.0.0.1', resolve);
    });
    const address = holder.address();
    const port = typeof address === 'object' ? String(address?.port) : '';
    const { said, status } = await started(port);
    holder.close();
    expect(status).toBe(1);
    expect(said).toContain(`Port ${port} is taken`);
    expect(said).toMatch(/PORT=\d+ npm start/);
    expect(said).not.toContain('    at ');
  });

  it('refuses a port that is none', async () => {
    const { said, status } = await started('seventy');
    expect(status).toBe(1);
    expect(said).toContain('PORT is "seventy"');
  });
});
