/**
 * What has changed between two states of the racks, and what do other racks look like with the same
 * changes? So two tabs can both change racks: of each finish the change that came last counts, and
 * a rack that one tab takes away while the other changes it stays, whichever came first.
 *
 * Racks in and out; bottles are told alike throughout a rack, as the finishes changed last tell
 * them. `withChanges(before, changesBetween(before, after))` equals `after`.
 */
import { bottlesOf, type Finish } from '../../finish/finish.ts';
import { withBottlesOn } from '../../finish/rack/edit.ts';
import type { Rack } from '../../finish/rack/rack.ts';

export interface RackChanges {
  /** The rack with its changes, for where there is none of its id. */
  readonly whole: Rack;
  /** Everything but the finishes, where any of it has changed. */
  readonly head: Omit<Rack, 'finishes'> | undefined;
  readonly put: readonly Finish[];
  readonly removed: ReadonlySet<string>;
  /** Ids in their order, where it has changed. */
  readonly order: readonly string[] | undefined;
}
export interface Changes {
  readonly changed: ReadonlyMap<string, RackChanges>;
  /** Racks that were taken away, as they were then. */
  readonly removed: ReadonlyMap<string, Rack>;
  /** Ids of the racks in their order, where it has changed. */
  readonly order: readonly string[] | undefined;
}

type Racks = readonly Rack[];
interface Named {
  readonly id: string;
}

const isSame = (one: unknown, other: unknown): boolean =>
  one === other || (other !== undefined && JSON.stringify(one) === JSON.stringify(other));
const byId = <T extends Named>(all: readonly T[]): Map<string, T> =>
  new Map(all.map((one) => [one.id, one]));
const idsOf = (all: readonly Named[]): string[] => all.map(({ id }) => id);
const missingFrom = (after: ReadonlyMap<string, unknown>, before: readonly Named[]): Set<string> =>
  new Set(idsOf(before).filter((id) => !after.has(id)));

/** Everything that has changed from one state of the racks to another. */
export function changesBetween(before: Racks, after: Racks): Changes {
  const [were, are] = [byId(before), byId(after)];
  const changed = new Map<string, RackChanges>();
  for (const rack of after) {
    const change = changeOf(were.get(rack.id), rack);
    if (change !== undefined) changed.set(rack.id, change);
  }
  const removed = byId(before.filter(({ id }) => !are.has(id)));
  return { changed, removed, order: newOrder(before, after) };
}

/** Whether nothing has changed. */
export const isNothing = ({ changed, removed, order }: Changes): boolean =>
  changed.size === 0 && removed.size === 0 && order === undefined;

/** The new order, unless it follows from leaving out alone. */
function newOrder(before: readonly Named[], after: readonly Named[]): string[] | undefined {
  const ids = idsOf(after);
  const remain = new Set(ids);
  return isSame(
    idsOf(before).filter((id) => remain.has(id)),
    ids,
  )
    ? undefined
    : ids;
}

function changeOf(before: Rack | undefined, after: Rack): RackChanges | undefined {
  if (before === after) return undefined;
  const { finishes, ...head } = after;
  const { finishes: finishesBefore, ...headBefore } = before ?? { finishes: [] };
  const [were, are] = [byId(finishesBefore), byId(finishes)];
  const change: RackChanges = {
    whole: after,
    head: isSame(headBefore, head) ? undefined : head,
    put: finishes.filter((finish) => !isSame(were.get(finish.id), finish)),
    removed: missingFrom(are, finishesBefore),
    order: newOrder(finishesBefore, finishes),
  };
  const isEmpty =
    change.head === undefined &&
    change.put.length === 0 &&
    change.removed.size === 0 &&
    change.order === undefined;
  return isEmpty ? undefined : change;
}

/** Other racks with the same changes; what they do not touch keeps its identity. */
export function withChanges(racks: Racks, changes: Changes): Racks {
  if (isNothing(changes)) return racks;
  const known = new Set(idsOf(racks));
  const stay = racks
    // One that was changed meanwhile is another than the one that was taken away.
    .filter((rack) => !isSame(rack, changes.removed.get(rack.id)))
    .map((rack) => {
      const change = changes.changed.get(rack.id);
      return change === undefined ? rack : withRackChanges(rack, change);
    });
  const fresh = [...changes.changed.values()]
    .map(({ whole }) => whole)
    .filter(({ id }) => !known.has(id));
  return inOrder([...stay, ...fresh], changes.order);
}

function withRackChanges(rack: Rack, { head, put, removed, order }: RackChanges): Rack {
  const fresh = byId(put);
  const stay = rack.finishes
    .filter(({ id }) => !removed.has(id))
    .map((finish) => {
      const changed = fresh.get(finish.id);
      fresh.delete(finish.id);
      return changed ?? finish;
    });
  const finishes = inOrder([...stay, ...fresh.values()], order);
  const told = new Map(put.flatMap(bottlesOf).map((bottle) => [bottle.id, bottle]));
  const { finishes: _, ...headBefore } = rack;
  const merged: Rack = { ...(head ?? headBefore), finishes: [...finishes] };
  return told.size === 0 ? merged : withBottlesOn(merged, told);
}

/** In this order; what it does not name stays behind what it stood behind. */
export function inOrder<T extends Named>(
  all: readonly T[],
  order: readonly string[] | undefined,
): readonly T[] {
  if (order === undefined) return all;
  const rank = new Map(order.map((id, at) => [id, at]));
  const followers = new Map<T | undefined, T[]>();
  const ranked: T[] = [];
  let ahead: T | undefined;
  for (const one of all) {
    if (rank.has(one.id)) {
      ahead = one;
      ranked.push(one);
    } else if (followers.has(ahead)) followers.get(ahead)!.push(one);
    else followers.set(ahead, [one]);
  }
  ranked.sort((one, other) => rank.get(one.id)! - rank.get(other.id)!);
  return [undefined, ...ranked].flatMap((one) => [
    ...(one === undefined ? [] : [one]),
    ...(followers.get(one) ?? []),
  ]);
}
