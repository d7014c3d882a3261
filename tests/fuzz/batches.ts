/**
 * Damaged links in batches, each from a seed of its own, so that what fails can be made again in
 * seconds. Seeds that once failed stand in `seeds.txt`, one a line, and are run first ever after.
 */
import { appendFileSync, readFileSync } from 'node:fs';
import type { Round } from '../../src/opinion/round.ts';
import { fuzz, type Outcome, stockOf } from './engine.ts';

const keptFile = new URL('seeds.txt', import.meta.url);
/** Links of one batch. */
export const batchLinks = 2000;

/** Seeds kept, in their order. */
export const keptSeeds = (): readonly number[] =>
  readFileSync(keptFile, 'utf8')
    .split('\n')
    .filter((line) => /^\d+$/.test(line))
    .map(Number);

/** Keeps a seed, once. */
export function keepSeed(seed: number): void {
  if (!keptSeeds().includes(seed)) appendFileSync(keptFile, `${seed}\n`);
}

/** All batches together, and the seeds of those in which something failed. */
export interface Batches extends Outcome {
  readonly failedSeeds: readonly number[];
}

/** So many links, rounded up to whole batches, from seeds that count up from `seed`; kept ones first. */
export function fuzzInBatches(
  rounds: readonly Round[],
  count: number,
  seed: number,
  now: () => number,
): Batches {
  const stock = stockOf(rounds);
  const fresh = Array.from({ length: Math.ceil(count / batchLinks) }, (_, at) => seed + at);
  const refused: Record<string, Record<string, number>> = {};
  const failures: string[] = [];
  const failedSeeds: number[] = [];
  let [links, asSent, asWritten, slowestMs] = [0, 0, 0, 0];
  for (const one of [...keptSeeds(), ...fresh]) {
    const batch = fuzz(stock, batchLinks, one, now);
    links += batch.links;
    asSent += batch.asSent;
    asWritten += batch.asWritten;
    slowestMs = Math.max(slowestMs, batch.slowestMs);
    for (const [damage, faults] of Object.entries(batch.refused)) {
      const sums = { ...refused[damage] };
      for (const [fault, times] of Object.entries(faults)) sums[fault] = (sums[fault] ?? 0) + times;
      refused[damage] = sums;
    }
    if (batch.failures.length > 0) failedSeeds.push(one);
    failures.push(...batch.failures.map((failure) => `seed ${one}: ${failure}`));
  }
  return { links, refused, asSent, asWritten, slowestMs, failures, failedSeeds };
}
