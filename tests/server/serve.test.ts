/** The page is served from its own folder only, typed, under a strict policy, read-only. */
import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isStale } from '../../src/server/freshness.ts';
import { listening, serverOf } from '../../src/server/serve.ts';

const outside = mkdtempSync(join(tmpdir(), 'testspoon-serve-'));
const app = join(outside, 'app');
let server: Server;
let port: number;

beforeAll(async () => {
  mkdirSync(join(app, 'assets'), { recursive: true });
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  writeFileSync(join(app, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(app, 'assets', 'main-a1B2c3D4.js'), 'export {}');
  writeFileSync(join(app, 'assets', 'car-a1B2c3D4.glb'), 'glTF');
  writeFileSync(join(app, '.hidden'), 'hidden');
  server = serverOf(app);
  await listening(server, 0);
  port = (server.address() as AddressInfo).port;
});
afterAll(() => {
  server.close();
  rmSync(outside, { recursive: true });
});

/** A request with the path exactly as written; `fetch` would tidy it first. */
const ask = (path: string, method = 'GET') =>
  new Promise<{ status: number; headers: NodeJS.Dict<string | string[]>; text: string }>(
    (resolve, reject) => {
      request({ port, path, method, host: '127.0.0.1' }, (reply) => {
        let text = '';
        reply.setEncoding('utf8').on('data', (part: string) => {
          text += part;
        });
        reply.on('end', () =>
          resolve({ status: reply.statusCode ?? 0, headers: reply.headers, text }),
        );
      })
        .on('error', reject)
        .end();
    },
  );

describe('the page server', () => {
  it('serves the page, its script and a model under their right types', async () => {
    const page = await ask('/');
    expect(page).toMatchObject({ status: 200, text: '<!doctype html><title>page</title>' });
    expect(page.headers['content-type']).toMatch(/^text\/html;\s?charset=utf-8$/);
    const script = await ask('/assets/main-a1B2c3D4.js');
    expect(script.headers['content-type']).toMatch(/^text\/javascript/);
    const model = await ask('/assets/car-a1B2c3D4.glb');
    expect(model.headers['content-type']).toBe('model/gltf-binary');
  });

  it('lets nothing but its own files through the policy', async () => {
    const { headers } = await ask('/');
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['content-security-policy']).toContain("script-src 'self'");
    expect(headers['content-security-policy']).not.toMatch(/script-src[^;]*unsafe/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
  });

  it('keeps hashed files for good and asks again for the page', async () => {
    expect((await ask('/assets/main-a1B2c3D4.js')).headers['cache-control']).toContain('immutable');
    expect((await ask('/')).headers['cache-control']).toBe('no-cache');
  });

  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '//secret.txt',
    '/.hidden',
    '/no-such-file',
    '/%E0%A4%A',
  ])('does not find %s', async (path) => {
    const { status, text } = await ask(path);
    expect(status).toBe(404);
    expect(text).not.toContain('secret');
    expect(text).not.toContain('hidden');
  });

  it('serves a page that was built again while it runs, new files and all', async () => {
    writeFileSync(join(app, 'assets', 'main-z9Y8x7W6.js'), 'export const again = 1;');
    writeFileSync(
      join(app, 'index.html'),
      '<!doctype html><title>a longer page, built again</title>',
    );
    utimesSync(join(app, 'index.html'), 2e9, 2e9);
    expect((await ask('/')).text).toMatch(/a longer page, built again<\/title>$/);
    expect((await ask('/assets/main-z9Y8x7W6.js')).text).toBe('export const again = 1;');
  });

  it('only reads', async () => {
    const { status, headers } = await ask('/', 'POST');
    expect(status).toBe(405);
    expect(headers.allow).toBe('GET, HEAD');
    expect(await ask('/', 'HEAD')).toMatchObject({ status: 200, text: '' });
  });

  it('says when its port is taken', async () => {
    const second = serverOf(app);
    await expect(listening(second, port)).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});

describe('the page is built again', () => {
  const folder = mkdtempSync(join(tmpdir(), 'testspoon-fresh-'));
  const at = (name: string, seconds: number): string => {
    const path = join(folder, name);
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, '');
    utimesSync(path, seconds, seconds);
    return path;
  };
  const settle = (path: string): void => utimesSync(path, 1000, 1000);

  it('when missing, or older than any file deep in its sources, and not otherwise', () => {
    at('src/deep/a.ts', 1000);
    const src = join(folder, 'src');
    for (const path of [join(src, 'deep'), src]) settle(path);
    const built = at('dist/index.html', 2000);
    expect(isStale(join(folder, 'nothing'), [src])).toBe(true);
    expect(isStale(built, [src])).toBe(false);
    at('src/deep/a.ts', 3000);
    expect(isStale(built, [src])).toBe(true);
  });

  it('when a file was taken away', () => {
    const path = at('lib/a.ts', 1000);
    const built = at('dist/index.html', 2000);
    settle(join(folder, 'lib'));
    expect(isStale(built, [join(folder, 'lib')])).toBe(false);
    rmSync(path);
    expect(isStale(built, [join(folder, 'lib')])).toBe(true);
  });
});
