/**
 * Which combinations does no other beat? One beats another that is at least as good on all six scores
 * and better on one; however scores are weighed, the best is among those that none beats (the Pareto
 * set).
 *
 * A build, its car and what it is judged under in; every combination that keeps the rules is visited,
 * up to `mostVisited`, and the set is exact, or there is none. Costs nearer than a thousand-millionth
 * of a halving are taken as level, since sums in another order differ by less.
 */
import type { Build, FinishRef } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { type ScoreKey, scoreKeys } from '../../score/evidence.ts';
import type { Judged, Judging } from '../../score/judged.ts';
import { overallOf, scoreOfCost } from '../../score/terms.ts';
import { costOf, never } from '../network.ts';
import { problemOf, type RankingProblem } from '../problem/problem.ts';
import { lookEvery, scoreCount, unbeatenIn } from './beating.ts';

/** A combination that no other beats. */
export interface Unbeaten {
  /** Finish of every open part, by part id. */
  readonly choices: Readonly<Record<string, FinishRef>>;
  readonly scores: Readonly<Record<ScoreKey, number>>;
  readonly overall: number;
  /** Combinations level with it on all six, itself included. */
  readonly level: number;
}

/** The whole set, best overall first; or why there is none: too many to visit, or stopped. */
export type ParetoSet =
  | {
      readonly kind: 'whole';
      readonly points: readonly Unbeaten[];
      /** Combinations visited that keep the rules. */
      readonly keeping: number;
    }
  | { readonly kind: 'too-many'; readonly combinations: number }
  | { readonly kind: 'stopped' };

/** Combinations visited at most: some seconds, and 12 MB. */
export const mostVisited = 200_000;

const grain = 1e9;

/** The combinations that none beats. Throws `InputError` as a ranking does. */
export function paretoSet(
  build: Build,
  sight: SightTable,
  judging: Judging,
  isOver: () => boolean = () => false,
  laidOut?: Judged,
): ParetoSet {
  const problem = problemOf(build, sight, judging, laidOut);
  const combinations = problem.network.sizes.reduce((product, size) => product * size, 1);
  if (combinations > mostVisited) return { kind: 'too-many', combinations };
  const visited = visit(problem, combinations, isOver);
  if (visited === undefined) return { kind: 'stopped' };
  const unbeaten = unbeatenIn(visited.costs, visited.count, isOver);
  if (unbeaten === undefined) return { kind: 'stopped' };
  const points = unbeaten
    .map(({ at, level }): Unbeaten => {
      const costs = visited.costs.subarray(at * scoreCount, (at + 1) * scoreCount);
      return {
        choices: problem.choicesOf(valuesOf(problem, visited.numbers[at]!)),
        scores: Object.fromEntries(
          scoreKeys.map((key, k) => [key, scoreOfCost(costs[k]!)]),
        ) as Record<ScoreKey, number>,
        overall: overallOf(costs, build.weights),
        level,
      };
    })
    .sort((one, other) => other.overall - one.overall);
  return { kind: 'whole', points, keeping: visited.count };
}

interface Visited {
  /** Six costs of each combination that keeps the rules. */
  readonly costs: Float64Array;
  /** Which combination it is, counted from 0 with the last variable fastest. */
  readonly numbers: Uint32Array;
  readonly count: number;
}

/** Costs of every combination that keeps the rules; undefined where stopped. */
function visit(
  problem: RankingProblem,
  combinations: number,
  isOver: () => boolean,
): Visited | undefined {
  const { network, judged, variables } = problem;
  const { of, candidateOf } = variables;
  const costs = new Float64Array(combinations * scoreCount);
  const numbers = new Uint32Array(combinations);
  const own = new Float64Array(scoreCount);
  const choice = new Int32Array(of.length);
  let count = 0;
  for (let number = 0; number < combinations; number++) {
    if (number % lookEvery === 0 && isOver()) return undefined;
    const values = valuesOf(problem, number);
    if (costOf(network, values) >= never) continue;
    for (let at = 0; at < of.length; at++) {
      choice[at] = candidateOf[at]![of[at]! < 0 ? 0 : values[of[at]!]!]!;
    }
    judged.terms.costs(choice, own);
    for (let k = 0; k < scoreCount; k++) {
      costs[count * scoreCount + k] = Math.round(own[k]! * grain) / grain;
    }
    numbers[count++] = number;
  }
  return { costs, numbers, count };
}

function valuesOf({ network: { sizes } }: RankingProblem, number: number): Int32Array {
  const values = new Int32Array(sizes.length);
  for (let i = sizes.length - 1, rest = number; i >= 0; i--) {
    values[i] = rest % sizes[i]!;
    rest = Math.floor(rest / sizes[i]!);
  }
  return values;
}
