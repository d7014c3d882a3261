/** Bringing parts into a standing, and what a part wears and is called that has only been added. */
import { type Build, type FinishRef, isOpen } from '../../build/build.ts';
import { openPart, setAbsent, settlePart } from '../../build/edit/part.ts';
import type { Standing } from './standing.ts';

/** Brings a part into a standing; one that is not on the model keeps what it was for later. */
export function bring(build: Build, id: string, standing: Standing): Build {
  if (standing === 'absent') return setAbsent(build, id, true);
  const there = setAbsent(build, id, false);
  return standing === 'open' ? openPart(there, id) : settlePart(there, id, standing === 'painted');
}

/** The finish that most parts of the build are settled on, or may wear. */
export function commonest(build: Build): FinishRef {
  const counts = new Map<FinishRef, number>();
  for (const part of build.parts) {
    for (const ref of isOpen(part) ? part.candidates : [part.finish]) {
      counts.set(ref, (counts.get(ref) ?? 0) + 1);
    }
  }
  return [...counts].sort(([, one], [, other]) => other - one)[0]?.[0] ?? '';
}

/** Names of parts of the car, by their ids. */
export const carPartNames = (
  parts: readonly { readonly id: string; readonly name: string }[],
): ((id: string) => string) => {
  const names = new Map(parts.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
};
