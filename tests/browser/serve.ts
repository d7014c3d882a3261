/**
 * A plain static host for the built page, under a sub-path, as any web space would serve it. Notes
 * every address asked for that is not a file, so that a journey can tell that nothing was missing.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';

const kinds: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
};

export interface Host {
  /** Address of the page, with its sub-path and a slash at the end. */
  readonly url: string;
  /** Paths asked for that were not there. */
  readonly missing: string[];
  close(): Promise<void>;
}

/**
 * Serves `folder` under `subPath` (`/some/where/`) on a free port of this machine; `isPacked` sends
 * files compressed by gzip, as web spaces do.
 */
export async function serve(folder: string, subPath: string, isPacked = false): Promise<Host> {
  const missing: string[] = [];
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const inside = pathname.startsWith(subPath) ? pathname.slice(subPath.length) : undefined;
    const path = join(folder, normalize(inside === '' ? 'index.html' : (inside ?? '?')));
    if (!path.startsWith(folder) || !existsSync(path) || !statSync(path).isFile()) {
      missing.push(pathname);
      response.writeHead(404).end();
      return;
    }
    const type = kinds[extname(path)] ?? 'application/octet-stream';
    const file = readFileSync(path);
    if (isPacked) {
      response.writeHead(200, { 'content-type': type, 'content-encoding': 'gzip' });
      response.end(gzipSync(file));
    } else response.writeHead(200, { 'content-type': type }).end(file);
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${subPath}`,
    missing,
    close: () => new Promise((closed) => server.close(() => closed())),
  };
}
