/**
 * Tells on standard error that long work is under way, once it has taken a second. Scoring keeps
 * the main thread busy, so the clock runs in a thread of its own and writes by itself.
 */
import { Worker } from 'node:worker_threads';

/** What the ticking thread runs: plain JavaScript, since it is started from its text. */
const ticking = `
const { workerData } = require('node:worker_threads');
const { writeSync } = require('node:fs');
const { label, isTerminal } = workerData;
const started = Date.now();
const tell = () => {
  const seconds = Math.round((Date.now() - started) / 1000);
  try {
    writeSync(2, isTerminal ? '\\r' + label + ' … ' + seconds + ' s' : label + ' …\\n');
  } catch {}
};
setTimeout(() => { tell(); setInterval(tell, isTerminal ? 1000 : 10000); }, 1000);
`;

/** Runs `work`; where it takes over a second, says so on standard error until it is done. */
export async function told<T>(label: string, work: () => T | Promise<T>): Promise<T> {
  const isTerminal = process.stderr.isTTY === true;
  const started = Date.now();
  const ticker = new Worker(ticking, {
    eval: true,
    workerData: { label, isTerminal },
    // Loaders of the main thread would have to answer from it, and it is busy.
    execArgv: [],
  });
  // A machine that cannot start the thread still gets its result.
  ticker.on('error', () => {});
  ticker.unref();
  try {
    return await work();
  } finally {
    await ticker.terminate();
    if (isTerminal && Date.now() - started > 1000) process.stderr.write('\r\u001b[2K');
  }
}
