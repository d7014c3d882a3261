/**
 * Remedies of the open work. They are looked for beside the page, once the cars are up and nothing
 * has changed for a moment, so that no change ever waits for them. What was found for a build is
 * kept with it: undo has it back at once.
 */
import { useSyncExternalStore } from 'react';
import type { Build } from '../../../build/build.ts';
import type { SightTable } from '../../../car/table.ts';
import { useViewing } from '../../live/viewing.ts';
import { useBench, useWork } from '../../store.ts';
import { todayHere } from '../today.ts';
import type { Mended, ToMend } from './suggesting.ts';

/** How long nothing must have changed, ms. */
const calmMs = 400;

type Found = ReadonlyMap<string, Mended['remedies']>;

let worker: Worker | undefined;
let run = 0;
let asked: Build | undefined;
let askedOn: string | undefined;
let sent: SightTable | undefined;
let calm: ReturnType<typeof setTimeout> | undefined;
const known = new WeakMap<Build, { readonly today: string; readonly found: Found }>();
const foundFor = (build: Build): Found | undefined => {
  const kept = known.get(build);
  return kept?.today === todayHere() ? kept.found : undefined;
};
const listeners = new Set<() => void>();

function startWorker(): Worker {
  const started = new Worker(new URL('./suggesting.ts', import.meta.url), { type: 'module' });
  started.addEventListener('message', ({ data }: MessageEvent<Mended>) => {
    if (data.run !== run || asked === undefined) return;
    const found = new Map(foundFor(asked)).set(data.alternative, data.remedies);
    known.set(asked, { today: todayHere(), found });
    for (const listener of listeners) listener();
  });
  // One that failed, or never came, is started anew after the next change.
  started.addEventListener('error', () => {
    started.terminate();
    worker = undefined;
    sent = undefined;
    asked = undefined;
  });
  return started;
}

function search(): void {
  const { work } = useBench.getState();
  if (work === undefined) return;
  const { build, car } = work;
  const today = todayHere();
  if (build === asked && today === askedOn) return;
  const isKnown = build.alternatives.every(({ id }) => foundFor(build)?.has(id));
  if (isKnown) return;
  worker ??= startWorker();
  asked = build;
  askedOn = today;
  run += 1;
  const sight = car.sight === sent ? undefined : car.sight;
  sent = car.sight;
  worker.postMessage({ run, build, sight, today } satisfies ToMend);
}

const isUp = (): boolean => !['drawn', 'coming'].includes(useViewing.getState().liveness);

function searchOnceCalm(): void {
  clearTimeout(calm);
  calm = setTimeout(() => {
    if (isUp() && listeners.size > 0) search();
  }, calmMs);
}

useBench.subscribe(searchOnceCalm);
// Another day may have begun.
window.addEventListener('focus', searchOnceCalm);
useViewing.subscribe((now, before) => {
  if (now.liveness !== before.liveness) searchOnceCalm();
});

/** Remedies for every finding of an alternative, in the order of its evidence, once found. */
export function useRemedies(alternative: string): Mended['remedies'] | undefined {
  const { build } = useWork();
  return useSyncExternalStore(listen, () => foundFor(build)?.get(alternative));
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  searchOnceCalm();
  return () => {
    listeners.delete(listener);
  };
}
