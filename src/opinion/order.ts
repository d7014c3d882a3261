/**
 * In which order does this viewer see the alternatives? What stands first is chosen more often, so
 * every viewer gets an order of their own: Fisher and Yates's shuffle in Durstenfeld's form, which
 * gives each order the same chance ([Durstenfeld1964]), driven by the seeded draws of `ground/draw`.
 *
 * In: what to put in order, and a seed of 32 bits from the caller's own chance. Out: a new list with
 * the same members; the same seed gives the same order. Limits: a seed of 32 bits reaches only some
 * of the orders of more than 12 letters.
 */
import { drawFrom } from '../ground/draw.ts';

/** The members of a list in the order that belongs to a seed, a whole number from 0 to 2^32 − 1. */
export function shuffled<Member>(members: readonly Member[], seed: number): readonly Member[] {
  const draw = drawFrom(seed);
  const order = [...members];
  for (let last = order.length - 1; last > 0; last--) {
    const at = draw.below(last + 1);
    const moved = order[last]!;
    order[last] = order[at]!;
    order[at] = moved;
  }
  return order;
}
