/**
 * How surely, and how good among ordinary schemes? What rests on hundreds of draws is worked out
 * beside the page, so that picture, numbers and sentences never wait for it. While a build is being
 * drawn the answers of the one before it are withheld rather than shown for the wrong car. Of
 * builds that come faster than answers only the newest is drawn, and none before it has been seen.
 */
import { useEffect, useState } from 'react';
import type { Build } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import type { Comparison } from '../../score/comparison.ts';
import { useWork } from '../store.ts';
import type { ToDraw } from './drawing.ts';
import { todayHere, useToday } from './today.ts';

let worker: Worker | undefined;
let running: Build | undefined;
let waiting: ToSend | undefined;
/** What the worker has been told of already. */
let sent: SightTable | undefined;
let starting: ReturnType<typeof setTimeout> | undefined;
const known = new WeakMap<Build, { readonly today: string; readonly answer: Comparison }>();
const answerFor = (build: Build): Comparison | undefined => {
  const kept = known.get(build);
  return kept?.today === todayHere() ? kept.answer : undefined;
};
const listeners = new Set<() => void>();

/** Handing a build over takes time too, which its first picture need not wait for, ms. */
const seenMs = 60;

interface ToSend {
  readonly build: Build;
  readonly sight: SightTable;
  readonly today: string;
}

function send({ build, sight, today }: ToSend): void {
  worker ??= startWorker();
  running = build;
  const toDraw: ToDraw = { build, sight: sight === sent ? undefined : sight, today };
  sent = sight;
  worker.postMessage(toDraw);
}

/** Draws the newest build that waits, once it has been seen and the one before it is done. */
function sendSoon(): void {
  clearTimeout(starting);
  starting = setTimeout(() => {
    if (running !== undefined || waiting === undefined) return;
    const newest = waiting;
    waiting = undefined;
    send(newest);
  }, seenMs);
}

function startWorker(): Worker {
  const started = new Worker(new URL('./drawing.ts', import.meta.url), { type: 'module' });
  const next = (): void => {
    running = undefined;
    sendSoon();
    for (const listener of listeners) listener();
  };
  started.addEventListener('message', ({ data }: MessageEvent<Comparison>) => {
    if (running !== undefined) known.set(running, { today: data.today, answer: data });
    next();
  });
  // One that failed, or never came, is started anew for the next build.
  started.addEventListener('error', () => {
    started.terminate();
    worker = undefined;
    sent = undefined;
    next();
  });
  return started;
}

/** The comparison with all its draws; undefined while they are being made. */
export function useDrawn(): Comparison | undefined {
  const { build, car } = useWork();
  const today = useToday();
  const [, refresh] = useState(0);
  useEffect(() => {
    const listener = (): void => refresh((count) => count + 1);
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  }, []);
  useEffect(() => {
    if (answerFor(build) !== undefined || running === build || waiting?.build === build) return;
    waiting = { build, sight: car.sight, today };
    sendSoon();
  }, [build, car.sight, today]);
  return answerFor(build);
}
