/**
 * Photographs of sprayed bowls, taken once for each finish and light as soon as the studio runs,
 * a few at a time so that the page stays quick; drawn bowls stand in until then.
 */
import { useEffect, useSyncExternalStore } from 'react';
import type { LightId } from '../../colour/illuminant.ts';
import type { Finish } from '../../finish/finish.ts';
import { useStudio } from './studio.ts';

type Photographs = Map<LightId, string>;
const taken = new WeakMap<Finish, Photographs>();
const waiting = new Map<Finish, Set<LightId>>();
const watchers = new Set<() => void>();
/** The page gets its turn again after this long, ms. */
const turnMs = 12;
let isDeveloping = false;

/** Address of the picture of a bowl; undefined until it has been taken. */
export function useBowlPicture(finish: Finish, light: LightId): string | undefined {
  const picture = useSyncExternalStore(watch, () => taken.get(finish)?.get(light));
  useEffect(() => {
    if (picture === undefined) ask(finish, light);
  }, [picture, finish, light]);
  return picture;
}

function watch(told: () => void): () => void {
  watchers.add(told);
  return () => watchers.delete(told);
}

function ask(finish: Finish, light: LightId): void {
  const lights = waiting.get(finish) ?? new Set();
  waiting.set(finish, lights.add(light));
  develop();
}

function develop(): void {
  if (isDeveloping || waiting.size === 0) return;
  if (useStudio.getState().photograph === undefined) return;
  isDeveloping = true;
  setTimeout(() => {
    const start = performance.now();
    for (const [finish, lights] of waiting) {
      waiting.delete(finish);
      for (const light of lights) take(finish, light);
      if (performance.now() - start > turnMs) break;
    }
    isDeveloping = false;
    for (const told of watchers) told();
    develop();
  });
}

function take(finish: Finish, light: LightId): void {
  const picture = useStudio.getState().photograph?.(finish, light);
  if (picture === undefined) return;
  const known = taken.get(finish) ?? new Map<LightId, string>();
  taken.set(finish, known.set(light, picture));
}

// Spoons asked for before the studio ran are taken when it does.
useStudio.subscribe((now, before) => {
  if (now.photograph !== before.photograph) develop();
});
