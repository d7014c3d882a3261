/**
 * Photographs of sprayed bowls, taken once for each finish and light as soon as the studio runs,
 * a few at a time so that the page stays quick; drawn bowls stand in until then. Bowls that have
 * left the page before their turn are not taken, and of thousands only the latest are kept.
 */
import { useEffect, useSyncExternalStore } from 'react';
import type { LightId } from '../../colour/illuminant.ts';
import type { Finish } from '../../finish/finish.ts';
import { useStudio } from './studio.ts';

type Photographs = Map<LightId, string>;
/** By finish, those taken longest ago first. */
const taken = new Map<Finish, Photographs>();
/** About 20 kB each (our judgement: many screens of spoons). */
const mostTaken = 1200;
/** How many bowls on the page wait for each picture. */
const waiting = new Map<Finish, Map<LightId, number>>();
const watchers = new Set<() => void>();
/** The page gets its turn again after this long, ms. */
const turnMs = 12;
let isDeveloping = false;

/** Address of the picture of a bowl; undefined until it has been taken. */
export function useBowlPicture(finish: Finish, light: LightId): string | undefined {
  const picture = useSyncExternalStore(watch, () => taken.get(finish)?.get(light));
  useEffect(() => {
    if (picture !== undefined) return;
    ask(finish, light);
    return () => forget(finish, light);
  }, [picture, finish, light]);
  return picture;
}

function watch(told: () => void): () => void {
  watchers.add(told);
  return () => watchers.delete(told);
}

function ask(finish: Finish, light: LightId): void {
  const lights = waiting.get(finish) ?? new Map<LightId, number>();
  waiting.set(finish, lights.set(light, (lights.get(light) ?? 0) + 1));
  develop();
}

function forget(finish: Finish, light: LightId): void {
  const lights = waiting.get(finish);
  const others = (lights?.get(light) ?? 0) - 1;
  if (others > 0) lights?.set(light, others);
  else lights?.delete(light);
  if (lights?.size === 0) waiting.delete(finish);
}

function develop(): void {
  if (isDeveloping || waiting.size === 0) return;
  if (useStudio.getState().photograph === undefined) return;
  isDeveloping = true;
  setTimeout(() => {
    const start = performance.now();
    for (const [finish, lights] of waiting) {
      waiting.delete(finish);
      for (const light of lights.keys()) take(finish, light);
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
  taken.delete(finish);
  taken.set(finish, known.set(light, picture));
  const oldest = taken.keys().next().value;
  if (taken.size > mostTaken && oldest !== undefined) taken.delete(oldest);
}

// Spoons asked for before the studio ran are taken when it does.
useStudio.subscribe((now, before) => {
  if (now.photograph !== before.photograph) develop();
});
