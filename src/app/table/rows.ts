/**
 * Which parts tell the alternatives apart? Rows of the part table, in the builder's order: those
 * that differ first, then those still open though alike, then those settled and alike. A row that
 * differed a moment ago stays where it was, so that nothing slips from under the hand.
 */

import { assignmentOf, type Build, type FinishRef, isOpen, type Part } from '../../build/build.ts';
import { fittedBuild } from '../../build/fitted.ts';

export interface Row {
  readonly part: Part;
  /** What the part wears on each alternative, in order. */
  readonly refs: readonly FinishRef[];
}
export interface Rows {
  readonly differing: readonly Row[];
  readonly alikeOpen: readonly Row[];
  readonly alikeSettled: readonly Row[];
}

/** The rows of a build's part table; parts in `kept` stay among the differing ones. */
export function rowsOf(build: Build, kept: ReadonlySet<string>): Rows {
  const assignments = build.alternatives.map((alternative) => assignmentOf(build, alternative));
  const rows = fittedBuild(build).parts.map(
    (part): Row => ({
      part,
      refs: assignments.map((assignment) => assignment.get(part.id) ?? ''),
    }),
  );
  const differs = ({ part, refs }: Row): boolean => kept.has(part.id) || new Set(refs).size > 1;
  const alike = rows.filter((row) => !differs(row));
  return {
    differing: rows.filter(differs),
    alikeOpen: alike.filter(({ part }) => isOpen(part)),
    alikeSettled: alike.filter(({ part }) => !isOpen(part)),
  };
}
