/**
 * Which are the best combinations that plainly differ? Taken from all in order, one after another,
 * every one that differs from each taken before: by CIEDE2000 of `plainlyDifferent` or more, as worn
 * in the build's light, in at least one open part [Sharma2005].
 *
 * The first ones come from the cheapest of all, in order. Where those are not enough, each further one
 * is the best of a search of its own, in which what looks like an earlier one is forbidden. Neither
 * search may leave out anything because of rows that were not taken.
 */
import { ciede2000 } from '../colour/difference.ts';
import type { Lab } from '../ground/unit.ts';
import { plainlyDifferent } from '../score/judgement.ts';
import { type Assigned, type Network, never, type Rest } from './network.ts';
import type { RankingProblem } from './problem/problem.ts';
import { type Asked, best, type Found } from './solve/solve.ts';

/** Rows looked at in order, for every row wanted, before searches of their own. */
const lookedAt = 3;

/** At most `count` cheapest assignments, each plainly different from all before it. */
export function bestDifferent(problem: RankingProblem, asked: Asked): Found {
  const taken = new Taken(problem);
  const ordered = (found: Found): Found => ({
    ...found,
    best: taken.from(found.best).slice(0, asked.count),
    isProved: false,
  });
  const most = lookedAt * asked.count;
  const { tell } = asked;
  const first = best(problem.network, {
    ...asked,
    count: most,
    ...(tell && { tell: (soFar: Found) => tell(ordered(soFar)) }),
  });
  const { best: rows, bound } = ordered(first);
  const isAll = rows.length === asked.count || first.best.length < most;
  if (!first.isProved || isAll) return { ...first, best: rows, isProved: first.isProved };
  return searchedFurther(problem, asked, taken, { ...first, best: rows, bound });
}

/** Goes on with one search for each further row. */
function searchedFurther(
  problem: RankingProblem,
  asked: Asked,
  taken: Taken,
  before: Found,
): Found {
  const { tell } = asked;
  const network = taken.without(problem.network);
  let soFar = before;
  for (const row of before.best) taken.take(row);
  for (;;) {
    const now = (found: Found): Found => ({
      ...soFar,
      best: [...soFar.best, ...found.best],
      steps: soFar.steps + found.steps,
      isProved: false,
    });
    const found = best(network, {
      ...asked,
      count: 1,
      ...(tell && { tell: (one: Found) => tell(now(one)) }),
    });
    soFar = now(found);
    const isEnd = found.best.length === 0 || soFar.best.length === asked.count;
    if (!found.isProved || isEnd) return { ...soFar, isProved: found.isProved };
    taken.take(found.best[0]!);
  }
}

/** Whether value a of variable i looks like a row, at [i][a]. */
type Likeness = readonly Uint8Array[];

/** Rows taken, and what looks like one of them. */
class Taken {
  readonly #labs: readonly (readonly Lab[] | undefined)[];
  readonly #rows: Likeness[] = [];
  readonly #known = new WeakMap<Assigned, Likeness>();

  constructor({ judged, variables }: RankingProblem) {
    this.#labs = variables.slots.map((_, i) => {
      const at = variables.of.indexOf(i);
      // What shows nowhere makes no difference.
      if (at < 0) return undefined;
      const candidates = judged.terms.candidates[at]!;
      return Array.from(variables.candidateOf[at]!, (c) => candidates[c]!.worn.lab);
    });
  }

  take(row: Assigned): void {
    this.#rows.push(this.#likenessOf(row));
  }

  /** Of rows in order those that differ from each one before. */
  from(rows: readonly Assigned[]): Assigned[] {
    const taken: Likeness[] = [];
    return rows.filter((row) => {
      if (looksLikeOne(taken, row.values)) return false;
      taken.push(this.#likenessOf(row));
      return true;
    });
  }

  /** The network with all that looks like a row taken forbidden, rows that are taken later too. */
  without(network: Network): Network {
    const rows = this.#rows;
    const { rest } = network;
    const lookalikes: Rest = {
      cost: (values) => (looksLikeOne(rows, values) ? never : (rest?.cost(values) ?? 0)),
      bound: (values) => (looksLikeOne(rows, values) ? never : (rest?.bound(values) ?? 0)),
    };
    return { ...network, rest: lookalikes };
  }

  #likenessOf(row: Assigned): Likeness {
    const known = this.#known.get(row);
    if (known !== undefined) return known;
    const found = this.#labs.map((labs, i) => {
      if (labs === undefined) return Uint8Array.of();
      const own = labs[row.values[i]!]!;
      return Uint8Array.from(labs, (lab) => (ciede2000(own, lab) < plainlyDifferent ? 1 : 0));
    });
    this.#known.set(row, found);
    return found;
  }
}

/** Whether an assignment looks like a row, however values not chosen yet (-1) are. */
function looksLikeOne(rows: readonly Likeness[], values: Int32Array): boolean {
  return rows.some((row) =>
    row.every((isAlike, i) => (values[i]! < 0 ? !isAlike.includes(0) : isAlike[values[i]!] !== 0)),
  );
}
