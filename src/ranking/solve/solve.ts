/**
 * Which assignments of a cost network are cheapest, and is that proved? Descents find good ones, sweeps
 * gather what is certain, and a search leaves out nothing but what costs more than the worst of those
 * kept. Stopped early, it says what nothing can cost less than.
 */
import { type Assigned, type Network, never } from '../network.ts';
import { descend, descendAgain } from './descend.ts';
import { isFew, type Layout, layoutOf } from './layout.ts';
import { Pool } from './pool.ts';
import { type Control, search } from './search.ts';
import { type Sweeping, swept } from './sweep.ts';
import { networkWithin, poolWithin } from './within.ts';

/** What is asked, and how the work is watched. */
export interface Asked {
  /** Assignments wanted, from 1. */
  readonly count: number;
  /** An assignment cheaper than one found by less than this may be missed; 5e-6 where not given. */
  readonly tolerance?: number;
  /** Asked often; true ends the work with what has been found. */
  isOver?(): boolean;
  tell?(soFar: Found): void;
}

export interface Found {
  /** Cheapest first; of equal cost the one with the earlier value where they first differ. */
  readonly best: readonly Assigned[];
  /** No assignment at all costs less. */
  readonly bound: number;
  /** The best are the cheapest there are, to the tolerance; fewer than asked where there are no more. */
  readonly isProved: boolean;
  readonly steps: number;
}

// Settled by trying on generated car graphs.
const mostSweeps = 40;
/** Looks at the clock before a first dive ends. */
const diveLooks = 2;
/** Half a thousandth of a point of a score of 100 whose costs halve it 1.4 times each. */
const usualTolerance = 5e-6;

/** The cheapest assignments of a network. */
export function best(network: Network, asked: Asked): Found {
  const { count, tolerance = usualTolerance } = asked;
  const isOver = (): boolean => asked.isOver?.() ?? false;
  const pool = new Pool(count);
  const found = (bound: number, isProved: boolean, steps: number): Found => {
    const cheapest = pool.best[0]?.cost ?? never;
    return { best: [...pool.best], bound: Math.min(bound, cheapest), isProved, steps };
  };
  if (network.sizes.some((size) => size === 0)) return found(never, true, 0);
  descend(network, pool, isOver);
  asked.tell?.(found(network.base, false, 0));
  const sweeping = { threshold: () => pool.ceiling - tolerance, isOver, mostSweeps };
  const first = swept(layoutOf(network), sweeping);
  if (first === undefined) return found(never, true, 0);
  const control: Control = {
    tolerance,
    isOver,
    tell: (steps, open) => asked.tell?.(found(open, false, steps)),
  };
  const { layout, dived } = isFew(first.sizes)
    ? { layout: first, dived: 0 }
    : lowered(network, first, pool, sweeping, control);
  if (layout === undefined) return found(never, true, dived);
  const { isWhole, bound, steps } = search(network, layout, pool, control);
  return found(isWhole ? never : bound, isWhole, dived + steps);
}

/**
 * A layout under a lower ceiling, undefined where nothing in it is below, and the steps taken. Swept costs lead a first
 * dive near the best, and often all the way; descents go on among the values that are left.
 */
function lowered(
  network: Network,
  layout: Layout,
  pool: Pool,
  sweeping: Sweeping,
  control: Control,
): { layout: Layout | undefined; dived: number } {
  let left = diveLooks;
  const isOver = (): boolean => control.isOver() || left-- < 0;
  const { isWhole, steps } = search(network, layout, pool, { ...control, isOver });
  if (isWhole) return { layout: undefined, dived: steps };
  const { origin } = layout;
  descendAgain(networkWithin(network, origin), poolWithin(pool, origin), control.isOver);
  return { layout: swept(layout, sweeping), dived: steps };
}
