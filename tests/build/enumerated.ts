/**
 * The slow oracle for thinking about rules: every combination of a small build, each rule judged
 * straight from its own words, with no narrowing.
 */
import { type Build, finishesByRef, isOpen, type Rule } from '../../src/build/build.ts';
import { bottlesOf } from '../../src/finish/finish.ts';

/** A finish for every part, by part id. */
export type WornBy = Record<string, string>;

/** Every combination of what these parts can wear. */
export function combinationsOf(domains: ReadonlyMap<string, readonly string[]>): WornBy[] {
  let all: WornBy[] = [{}];
  for (const [part, refs] of domains) {
    all = all.flatMap((worn) => refs.map((one) => ({ ...worn, [part]: one })));
  }
  return all;
}

/** What every part of the build can wear: its candidates, or the finish it is settled on. */
export const wearable = (build: Build): Map<string, readonly string[]> =>
  new Map(build.parts.map((part) => [part.id, isOpen(part) ? part.candidates : [part.finish]]));

export const everyCombination = (build: Build): WornBy[] => combinationsOf(wearable(build));

/** Whether a combination keeps one rule, straight from what the rule says. */
export function keeps(build: Build, worn: WornBy, rule: Rule): boolean {
  switch (rule.kind) {
    case 'same':
      return rule.parts.every((id) => worn[id] === worn[rule.parts[0]!]);
    case 'if-then':
      return (
        worn[rule.when.part] !== rule.when.finish ||
        rule.wants.oneOf.some((one) => one === worn[rule.wants.part])
      );
    case 'never-together':
      return !(
        worn[rule.first.part] === rule.first.finish && worn[rule.second.part] === rule.second.finish
      );
    case 'most-finishes':
      return new Set(Object.values(worn)).size <= rule.count;
    case 'most-new-bottles': {
      const finishes = finishesByRef(build);
      // A bottle that any finish of the build says is on hand is on hand.
      const onHand = build.finishes.flatMap(bottlesOf).filter((bottle) => bottle.onHand);
      const missing = build.parts
        .filter((part) => isOpen(part) || !part.painted)
        .flatMap((part) => bottlesOf(finishes.get(worn[part.id]!)!))
        .filter(({ id }) => !onHand.some((bottle) => bottle.id === id));
      return new Set(missing.map(({ id }) => id)).size <= rule.count;
    }
    default:
      throw new Error(`no such rule in these builds: ${rule.kind}`);
  }
}

export const countKeeping = (build: Build, rules: readonly Rule[]): number =>
  everyCombination(build).filter((worn) => rules.every((rule) => keeps(build, worn, rule))).length;
