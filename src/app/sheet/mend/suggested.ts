/**
 * Remedies of the open work. They are looked for beside the page, once the cars are up and nothing
 * has changed for a moment, so that no change ever waits for them. What was found for a build is
 * kept with it: undo has it back at once.
 */
import { useSyncExternalStore } from 'react';
import type { Build } from '../../../build/build.ts';
import type { SightTable } from '../../../car/table.ts';
import type { Remedy } from '../../../score/remedy/remedy.ts';
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

/** Remedies for one finding, by its place in the alternative's evidence; none until found. */
export function useRemedies(alternative: string, at: number): readonly Remedy[] {
  const { build } = useWork();
  const read = (): readonly Remedy[] => known.get(build)?.get(alternative)?.[at] ?? none;
  return useSyncExternalStore(listen, read);
}

const none: readonly Remedy[] = [];

function listen(listener: () => void): () => void {
  listeners.add(listener);
  searchOnceCalm();
  return () => {
    listeners.delete(listener);
  };
}
