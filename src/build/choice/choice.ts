/**
 * Which finishes can each part still wear, once the rules have been thought through? Domains
 * (part → finishes left) are narrowed by every rule that ties choices together until nothing
 * more follows. Sound: a finish is only dropped where no assignment can hold it.
 *
 * Thinks about `same`, `if-then`, `never-together`, `most-finishes` and `most-new-bottles`. The
 * rules that need colour or dates (`must-echo`, `most-share`, `ready-by`) are left to scoring.
 */
import { bottlesOf } from '../../finish/finish.ts';
import { isToSpray, shelfOf } from '../bottles.ts';
import { type Build, type FinishRef, finishesByRef, isOpen, type Rule } from '../build.ts';
import { fittedIn, fittedRule } from '../fitted.ts';

/** Finishes left for each part, by part id. */
export type Domains = ReadonlyMap<string, readonly FinishRef[]>;

const choiceKinds = [
  'same',
  'if-then',
  'never-together',
  'most-finishes',
  'most-new-bottles',
] as const;
export type ChoiceRule = Extract<Rule, { kind: (typeof choiceKinds)[number] }>;

/** Whether the rule can be judged from the choices alone. */
const isChoiceRule = (rule: Rule): rule is ChoiceRule =>
  (choiceKinds as readonly string[]).includes(rule.kind);

/** A bounded amount of thinking, in finishes looked at; every step takes from it. */
export interface Effort {
  left: number;
}
/** Finishes looked at before giving up: about a second of thinking (our judgement). */
export const mostEffort = 20_000_000;

/** What each part on the model can wear before any rule is thought of: candidates, or its one finish. */
export const domainsOf = (build: Build): Map<string, readonly FinishRef[]> =>
  new Map(
    build.parts.flatMap((part) =>
      part.absent ? [] : [[part.id, isOpen(part) ? part.candidates : [part.finish]] as const],
    ),
  );

/** The rules that can be judged from the choices alone, as far as they concern parts on the model. */
export function choiceRulesOf(build: Build): { rule: ChoiceRule; index: number }[] {
  const isFitted = fittedIn(build);
  return build.rules.flatMap((whole, index) => {
    const rule = fittedRule(whole, isFitted);
    return rule !== undefined && isChoiceRule(rule) ? [{ rule, index }] : [];
  });
}

/** Bottle ids that wearing `ref` on `part` would make one buy. */
export type NewBottles = (part: string, ref: FinishRef) => readonly string[];

/** Looks up new bottles for a build; painted parts that keep their finish need none. */
export function newBottlesIn(build: Build): NewBottles {
  const shelf = shelfOf(build);
  const parts = new Map(build.parts.map((part) => [part.id, part]));
  const missing = new Map(
    [...finishesByRef(build)].map(([ref, finish]) => [
      ref,
      bottlesOf(finish)
        .map((bottle) => bottle.id)
        .filter((id) => !shelf.get(id)!.onHand),
    ]),
  );
  return (id, ref) => {
    const part = parts.get(id);
    return part !== undefined && isToSpray(part, ref) ? (missing.get(ref) ?? []) : [];
  };
}

/** One inference: a rule leaves a part with fewer finishes. */
export interface Loss {
  /** Position of the rule among those thought about. */
  readonly at: number;
  /** Undefined where a limit is passed by what is certain already. */
  readonly part: string | undefined;
  readonly left: readonly FinishRef[];
}

/**
 * Domains narrowed by `rules` as far as it goes; undefined where some part is left with none.
 * `tell` hears of every inference, the one that leaves nothing last.
 */
export function narrowed(
  domains: Domains,
  rules: readonly ChoiceRule[],
  newBottles: NewBottles,
  effort: Effort,
  tell?: (loss: Loss) => void,
): Domains | undefined {
  const left = new Map(domains);
  let isChanged = true;
  let at = 0;
  /** Keeps the finishes of `part` that pass; whether any is left. */
  const keep = (part: string, passes: (ref: FinishRef) => boolean): boolean => {
    const before = left.get(part) ?? [];
    effort.left -= before.length;
    const after = before.filter(passes);
    if (after.length < before.length) {
      left.set(part, after);
      isChanged = true;
      tell?.({ at, part, left: after });
    }
    return after.length > 0;
  };
  const only = (part: string): FinishRef | undefined => {
    const refs = left.get(part) ?? [];
    return refs.length === 1 ? refs[0] : undefined;
  };

  while (isChanged && effort.left > 0) {
    isChanged = false;
    for (at = 0; at < rules.length; at++) {
      effort.left -= 1;
      if (holdsAfter(rules[at]!, left, keep, only, newBottles)) continue;
      if ([...left.values()].every((refs) => refs.length > 0)) {
        tell?.({ at, part: undefined, left: [] });
      }
      return undefined;
    }
  }
  return left;
}

function holdsAfter(
  rule: ChoiceRule,
  left: Domains,
  keep: (part: string, passes: (ref: FinishRef) => boolean) => boolean,
  only: (part: string) => FinishRef | undefined,
  newBottles: NewBottles,
): boolean {
  switch (rule.kind) {
    case 'same': {
      // What the first part can wear, less whatever any other cannot, is left for all of them.
      const [first, ...others] = rule.parts;
      let shared = new Set(left.get(first!));
      for (const part of others) {
        shared = new Set((left.get(part) ?? []).filter((ref) => shared.has(ref)));
      }
      return rule.parts.every((part) => keep(part, (ref) => shared.has(ref)));
    }
    case 'if-then': {
      const { when, wants } = rule;
      const meets = (ref: FinishRef): boolean => wants.oneOf.includes(ref);
      if (only(when.part) === when.finish) return keep(wants.part, meets);
      if ((left.get(wants.part) ?? []).some(meets)) return true;
      return keep(when.part, (ref) => ref !== when.finish);
    }
    case 'never-together': {
      const { first, second } = rule;
      if (only(first.part) === first.finish) {
        return keep(second.part, (ref) => ref !== second.finish);
      }
      if (only(second.part) === second.finish) {
        return keep(first.part, (ref) => ref !== first.finish);
      }
      return true;
    }
    case 'most-finishes':
      return holdsLimit(rule.count, left, keep, (_part, ref) => [ref]);
    case 'most-new-bottles':
      return holdsLimit(rule.count, left, keep, newBottles);
  }
}

/** At most `count` different things over all parts, `thingsOf` saying what a choice brings. */
function holdsLimit(
  count: number,
  left: Domains,
  keep: (part: string, passes: (ref: FinishRef) => boolean) => boolean,
  thingsOf: NewBottles,
): boolean {
  const certain = new Set<string>();
  for (const [part, refs] of left) {
    if (refs.length === 1) for (const thing of thingsOf(part, refs[0]!)) certain.add(thing);
  }
  if (certain.size > count) return false;
  const fits = (part: string, ref: FinishRef): boolean =>
    certain.size + thingsOf(part, ref).filter((thing) => !certain.has(thing)).length <= count;
  return [...left.keys()].every((part) => keep(part, (ref) => fits(part, ref)));
}

/** The part with fewest finishes left that still has a choice; undefined where none has. */
export function narrowestOpen(domains: Domains): string | undefined {
  let narrowest: string | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const [part, refs] of domains) {
    if (refs.length < 2 || refs.length >= fewest) continue;
    narrowest = part;
    fewest = refs.length;
  }
  return narrowest;
}
