/**
 * What must be bought before this assignment can be sprayed? Counts bottles, not finishes: one
 * bottle shared by two finishes, an undercoat and a clear is bought once. A part that is painted
 * already and keeps its finish needs nothing.
 *
 * One bottle id is one thing on the shelf, whichever rack names it (`finish/shelf`).
 */
import { type Bottle, bottlesOf } from '../finish/finish.ts';
import { type Shelf, shelfFrom } from '../finish/shelf.ts';
import { type Build, type FinishRef, finishesByRef, isOpen, type Part } from './build.ts';

/** A finish for each part, by part id. */
export type Assignment = ReadonlyMap<string, FinishRef>;

/** A bottle to buy, and the parts that wait for it. */
export interface BottleToBuy {
  readonly bottle: Bottle;
  readonly parts: readonly string[];
}

/** Whether the part still has to be sprayed to wear `ref`: not painted, or painted otherwise. */
export const isToSpray = (part: Part, ref: FinishRef): boolean =>
  isOpen(part) || !part.painted || part.finish !== ref;

/** Whether the part wears other paint now, which has to come off first. */
export const isToStrip = (part: Part, ref: FinishRef): boolean =>
  !isOpen(part) && part.painted && part.finish !== ref;

const shelves = new WeakMap<Build['finishes'], Shelf>();

/**
 * Every bottle of the build by id, as the shelf holds it: on hand anywhere is on hand. The same map
 * for the same finishes.
 */
export function shelfOf(build: Build): Shelf {
  const known = shelves.get(build.finishes) ?? shelfFrom(build.finishes);
  shelves.set(build.finishes, known);
  return known;
}

/** Bottles not on hand that the assignment needs, in the order the parts first need them. */
export function bottlesToBuy(build: Build, assignment: Assignment): BottleToBuy[] {
  const finishes = finishesByRef(build);
  const shelf = shelfOf(build);
  const waiting = new Map<string, string[]>();
  for (const part of build.parts) {
    const ref = assignment.get(part.id);
    if (ref === undefined || !isToSpray(part, ref)) continue;
    const finish = finishes.get(ref);
    for (const { id } of finish === undefined ? [] : bottlesOf(finish)) {
      if (shelf.get(id)!.onHand) continue;
      waiting.set(id, [...(waiting.get(id) ?? []), part.id]);
    }
  }
  return [...waiting].map(([id, parts]) => ({ bottle: shelf.get(id)!, parts }));
}

/** Days until the last of these bottles is here when all are ordered at once; none: 0. */
export const longestLeadDays = (toBuy: readonly BottleToBuy[]): number =>
  toBuy.reduce((longest, { bottle }) => Math.max(longest, bottle.leadDays), 0);
