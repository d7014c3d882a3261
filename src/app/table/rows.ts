/**
 * Which parts tell the alternatives apart? Rows of the part table, in the builder's order: those
 * that differ first, then those still open though alike, then those settled and alike.
 */
import { assignmentOf, type Build, type FinishRef, isOpen, type Part } from '../../build/build.ts';

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

/** The rows of a build's part table. */
export function rowsOf(build: Build): Rows {
  const assignments = build.alternatives.map((alternative) => assignmentOf(build, alternative));
  const rows = build.parts.map(
    (part): Row => ({
      part,
      refs: assignments.map((assignment) => assignment.get(part.id) ?? ''),
    }),
  );
  const differs = ({ refs }: Row): boolean => new Set(refs).size > 1;
  const alike = rows.filter((row) => !differs(row));
  return {
    differing: rows.filter(differs),
    alikeOpen: alike.filter(({ part }) => isOpen(part)),
    alikeSettled: alike.filter(({ part }) => !isOpen(part)),
  };
}

/** How a part stands: open, settled, or painted already. */
export const standingOf = (part: Part): string =>
  isOpen(part) ? 'open' : part.painted ? 'painted already' : 'settled';
