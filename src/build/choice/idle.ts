/**
 * Which rules speak of a finish that its part cannot wear any more? Candidates come and go; a rule
 * that waits for one that has gone stays in the build, but is never called upon.
 *
 * Looks at candidates, settled finishes, and what alternatives put on settled parts.
 */
import { type Build, type FinishRef, isOpen, type Rule } from '../build.ts';

/** A part and a finish that it cannot wear. */
export interface Unworn {
  readonly part: string;
  readonly finish: FinishRef;
}

/** What keeps a rule from ever applying; none where it may. */
export function neverApplies(build: Build, rule: Rule): Unworn[] {
  if (rule.kind === 'if-then') return unwornOf(build, [rule.when]);
  return rule.kind === 'never-together' ? unwornOf(build, [rule.first, rule.second]) : [];
}

/** Finishes that a rule asks of a part though the part cannot wear them. */
export const idleWishes = (build: Build, rule: Rule): Unworn[] =>
  rule.kind === 'if-then'
    ? unwornOf(
        build,
        rule.wants.oneOf.map((finish) => ({ part: rule.wants.part, finish })),
      )
    : [];

const unwornOf = (build: Build, wishes: readonly Unworn[]): Unworn[] =>
  wishes.filter(({ part, finish }) => !canWear(build, part, finish));

function canWear(build: Build, id: string, finish: FinishRef): boolean {
  const part = build.parts.find((one) => one.id === id);
  if (part === undefined) return false;
  return isOpen(part)
    ? part.candidates.includes(finish)
    : part.finish === finish || build.alternatives.some(({ choices }) => choices[id] === finish);
}
