/**
 * Which combinations of the open choices are best? A build, its car's sight table and what is wanted
 * in; the best rows out, exactly, or the best found and what nothing can beat where the search was
 * stopped. The order is the sheet's: every row is scored again by it.
 */
import { bottlesToBuy } from '../build/bottles.ts';
import type { Build } from '../build/build.ts';
import type { SightTable } from '../car/table.ts';
import { InputError, shown } from '../ground/problem.ts';
import { type Evidence, scoreKeys } from '../score/evidence.ts';
import type { Judged } from '../score/judged.ts';
import { isUnbeaten, numbersOf, reasonsFor } from '../score/sheet.ts';
import { scoreOfCost } from '../score/terms.ts';
import { bestDifferent } from './different.ts';
import type { Assigned } from './network.ts';
import { problemOf, type RankingProblem } from './problem/problem.ts';
import { refuseWhereNoneIsLeft } from './problem/refuse.ts';
import type { RankedRow, Ranking, Wanted, Watch } from './ranking.ts';
import { type Asked, best, type Found } from './solve/solve.ts';

/** Rows that can be asked for. */
const mostRows = 1000;

/**
 * Ranks the combinations of a build. Throws `InputError` where there is nothing to rank, too much, or
 * no combination that keeps the rules. A build laid out before may be handed in, to save that work.
 */
export function rankBuild(
  build: Build,
  sight: SightTable,
  wanted: Wanted,
  watch: Watch = {},
  laidOut?: Judged,
): Ranking {
  checkCount(wanted.count);
  const problem = problemOf(build, sight, wanted, laidOut);
  const told = (found: Found): Ranking => rankingOf(problem, found);
  const asked: Asked = {
    count: wanted.count,
    isOver: () => watch.isOver?.() ?? false,
    ...(watch.tell === undefined ? {} : { tell: (soFar: Found) => watch.tell?.(told(soFar)) }),
  };
  const found = wanted.isDifferent ? bestDifferent(problem, asked) : best(problem.network, asked);
  if (found.isProved && found.best.length === 0) refuseWhereNoneIsLeft(build);
  return told(found);
}

function checkCount(count: number): void {
  if (Number.isInteger(count) && count >= 1 && count <= mostRows) return;
  throw new InputError([
    {
      place: 'rows wanted',
      found: shown(count),
      expected: `a whole number from 1 to ${mostRows}`,
      mend: 'Ask for as many rows as you want to look at.',
    },
  ]);
}

/**
 * A ranking as it stands. Rows are scored when they are first looked at, and the evidence of a row is
 * gathered when that is; copying a ranking, to a worker or as JSON, looks at everything.
 */
function rankingOf(problem: RankingProblem, { best: all, bound, isProved, steps }: Found): Ranking {
  let rows: readonly RankedRow[] | undefined;
  return {
    open: problem.open,
    combinations: problem.open.reduce(
      (product, { candidates }) => product * BigInt(candidates.length),
      1n,
    ),
    get rows() {
      rows ??= rowsOf(problem, all);
      return rows;
    },
    isProved,
    atMost: scoreOfCost(bound),
    steps,
  };
}

/** Rows in the order of the sheet's overalls; level ones in the order of candidates. */
function rowsOf(problem: RankingProblem, all: readonly Assigned[]): RankedRow[] {
  const { judged, choicesOf, assignmentOf } = problem;
  const scored = all.map(({ values }) => {
    const assignment = assignmentOf(values);
    const choice = judged.choiceOf(assignment);
    const costs = judged.terms.costs(choice, new Float64Array(scoreKeys.length));
    return { values, assignment, choice, costs, numbers: numbersOf(costs, judged.build.weights) };
  });
  scored.sort(
    (one, other) =>
      other.numbers.overall - one.numbers.overall || inOrder(one.values, other.values),
  );
  const costs = scored.map((one) => one.costs);
  return scored.map(({ values, assignment, choice, numbers }, k): RankedRow => {
    const place = String(k + 1);
    let evidence: readonly Evidence[] | undefined;
    return {
      choices: choicesOf(values),
      toBuy: bottlesToBuy(judged.build, assignment),
      sheet: {
        id: `rank-${place}`,
        letter: place,
        name: place,
        ...numbers,
        pareto: isUnbeaten(costs, k),
        broken: [],
        get evidence() {
          evidence ??= reasonsFor(judged, choice);
          return evidence;
        },
      },
    };
  });
}

/** Which of two assignments has the earlier value where they first differ. */
function inOrder(one: Int32Array, other: Int32Array): number {
  const at = one.findIndex((value, i) => value !== other[i]);
  return at < 0 ? 0 : one[at]! - other[at]!;
}
