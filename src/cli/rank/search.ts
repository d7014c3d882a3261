/**
 * The search itself, in a thread of its own: so the terminal can tell how far it is and hear Ctrl-C
 * while it goes on. Stopped by either, or by the clock, it ends with what has been found.
 *
 * The thread runs this same program once more; a question in its `workerData` says that it is one.
 */
import { fileURLToPath } from 'node:url';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import type { Build } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { InputError, type Problem } from '../../ground/problem.ts';
import { type RuleCosts, ruleCosts } from '../../ranking/answer/price.ts';
import { type Sureness, surenessOf } from '../../ranking/answer/sure.ts';
import { stoppedSentence } from '../../ranking/answer/words.ts';
import { rankBuild } from '../../ranking/rank.ts';
import type { Ranking, Wanted } from '../../ranking/ranking.ts';

export interface ToSearch {
  readonly build: Build;
  readonly sight: SightTable;
  readonly wanted: Wanted;
  /** Undefined: until all is proved. */
  readonly limitSeconds: number | undefined;
}

/** A ranking with what was found out about it. */
export interface Found {
  readonly ranking: Ranking;
  readonly sureness: Sureness;
  /** Undefined where there is no rule. */
  readonly costs: RuleCosts | undefined;
}

type Told =
  | { readonly kind: 'so-far'; readonly sentence: string }
  | { readonly kind: 'found'; readonly found: Found }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

interface Task extends ToSearch {
  /** One whole number, not 0 once the search is to end. */
  readonly stop: Int32Array;
}

/** The price of the rules is asked for so long at most, s. */
const pricingSeconds = 20;

/** What has been found, and whether Ctrl-C ended the search. A second Ctrl-C ends the program. */
export function searched(asked: ToSearch): Promise<{ found: Found; isInterrupted: boolean }> {
  const stop = new Int32Array(new SharedArrayBuffer(4));
  const interrupt = (): void => {
    Atomics.store(stop, 0, 1);
  };
  process.once('SIGINT', interrupt);
  const task: Task = { ...asked, stop };
  const thread = new Worker(fileURLToPath(import.meta.url), { workerData: { task } });
  const isTerminal = process.stderr.isTTY === true;
  let last = Date.now() - (isTerminal ? 0 : 9000);
  return new Promise<{ found: Found; isInterrupted: boolean }>((resolve, reject) => {
    thread.on('message', (told: Told) => {
      if (told.kind === 'found') {
        resolve({ found: told.found, isInterrupted: Atomics.load(stop, 0) !== 0 });
      } else if (told.kind === 'refused') {
        reject(new InputError(told.problems));
      } else if (isTerminal || Date.now() - last >= 10_000) {
        last = Date.now();
        process.stderr.write(isTerminal ? `\r\u001b[2K${told.sentence}` : `${told.sentence}\n`);
      }
    });
    thread.on('error', reject);
  }).finally(() => {
    process.off('SIGINT', interrupt);
    if (isTerminal) process.stderr.write('\r\u001b[2K');
  });
}

/** Whether this is such a thread; it has then answered its question. */
export function answeredAsThread(): boolean {
  const task: Task | undefined = workerData?.task;
  if (task === undefined) return false;
  try {
    tell({ kind: 'found', found: find(task) });
  } catch (fault) {
    if (!(fault instanceof InputError)) throw fault;
    tell({ kind: 'refused', problems: fault.problems });
  }
  return true;
}

const tell = (told: Told): void => parentPort?.postMessage(told);

function find({ build, sight, wanted, limitSeconds, stop }: Task): Found {
  const within = (seconds: number | undefined): (() => boolean) => {
    const start = Date.now();
    return () =>
      Atomics.load(stop, 0) !== 0 ||
      (seconds !== undefined && Date.now() - start >= 1000 * seconds);
  };
  let next = Date.now() + 1000;
  const ranking = rankBuild(build, sight, wanted, {
    isOver: within(limitSeconds),
    tell(soFar) {
      if (Date.now() < next) return;
      next = Date.now() + 1000;
      tell({ kind: 'so-far', sentence: stoppedSentence(soFar) });
    },
  });
  const isOver = within(Math.min(limitSeconds ?? pricingSeconds, pricingSeconds));
  return {
    ranking,
    sureness: surenessOf(build, sight, wanted, ranking.rows),
    costs:
      build.rules.length === 0 ? undefined : ruleCosts(build, sight, wanted, { isOver }, ranking),
  };
}
