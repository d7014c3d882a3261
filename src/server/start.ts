/**
 * `npm start`: builds the page where that is needed, serves it on this machine and says where.
 * `PORT` changes the port, 4173 otherwise; 0 lets the system choose one.
 */
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { isStale } from './freshness.ts';
import { listening, serverOf } from './serve.ts';

const defaultPort = 4173;
const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const app = at('dist/app');
/** Everything the page is made of. */
const sources = [
  ...['ground', 'colour', 'finish', 'car', 'build', 'score', 'stage', 'app'].map((room) =>
    at(`src/${room}`),
  ),
  at('models'),
  at('palettes'),
  at('package-lock.json'),
];

async function start(): Promise<void> {
  const port = portFrom(process.env.PORT);
  if (isStale(`${app}/index.html`, sources)) {
    console.log(
      'Building the page; this takes a few seconds and is done again only after changes.',
    );
    await build({ configFile: at('src/app/vite.config.ts'), logLevel: 'warn' });
  }
  const server = serverOf(app);
  await listening(server, port);
  const { port: actual } = server.address() as AddressInfo;
  console.log(`Testspoon is ready: http://127.0.0.1:${actual}/`);
  console.log('Ctrl+C stops it.');
}

/** The port asked for. Throws where `PORT` is not a port. */
function portFrom(text: string | undefined): number {
  if (text === undefined || text === '') return defaultPort;
  const port = Number(text);
  if (/^\d+$/.test(text) && port <= 65_535) return port;
  throw new Error(`PORT is ${JSON.stringify(text)}, but must be a whole number from 0 to 65535.`);
}

start().catch((error: NodeJS.ErrnoException & { port?: number }) => {
  const next = (error.port ?? defaultPort) + 1;
  const isRefused = error.code === 'EADDRINUSE' || error.code === 'EACCES';
  const why = error.code === 'EADDRINUSE' ? 'is taken by another program' : 'may not be used';
  console.error(
    isRefused
      ? `Port ${error.port} ${why}. Choose another: PORT=${next <= 1024 ? defaultPort : next} npm start`
      : `Testspoon could not start. ${error.message}`,
  );
  process.exitCode = 1;
});
