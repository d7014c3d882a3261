/**
 * Which are the best combinations that plainly differ? The best of all, then again and again the best
 * of those that differ from every one before: by CIEDE2000 of `plainlyDifferent` or more, as worn in
 * the build's light, in at least one open part [Sharma2005].
 *
 * Every row is the answer of a search of its own, in which what looks like an earlier row is
 * forbidden; so a search may leave out what costs more than its best, and nothing else is missed.
 */
import { ciede2000 } from '../colour/difference.ts';
import { plainlyDifferent } from '../score/judgement.ts';
import { type Assigned, type Network, never, type Rest } from './network.ts';
import type { RankingProblem } from './problem/problem.ts';
import { type Asked, best, type Found } from './solve/solve.ts';

/** At most `count` cheapest assignments, each plainly different from all before it. */
export function bestDifferent(problem: RankingProblem, asked: Asked): Found {
  const likenesses: Likeness[] = [];
  const network = withoutLookalikes(problem.network, likenesses);
  const accepted: Assigned[] = [];
  let bound: number | undefined;
  let steps = 0;
  for (;;) {
    const now = (found: Found, isProved: boolean): Found => ({
      best: found.best.length === 0 ? [...accepted] : [...accepted, found.best[0]!],
      bound: bound ?? found.bound,
      isProved,
      steps: steps + found.steps,
    });
    const found = best(network, {
      ...asked,
      count: 1,
      tell: (soFar) => asked.tell?.(now(soFar, false)),
    });
    const soFar = now(found, false);
    const isEnd = found.best.length === 0 || soFar.best.length === asked.count;
    if (!found.isProved || isEnd) return { ...soFar, isProved: found.isProved };
    ({ bound, steps } = soFar);
    accepted.push(found.best[0]!);
    likenesses.push(likenessOf(problem, found.best[0]!));
  }
}

/** Whether value a of variable i looks like a row, at [i][a]. */
type Likeness = readonly Uint8Array[];

function likenessOf({ judged, variables }: RankingProblem, { values }: Assigned): Likeness {
  return variables.slots.map(({ refs }, i) => {
    const at = variables.of.indexOf(i);
    // What shows nowhere makes no difference.
    if (at < 0) return new Uint8Array(refs.length).fill(1);
    const labs = Array.from(
      variables.candidateOf[at]!,
      (c) => judged.terms.candidates[at]![c]!.worn.lab,
    );
    const own = labs[values[i]!]!;
    return Uint8Array.from(labs, (lab) => (ciede2000(own, lab) < plainlyDifferent ? 1 : 0));
  });
}

/** The network with all that looks like one of the rows forbidden, rows that are added later too. */
function withoutLookalikes(network: Network, rows: readonly Likeness[]): Network {
  const looksLikeOne = (values: Int32Array): boolean =>
    rows.some((row) =>
      row.every((isAlike, i) =>
        values[i]! < 0 ? !isAlike.includes(0) : isAlike[values[i]!] === 1,
      ),
    );
  const { rest } = network;
  const lookalikes: Rest = {
    cost: (values) => (looksLikeOne(values) ? never : (rest?.cost(values) ?? 0)),
    bound: (values) => (looksLikeOne(values) ? never : (rest?.bound(values) ?? 0)),
  };
  return { ...network, rest: lookalikes };
}
