/**
 * Which parts are chosen together, and what can they still wear? A slot is one part, or several that
 * `same` rules tie; its values are the finishes that all its parts may wear.
 *
 * A build whose parts are all on the model, and its parts' finishes after the rules have been thought
 * through. Order: slots by their first part in the build, values by the candidates of that part.
 */
import type { Build, FinishRef, Part } from '../../build/build.ts';
import type { Domains } from '../../build/choice/choice.ts';

export interface Slot {
  /** In the order of the build. */
  readonly parts: readonly Part[];
  readonly refs: readonly FinishRef[];
}

/** Slots of a build, every part in exactly one. */
export function slotsOf(build: Build, domains: Domains): Slot[] {
  const slots = new Map<string, Part[]>();
  const leaderOf = leadersIn(build);
  for (const part of build.parts) {
    const leader = leaderOf(part.id);
    slots.set(leader, [...(slots.get(leader) ?? []), part]);
  }
  return [...slots.values()].map((parts): Slot => {
    const [first, ...others] = parts.map(({ id }) => domains.get(id)!);
    const shared = others.map((refs) => new Set(refs));
    return { parts, refs: first!.filter((ref) => shared.every((refs) => refs.has(ref))) };
  });
}

/** One part that stands for all that are tied to a part. */
function leadersIn(build: Build): (part: string) => string {
  const above = new Map<string, string>();
  const leaderOf = (part: string): string => {
    const next = above.get(part);
    return next === undefined ? part : leaderOf(next);
  };
  for (const rule of build.rules) {
    if (rule.kind !== 'same') continue;
    const leader = leaderOf(rule.parts[0]!);
    for (const part of rule.parts) {
      const other = leaderOf(part);
      if (other !== leader) above.set(other, leader);
    }
  }
  return leaderOf;
}
