/**
 * What stands on the shelf, when several finishes and racks name one bottle? One id is one thing:
 * on hand anywhere is on hand, and of differing lead times the longest counts (our judgement: the
 * cautious reading of tellings that disagree).
 *
 * Finishes in, bottles by id out. A finish that comes in never empties the shelf; only somebody who
 * says otherwise of the bottle itself does (`Retold`).
 */
import { type Bottle, bottlesOf, type Finish, withBottles } from './finish.ts';

export type Shelf = ReadonlyMap<string, Bottle>;

/** Every bottle of these finishes, named as the first of them names it. */
export function shelfFrom(finishes: Iterable<Finish>): Map<string, Bottle> {
  const shelf = new Map<string, Bottle>();
  for (const finish of finishes) {
    for (const bottle of bottlesOf(finish)) {
      const known = shelf.get(bottle.id);
      shelf.set(bottle.id, known === undefined ? bottle : together(known, bottle));
    }
  }
  return shelf;
}

const together = (known: Bottle, bottle: Bottle): Bottle => ({
  ...known,
  onHand: known.onHand || bottle.onHand,
  leadDays: Math.max(known.leadDays, bottle.leadDays),
});

/** What is said anew of bottles, by id; a field left out stays as it is told. */
export type Retold = ReadonlyMap<string, Partial<Omit<Bottle, 'id'>>>;

const fields = ['name', 'onHand', 'leadDays'] as const;

/** What one telling of a finish says of its bottles otherwise than the one before. */
export function retoldBetween(before: Finish | undefined, after: Finish): Retold {
  if (before === undefined) return new Map();
  const were = new Map(bottlesOf(before).map((bottle) => [bottle.id, bottle]));
  return new Map(
    bottlesOf(after).flatMap((bottle) => {
      const was = were.get(bottle.id);
      const changed = fields.filter((field) => was !== undefined && was[field] !== bottle[field]);
      if (changed.length === 0) return [];
      return [[bottle.id, Object.fromEntries(changed.map((field) => [field, bottle[field]]))]];
    }),
  );
}

/** The finish with what is said anew of its bottles; the same object where nothing is. */
export const withRetold = <Kind extends Finish>(finish: Kind, retold: Retold): Kind =>
  retold.size === 0
    ? finish
    : withBottles(
        finish,
        new Map(
          bottlesOf(finish).map((bottle) => [bottle.id, { ...bottle, ...retold.get(bottle.id) }]),
        ),
      );

/**
 * Finishes among which one has come in, all telling its bottles as the shelf has them; `before` is
 * the same finish as it was, where it has changed, and what it says anew then counts.
 */
export function withShelved<Kind extends Finish>(
  finishes: readonly Kind[],
  shelf: Shelf,
  incoming: Finish,
  before?: Finish,
): Kind[] {
  const retold = retoldBetween(before, incoming);
  const told = new Map(
    bottlesOf(incoming).map((bottle) => {
      const known = shelf.get(bottle.id);
      const shelved = known === undefined ? bottle : together(known, bottle);
      return [bottle.id, { ...shelved, ...retold.get(bottle.id) }];
    }),
  );
  return finishes.map((finish) => withBottles(finish, told));
}
