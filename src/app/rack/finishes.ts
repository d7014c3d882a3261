/**
 * Which finishes are there to look through? Those of all racks, of one rack, or of the open build,
 * each as the build would embed it. The same object for the same finish, so that what was worked
 * out for it once (look, search text, photograph) is never worked out again. A bottle that any rack
 * or the build has on hand is on hand in all of them.
 */
import { type EmbeddedFinish, refOf } from '../../build/build.ts';
import { bottlesOf, type Finish } from '../../finish/finish.ts';
import type { Rack } from '../../finish/rack/rack.ts';
import { type Retold, withRetold } from '../../finish/shelf.ts';

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
  const told = (finishes: readonly EmbeddedFinish[]) => toldByAll(finishes, racks, built);
  if (scope === inBuild) return told(built);
  if (scope !== everywhere) return told(racks.filter(({ id }) => id === scope).flatMap(finishesOf));
  const shelved = racks.flatMap(finishesOf);
  const isShelved = new Set(shelved.map(refOf));
  return told([...shelved, ...built.filter((finish) => !isShelved.has(refOf(finish)))]);
}

/** The build's own, as it holds them, then what is on the racks besides. */
export function finishesToPick(
  racks: readonly Rack[],
  built: readonly EmbeddedFinish[],
): readonly EmbeddedFinish[] {
  const isBuilt = new Set(built.map(refOf));
  const others = racks.flatMap(finishesOf).filter((finish) => !isBuilt.has(refOf(finish)));
  return toldByAll([...built, ...others], racks, built);
}

/** The finishes with every bottle on hand that is on hand anywhere. */
function toldByAll(
  finishes: readonly EmbeddedFinish[],
  racks: readonly Rack[],
  built: readonly EmbeddedFinish[],
): readonly EmbeddedFinish[] {
  const onHand = onlySomewhereOnHand(racks, built);
  return onHand.size === 0 ? finishes : finishes.map((finish) => onHandAs(finish, onHand));
}

/** Bottles that one rack or the build has on hand while another would buy them. */
function onlySomewhereOnHand(racks: readonly Rack[], built: readonly EmbeddedFinish[]): Retold {
  const [there, missing] = [new Set<string>(), new Set<string>()];
  for (const finishes of [built, ...racks.map((rack) => rack.finishes)]) {
    for (const finish of finishes) {
      for (const { id, onHand } of bottlesOf(finish)) (onHand ? there : missing).add(id);
    }
  }
  return new Map([...there].filter((id) => missing.has(id)).map((id) => [id, { onHand: true }]));
}

const shown = new WeakMap<EmbeddedFinish, { readonly for: string; readonly as: EmbeddedFinish }>();

function onHandAs(finish: EmbeddedFinish, onHand: Retold): EmbeddedFinish {
  const own = bottlesOf(finish).filter((bottle) => !bottle.onHand && onHand.has(bottle.id));
  if (own.length === 0) return finish;
  const key = own.map(({ id }) => id).join();
  const before = shown.get(finish);
  if (before?.for === key) return before.as;
  const as = withRetold(finish, onHand);
  shown.set(finish, { for: key, as });
  return as;
}
