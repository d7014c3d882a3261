/**
 * How is an argument told, step by step, to someone who builds cars and not proofs? One sentence
 * for each inference, naming the rule by its number; suppositions with what follows from them.
 *
 * In: a build and an argument against some of its rules (`consequence.ts`). Out: plain sentences.
 */
import { shelfOf } from '../bottles.ts';
import type { Build, FinishRef, Rule } from '../build.ts';
import { fittedIn, fittedRule } from '../fitted.ts';
import { listed, type Names, namesIn } from '../rule.ts';
import { type Domains, domainsOf, newBottlesIn } from './choice.ts';
import type { Argument, Step } from './consequence.ts';

/** An argument in words. */
export interface Told {
  readonly steps: readonly string[];
  /** Each with the words of what is supposed. */
  readonly cases: readonly { readonly suppose: string; readonly follows: Told }[];
}

/** Certain things named before the rest is counted. */
const mostNamed = 4;

/** The argument in sentences. */
export function toldArgument(build: Build, argument: Argument): Told {
  return tell(build, namesIn(build), argument, domainsOf(build));
}

function tell(build: Build, names: Names, argument: Argument, domains: Domains): Told {
  let now = domains;
  const steps: string[] = [];
  for (let k = 0; k < argument.steps.length; ) {
    // What one rule says about several parts in a row is one sentence.
    const group = [argument.steps[k]!];
    while (argument.steps[k + group.length]?.rule === group[0]!.rule && isSame(build, group[0]!)) {
      group.push(argument.steps[k + group.length]!);
    }
    steps.push(sentenceOf(build, names, group, now));
    for (const { part, left } of group) {
      if (part !== undefined) now = new Map(now).set(part, left);
    }
    k += group.length;
  }
  return {
    steps,
    cases: argument.cases.map(({ part, finish, follows }) => ({
      suppose: `Suppose ${names.part(part)} in ${names.finish(finish)}:`,
      follows: tell(build, names, follows, new Map(now).set(part, [finish])),
    })),
  };
}

const isSame = (build: Build, { rule }: Step): boolean => build.rules[rule]!.kind === 'same';

function sentenceOf(build: Build, names: Names, group: readonly Step[], now: Domains): string {
  const step = group.at(-1)!;
  const by = `rule ${step.rule + 1}`;
  const rule = fittedRule(build.rules[step.rule]!, fittedIn(build))!;
  const or = (refs: readonly FinishRef[]): string => listed(refs.map(names.finish), 'or');
  const left = ((): string => {
    const part = names.part(step.part ?? '');
    return step.left.length === 0
      ? `nothing is left for ${part}`
      : `left for ${part}: ${or(step.left)}`;
  })();
  switch (rule.kind) {
    case 'same': {
      const all = listed(rule.parts.map(names.part));
      return step.left.length === 0
        ? `${all} must wear the same (${by}), but no finish is left that all of them can wear.`
        : `${all} must wear the same (${by}); left for them: ${or(step.left)}.`;
    }
    case 'if-then': {
      const { when, wants } = rule;
      const isForward = step.part === wants.part && now.get(when.part)?.length === 1;
      return isForward
        ? `${names.part(when.part)} can only wear ${names.finish(when.finish)}, so ${names.part(wants.part)} must wear ${or(wants.oneOf)} (${by}); ${left}.`
        : `${names.part(wants.part)} cannot wear ${or(wants.oneOf)}, so ${names.part(when.part)} cannot wear ${names.finish(when.finish)} (${by}); ${left}.`;
    }
    case 'never-together': {
      const isTurned = step.part === rule.first.part && step.part !== rule.second.part;
      const [one, other] = isTurned ? [rule.second, rule.first] : [rule.first, rule.second];
      return `${names.part(one.part)} can only wear ${names.finish(one.finish)}, so ${names.part(other.part)} cannot wear ${names.finish(other.finish)} (${by}); ${left}.`;
    }
    case 'most-finishes':
    case 'most-new-bottles':
      return `${certainties(build, names, rule, now)}, and ${by} allows ${rule.count === 0 ? 'none' : rule.count}${
        step.part === undefined ? '' : `; ${left}`
      }.`;
    default:
      throw new RangeError(`${rule.kind} is no rule about choices`);
  }
}

/** What counts toward a limit whatever is chosen. */
function certainties(
  build: Build,
  names: Names,
  rule: Extract<Rule, { count: number }>,
  now: Domains,
): string {
  const newBottles = newBottlesIn(build);
  const shelf = shelfOf(build);
  const isBottles = rule.kind === 'most-new-bottles';
  const certain = new Map<string, string[]>();
  for (const [part, refs] of now) {
    if (refs.length !== 1) continue;
    const counted = isBottles
      ? newBottles(part, refs[0]!).map((id) => `“${shelf.get(id)?.name ?? id}”`)
      : [names.finish(refs[0]!)];
    for (const one of counted) certain.set(one, [...(certain.get(one) ?? []), names.part(part)]);
  }
  if (certain.size === 0) return `Nothing ${isBottles ? 'need be bought' : 'is certain'} yet`;
  const named = [...certain]
    .slice(0, mostNamed)
    .map(([what, parts]) => (isBottles ? `${what} (for ${fewOf(parts)})` : what));
  const more = certain.size - named.length;
  const all = listed(more > 0 ? [...named, `${more} more`] : named);
  return `${all} must be ${isBottles ? 'bought' : 'worn'} in any case`;
}

/** The parts that ask for it; of many the first and how many more. */
const fewOf = (parts: readonly string[]): string =>
  listed(parts.length <= 3 ? parts : [...parts.slice(0, 2), `${parts.length - 2} more`]);
