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
import { todayHere } from '../compared.ts';
import type { Mended, ToMend } from './suggesting.ts';

/** How long nothing must have changed, ms. */
const calmMs = 400;

type Found = ReadonlyMap<string, Mended['remedies']>;

let worker: Worker | undefined;
let run = 0;
let asked: Build | undefined;
let sent: SightTable | undefined;
let calm: ReturnType<typeof setTimeout> | undefined;
const known = new WeakMap<Build, Found>();
const listeners = new Set<() => void>();

function startWorker(): Worker {
  const started = new Worker(new URL('./suggesting.ts', import.meta.url), { type: 'module' });
  started.addEventListener('message', ({ data }: MessageEvent<Mended>) => {
    if (data.run !== run || asked === undefined) return;
    known.set(asked, new Map(known.get(asked)).set(data.alternative, data.remedies));
    for (const listener of listeners) listener();
  });
  return started;
}

function search(): void {
  const { work } = useBench.getState();
  if (work === undefined || work.build === asked) return;
  const { build, car } = work;
  const isKnown = build.alternatives.every(({ id }) => known.get(build)?.has(id));
  if (isKnown) return;
  worker ??= startWorker();
  asked = build;
  run += 1;
  const sight = car.sight === sent ? undefined : car.sight;
  sent = car.sight;
  worker.postMessage({ run, build, sight, today: todayHere() } satisfies ToMend);
}

const isUp = (): boolean => !['drawn', 'coming'].includes(useViewing.getState().liveness);

function searchOnceCalm(): void {
  clearTimeout(calm);
  calm = setTimeout(() => {
    if (isUp() && listeners.size > 0) search();
  }, calmMs);
}

useBench.subscribe(searchOnceCalm);
useViewing.subscribe((now, before) => {
  if (now.liveness !== before.liveness) searchOnceCalm();
});

/** Remedies for every finding of an alternative, in the order of its evidence; none until found. */
export function useRemedies(alternative: string): Mended['remedies'] {
  const { build } = useWork();
  const read = (): Mended['remedies'] => known.get(build)?.get(alternative) ?? none;
  return useSyncExternalStore(listen, read);
}

const none: Mended['remedies'] = [];

function listen(listener: () => void): () => void {
  listeners.add(listener);
  searchOnceCalm();
  return () => {
    listeners.delete(listener);
  };
}
