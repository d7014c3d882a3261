/**
 * Tables in which many schemes of one alternative can be tried quickly: the build as if any part
 * could wear every finish that parts or alternatives of it name and that it would take. Finishes
 * that are only embedded, left over from a start for example, nobody has in mind: they stay out.
 *
 * (A finish that a change leaves nowhere could shift a family; what is promised is worked out on the
 * changed build itself.)
 */
import type { Alternative, Build, FinishRef } from '../../build/build.ts';
import { assignmentOf, finishesByRef } from '../../build/build.ts';
import { undecidedRef } from '../../build/edit/part.ts';
import { fittedBuild } from '../../build/fitted.ts';
import { brokenRules } from '../../build/rule.ts';
import type { SightTable } from '../../car/table.ts';
import { scoreKeys } from '../evidence.ts';
import { type Judged, type Judging, judge } from '../judged.ts';
import { type Worn, wornFrom } from '../seen/worn.ts';
import { overallOf } from '../terms.ts';
import type { Change } from './remedy.ts';
import { namedFor, takerOf } from './takes.ts';

export interface Bench {
  /** Finishes to try here, with what they are to the scores. */
  readonly pool: readonly {
    readonly ref: FinishRef;
    readonly worn: Worn;
    readonly family: number;
  }[];
  /** Overall 0–100, and each score's cost in halvings, with these changes made. */
  try(changes: readonly Change[]): { readonly overall: number; readonly costs: Float64Array };
  /** Positions of the rules broken with these changes made. */
  broken(changes: readonly Change[]): readonly number[];
}

/** Whether a part could wear a finish, by their ids. */
export type Takes = (part: string, ref: FinishRef) => boolean;

/** The tables for one alternative of a build, its fitted parts and what they take. */
export function benchFor(judged: Judged, alternative: Alternative, takes: Takes): Bench {
  const { build, sight, judging } = judged.from;
  const fitted = fittedBuild(build);
  const named = new Set(fitted.parts.flatMap((part) => namedFor(fitted, part)));
  // Primer stands for a choice to come; to go back to it mends nothing.
  named.delete(undecidedRef);
  return benchOf(build, sight, judging, alternative, [...named], takes);
}

/** What each part could wear. */
export function takesIn(judged: Judged): Takes {
  const { build, terms, light } = judged;
  const finishes = finishesByRef(build);
  const known = new Map(
    terms.candidates.flatMap((list) => list.map(({ worn }) => [worn.ref, worn] as const)),
  );
  const wornAs = (ref: FinishRef): Worn => {
    const worn = known.get(ref) ?? wornFrom(ref, finishes.get(ref)!, light);
    known.set(ref, worn);
    return worn;
  };
  const takers = new Map(
    build.parts.flatMap((part) => {
      const at = terms.scene.positions.get(part.id);
      if (at === undefined) return [];
      const named = terms.candidates[at]!.map(({ worn }) => worn);
      return [[part.id, takerOf(named, terms.scene.surfaces[at]!)] as const];
    }),
  );
  return (part, ref) => takers.get(part)?.(wornAs(ref)) ?? false;
}

function benchOf(
  build: Build,
  sight: SightTable,
  judging: Judging,
  alternative: Alternative,
  refs: readonly FinishRef[],
  takes: Takes,
): Bench {
  // What alternatives name, parts may wear: so each finish gets one that puts it everywhere.
  const everywhere = refs.map(
    (ref): Alternative => ({
      id: 'tried',
      name: 'tried',
      choices: Object.fromEntries(
        build.parts.flatMap(({ id }) => (takes(id, ref) ? [[id, ref]] : [])),
      ),
    }),
  );
  const judged = judge(
    { ...build, alternatives: [...build.alternatives, ...everywhere] },
    sight,
    judging,
  );
  const { terms } = judged;
  const worn = assignmentOf(judged.build, alternative);
  const base = judged.choiceOf(worn);
  const changed = (changes: readonly Change[]): Int32Array => {
    const choice = base.slice();
    for (const { part, finish } of changes) {
      const at = terms.scene.positions.get(part)!;
      choice[at] = terms.candidates[at]!.findIndex((one) => one.worn.ref === finish);
    }
    return choice;
  };
  const byRef = new Map(
    terms.candidates.flatMap((list, at) =>
      list.map(({ worn: one }, c) => [one.ref, { worn: one, family: terms.familyOf[at]![c]! }]),
    ),
  );
  return {
    pool: refs.flatMap((ref) => {
      const known = byRef.get(ref);
      return known === undefined ? [] : [{ ref, ...known }];
    }),
    try: (changes) => {
      const costs = terms.costs(changed(changes), new Float64Array(scoreKeys.length));
      return { overall: overallOf(costs, build.weights), costs };
    },
    broken: (changes) => {
      const assignment = new Map(worn);
      for (const { part, finish } of changes) assignment.set(part, finish);
      const facts = judged.factsOf(changed(changes));
      return brokenRules(judged.build, assignment, facts).map(({ index }) => index);
    },
  };
}
