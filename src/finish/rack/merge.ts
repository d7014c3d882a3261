/**
 * What happens to a rack when finishes from elsewhere come into it? A rack and finishes in; the rack
 * as it would be out, with counts, so that it can be told before it is done.
 *
 * A finish whose id the rack has already replaces that one, stays beside it under a free id, or is
 * passed over; one that is the same in everything changes nothing. Bottles are told alike throughout
 * the rack: what is on hand stays on hand, unless a finish that replaces another says otherwise of its
 * bottle than that one did. A rack holds 20,000 finishes; what is over stays out.
 */
import { freeId, freeName, idGiver } from '../../ground/id.ts';
import { type Bottle, bottlesOf, type Finish } from '../finish.ts';
import { mostEntries } from '../parse.ts';
import { retoldBetween, shelfFrom } from '../shelf.ts';
import { withBottlesOn } from './edit.ts';
import type { Rack } from './rack.ts';

/** What becomes of a finish whose id is there already. */
export type SameId = 'replace' | 'keep-both' | 'skip';

export interface Merged {
  readonly rack: Rack;
  /** Finishes that are new to the rack. */
  readonly added: number;
  /** Finishes with an id that was there, by what became of them. */
  readonly replaced: number;
  readonly keptBoth: number;
  readonly skipped: number;
  /** Finishes that are there already, the same in everything. */
  readonly unchanged: number;
  /** Finishes of the rack, not among these, with a bottle that is told differently now. */
  readonly retold: number;
  /** Finishes that found no room. */
  readonly over: number;
}

/** The rack with these finishes brought in; they keep the order they come in. */
export function mergedInto(rack: Rack, incoming: readonly Finish[], sameId: SameId): Merged {
  const finishes = [...rack.finishes];
  const places = new Map(finishes.map(({ id }, position) => [id, position]));
  const idOf = idGiver([...places.keys(), ...incoming.map(({ id }) => id)]);
  const retold = new Map<string, Partial<Bottle>>();
  const brought = new Set<number>();
  const count = { added: 0, replaced: 0, keptBoth: 0, skipped: 0, unchanged: 0, over: 0 };

  const bring = (finish: Finish, position: number): void => {
    finishes[position] = finish;
    places.set(finish.id, position);
    brought.add(position);
  };
  for (const finish of incoming) {
    const position = places.get(finish.id);
    const isFull = finishes.length >= mostEntries;
    if (position !== undefined && isSame(finishes[position]!, finish)) {
      count.unchanged += 1;
    } else if (position !== undefined && sameId === 'skip') {
      count.skipped += 1;
    } else if (position !== undefined && sameId === 'replace') {
      count.replaced += 1;
      for (const [id, anew] of retoldBetween(finishes[position], finish)) {
        retold.set(id, { ...retold.get(id), ...anew });
      }
      bring(finish, position);
    } else if (isFull) {
      count.over += 1;
    } else if (position === undefined) {
      count.added += 1;
      bring(finish, finishes.length);
    } else {
      count.keptBoth += 1;
      bring(renamed(finish, idOf(finish.id)), finishes.length);
    }
  }
  const shelf = shelfFrom([...rack.finishes, ...finishes]);
  const told = new Map(
    finishes.flatMap((finish, position) =>
      brought.has(position)
        ? bottlesOf(finish).map(({ id }) => [id, { ...shelf.get(id)!, ...retold.get(id) }] as const)
        : [],
    ),
  );
  const merged = withBottlesOn({ ...rack, finishes }, told);
  const others = merged.finishes.filter(
    (finish, position) => !brought.has(position) && !isSame(finish, finishes[position]!),
  ).length;
  return { rack: merged, ...count, retold: others };
}

/** A rack from elsewhere under an id and a name that none of these has. */
export const besideOthers = (racks: readonly Rack[], rack: Rack): Rack => ({
  ...rack,
  id: freeId(
    rack.id,
    racks.map(({ id }) => id),
    'rack',
  ),
  name: freeName(
    rack.name,
    racks.map(({ name }) => name),
  ),
});

/** The finish under another id; a bottle of its own goes with it, since the two are told apart. */
function renamed(finish: Finish, id: string): Finish {
  const { bottle } = finish;
  const hasOwn = bottle !== undefined && bottle.id === finish.id;
  return { ...finish, id, ...(hasOwn && { bottle: { ...bottle, id } }) };
}

/** Whether two finishes are the same in everything, in whatever order their fields stand. */
const isSame = (one: Finish, other: Finish): boolean =>
  one === other || inOrder(one) === inOrder(other);
const inOrder = (finish: Finish): string =>
  JSON.stringify(finish, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
