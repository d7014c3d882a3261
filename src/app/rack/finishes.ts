/**
 * Which finishes are there to look through? Those of all racks, of one rack, or of the open build,
 * each as the build would embed it. The same object for the same finish, so that what was worked
 * out for it once (look, search text, photograph) is never worked out again.
 */
import { type EmbeddedFinish, refOf } from '../../build/build.ts';
import type { Finish } from '../../finish/finish.ts';
import type { Rack } from '../../finish/rack/rack.ts';

/** Where to look: the id of a rack, or one of the two below, which no id can be. */
export type Scope = string;
export const everywhere: Scope = '*';
export const inBuild: Scope = '=';

const embedded = new WeakMap<Finish, EmbeddedFinish>();

/** A finish of a rack as a build embeds it. */
function embeddedFrom(rack: string, finish: Finish): EmbeddedFinish {
  const before = embedded.get(finish);
  if (before?.rack === rack) return before;
  const now: EmbeddedFinish = { rack, ...finish };
  embedded.set(finish, now);
  return now;
}

/** The finishes of one rack as a build embeds them. */
export const finishesOf = (rack: Rack): readonly EmbeddedFinish[] =>
  rack.finishes.map((finish) => embeddedFrom(rack.id, finish));

/** Those of all racks in order, then what only the build holds. */
export function finishesIn(
  scope: Scope,
  racks: readonly Rack[],
  built: readonly EmbeddedFinish[],
): readonly EmbeddedFinish[] {
  if (scope === inBuild) return built;
  if (scope !== everywhere) return racks.filter(({ id }) => id === scope).flatMap(finishesOf);
  const shelved = racks.flatMap(finishesOf);
  const isShelved = new Set(shelved.map(refOf));
  return [...shelved, ...built.filter((finish) => !isShelved.has(refOf(finish)))];
}

/** The build's own, as it holds them, then what is on the racks besides. */
export function finishesToPick(
  racks: readonly Rack[],
  built: readonly EmbeddedFinish[],
): readonly EmbeddedFinish[] {
  const isBuilt = new Set(built.map(refOf));
  const others = racks.flatMap(finishesOf).filter((finish) => !isBuilt.has(refOf(finish)));
  return [...built, ...others];
}
