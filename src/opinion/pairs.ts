/**
 * Which two does a viewer compare next? More than three alternatives at once are hard to weigh on a
 * phone, so they are put in pairs: the one that won stays and meets the next in the viewer's order.
 * After one pair fewer than there are alternatives a leader is found. Asked for more places, pairs
 * go on only where the answers so far do not already say who is ahead.
 *
 * In: the letters in the viewer's order, and the pairs answered so far. Out: the next pair or none,
 * and the leader. Limits: takes one viewer's word that what beats a winner beats what it beat;
 * no pair is put twice, so a change of mind is a new start.
 */
import type { Pair } from './answer.ts';

/** Where the comparing stands. */
interface Standing {
  /** Letters whose place is found, the best first. */
  readonly places: readonly string[];
  /** Who is ahead for the next place, and whom it meets; absent once `places` is as long as asked. */
  readonly open?: { readonly ahead: string; readonly meets: string };
}

/** How many alternatives are shown at once; more are put in pairs. Our judgement, for a phone. */
export const mostAtOnce = 3;

/**
 * The next pair to put, or undefined once so many places from the top are found. The side on which
 * the one ahead stands changes from pair to pair, so that neither side is the winner's.
 */
export function nextPair(
  order: readonly string[],
  pairs: readonly Pair[],
  places = 1,
): readonly [string, string] | undefined {
  const { open } = standing(order, pairs, places);
  if (open === undefined) return undefined;
  const { ahead, meets } = open;
  return pairs.length % 2 === 0 ? [ahead, meets] : [meets, ahead];
}

/** The letter that is ahead: the first of the order before anything is answered; none of nothing. */
export function leaderOf(order: readonly string[], pairs: readonly Pair[]): string | undefined {
  const { places, open } = standing(order, pairs, 1);
  return places[0] ?? open?.ahead;
}

/** The places found so far, the best first, `places` at most. */
export const placesOf = (
  order: readonly string[],
  pairs: readonly Pair[],
  places: number,
): readonly string[] => standing(order, pairs, places).places;

/** How many pairs are left until there is a leader. */
export function pairsLeft(order: readonly string[], pairs: readonly Pair[]): number {
  const { open } = standing(order, pairs, 1);
  return open === undefined ? 0 : order.length - order.indexOf(open.meets);
}

function standing(order: readonly string[], pairs: readonly Pair[], wanted: number): Standing {
  const isAhead = aheadBy(pairs);
  const found: string[] = [];
  let left = [...order];
  while (found.length < wanted && left.length > 0) {
    let ahead = left[0]!;
    for (const meets of left.slice(1)) {
      if (isAhead(ahead, meets)) continue;
      if (!isAhead(meets, ahead)) return { places: found, open: { ahead, meets } };
      ahead = meets;
    }
    found.push(ahead);
    left = left.filter((letter) => letter !== ahead);
  }
  return { places: found };
}

/** Whether one was chosen over the other, or over one that was, and so on. */
function aheadBy(pairs: readonly Pair[]): (one: string, other: string) => boolean {
  const beaten = new Map<string, Set<string>>();
  for (const { chosen, over } of pairs) {
    beaten.set(chosen, (beaten.get(chosen) ?? new Set()).add(over));
  }
  return (one, other) => {
    const reached = new Set([one]);
    for (const letter of reached) for (const next of beaten.get(letter) ?? []) reached.add(next);
    return one !== other && reached.has(other);
  };
}
