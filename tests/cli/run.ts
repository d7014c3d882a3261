/**
 * Runs the built terminal program as a builder would: a process of its own, started with plain
 * Node in another folder, its output piped.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const program = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
export const demoPath = fileURLToPath(new URL('../../src/build/demo.json', import.meta.url));

export interface Outcome {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}
interface Setting {
  readonly input?: string | Buffer;
  readonly env?: Readonly<Record<string, string>>;
}

/** A folder of its own for one suite. */
export const scratch = (): string => mkdtempSync(join(tmpdir(), 'testspoon-'));

/** Runs `testspoon` with these arguments and waits for its end. */
export function testspoon(args: readonly string[], setting: Setting = {}): Promise<Outcome> {
  const { PATH = '', HOME = '' } = process.env;
  const child = spawn(process.execPath, [program, ...args], {
    cwd: tmpdir(),
    env: { PATH, HOME, ...setting.env },
  });
  const gathered = { out: '', err: '' };
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    gathered.out += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    gathered.err += text;
  });
  // A program that refuses early may close its input before all of it is written.
  child.stdin.on('error', () => undefined);
  child.stdin.end(setting.input ?? '');
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, ...gathered }));
  });
}

/** The demo as a document to change, parsed afresh each time. */
export const demo = (): Record<string, unknown> => JSON.parse(readFileSync(demoPath, 'utf8'));

/** Writes a file into `folder` and returns its path. */
export function written(folder: string, name: string, content: unknown): string {
  const path = join(folder, name);
  const isText = typeof content === 'string' || Buffer.isBuffer(content);
  writeFileSync(path, isText ? content : JSON.stringify(content));
  return path;
}
