/**
 * Hands out the built page, and nothing else, to this machine. Files are listed once at the start,
 * so a path outside the folder cannot be asked for; types and ranges are sirv's work.
 */
import { statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { join } from 'node:path';
import sirv from 'sirv';

/** What the page may load and do; the same policy stands in `index.html` for other hosts. */
const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const headers: Readonly<Record<string, string>> = {
  'Content-Security-Policy': contentPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=()',
};

/** Built files carry a hash of their content in their name and never change under it. */
const isHashed = (path: string): boolean => /^\/assets\/.+-[\w-]{8}\.\w+$/.test(path);

/** A server of the files under `folder`; it does not listen yet. */
export function serverOf(folder: string): Server {
  let serveFile = filesOf(folder);
  let builtAt = lastBuilt(folder);
  return createServer((request, reply) => {
    for (const [name, value] of Object.entries(headers)) reply.setHeader(name, value);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      reply.writeHead(405, { Allow: 'GET, HEAD', 'Content-Type': 'text/plain; charset=utf-8' });
      reply.end('Files are only read here.\n');
      return;
    }
    // The files are listed once; a page built again under a running server is listed afresh.
    const now = lastBuilt(folder);
    if (now !== builtAt) {
      builtAt = now;
      serveFile = filesOf(folder);
    }
    serveFile(request, reply);
  });
}

/** When the page in `folder` was last built, ms; 0 where there is none. */
const lastBuilt = (folder: string): number =>
  statSync(join(folder, 'index.html'), { throwIfNoEntry: false })?.mtimeMs ?? 0;

function filesOf(folder: string) {
  return sirv(folder, {
    etag: true,
    onNoMatch: (_request, reply) => {
      reply.statusCode = 404;
      reply.setHeader('Content-Type', 'text/plain; charset=utf-8');
      reply.end('There is no such file here.\n');
    },
    setHeaders: (reply, path) => {
      const keep = isHashed(path) ? 'public, max-age=31536000, immutable' : 'no-cache';
      reply.setHeader('Cache-Control', keep);
    },
  });
}

/** Resolves once `server` listens on this machine's own address; rejects where it cannot. */
export function listening(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve();
    });
  });
}
