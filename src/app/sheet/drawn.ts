/**
 * How surely, and how good among ordinary schemes? What rests on hundreds of draws is worked out
 * beside the page, so that picture, numbers and sentences never wait for it. While a build is being
 * drawn the answers of the one before it are withheld rather than shown for the wrong car. Of
 * builds that come faster than answers only the newest is drawn.
 */
import { useEffect, useState } from 'react';
import type { Build } from '../../build/build.ts';
import type { Comparison } from '../../score/comparison.ts';
import { useWork } from '../store.ts';
import { todayHere } from './compared.ts';
import type { ToDraw } from './drawing.ts';

let worker: Worker | undefined;
let running: Build | undefined;
let waiting: ToDraw | undefined;
const known = new WeakMap<Build, Comparison>();
const listeners = new Set<() => void>();

function send(toDraw: ToDraw): void {
  worker ??= startWorker();
  running = toDraw.build;
  worker.postMessage(toDraw);
}

function startWorker(): Worker {
  const started = new Worker(new URL('./drawing.ts', import.meta.url), { type: 'module' });
  const next = (): void => {
    running = undefined;
    const newest = waiting;
    waiting = undefined;
    if (newest !== undefined) send(newest);
    for (const listener of listeners) listener();
  };
  started.addEventListener('message', ({ data }: MessageEvent<Comparison>) => {
    if (running !== undefined) known.set(running, data);
    next();
  });
  started.addEventListener('error', next);
  return started;
}

/** The comparison with all its draws; undefined while they are being made. */
export function useDrawn(): Comparison | undefined {
  const { build, car } = useWork();
  const [, refresh] = useState(0);
  useEffect(() => {
    const listener = (): void => refresh((count) => count + 1);
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  }, []);
  useEffect(() => {
    if (known.has(build) || running === build || waiting?.build === build) return;
    const toDraw = { build, sight: car.sight, today: todayHere() };
    if (running === undefined) send(toDraw);
    else waiting = toDraw;
  }, [build, car.sight]);
  return known.get(build);
}
