/**
 * Why can these rules not hold together? A chain of inferences, each from one rule, that ends with
 * nothing left to wear; where inference alone does not get there, every finish of one part is
 * supposed in turn. Only steps that the end rests on are kept.
 *
 * A build and positions in its rules in; the argument out, or undefined where the rules can hold,
 * or where the argument is longer than anyone would read (our judgement: 16 steps).
 */
import type { Build, FinishRef } from '../build.ts';
import { partsNamed } from '../rule.ts';
import {
  choiceRulesOf,
  type Domains,
  domainsOf,
  type Effort,
  type Loss,
  mostEffort,
  type NewBottles,
  narrowed,
  newBottlesIn,
} from './choice.ts';

/** One inference from one rule. */
export interface Step {
  /** Position in `build.rules`. */
  readonly rule: number;
  /** The part that is left with fewer finishes; undefined where a limit is passed outright. */
  readonly part: string | undefined;
  readonly left: readonly FinishRef[];
}

/** What follows, and then, unless the last step leaves nothing, what each supposition leads to. */
export interface Argument {
  readonly steps: readonly Step[];
  readonly cases: readonly Supposition[];
}
export interface Supposition {
  readonly part: string;
  readonly finish: FinishRef;
  readonly follows: Argument;
}

const mostSteps = 16;

/** The argument that these rules of the build, by position, cannot hold together. */
export function argumentAgainst(
  build: Build,
  rules: readonly number[],
  effort: Effort = { left: mostEffort },
): Argument | undefined {
  const thought = choiceRulesOf(build).filter(({ index }) => rules.includes(index));
  const found = argue(domainsOf(build), thought, newBottlesIn(build), effort, mostSteps);
  return found?.argument;
}

type Numbered = ReturnType<typeof choiceRulesOf>;
interface Found {
  readonly argument: Argument;
  /** Parts whose finishes the argument rests on. */
  readonly rests: ReadonlySet<string>;
  readonly length: number;
}

function argue(
  domains: Domains,
  rules: Numbered,
  newBottles: NewBottles,
  effort: Effort,
  most: number,
): Found | undefined {
  const losses: Loss[] = [];
  const only = rules.map(({ rule }) => rule);
  const left = narrowed(domains, only, newBottles, effort, (loss) => losses.push(loss));
  if (effort.left <= 0 || most <= 0) return undefined;
  if (left === undefined) {
    const { steps, rests } = needed(losses, domains, rules, new Set());
    return steps.length > most
      ? undefined
      : { argument: { steps, cases: [] }, rests, length: steps.length };
  }
  const part = mostNarrowed(left, rules);
  if (part === undefined) return undefined;
  const cases: Supposition[] = [];
  const wanted = new Set([part]);
  let length = 0;
  for (const finish of left.get(part)!) {
    const supposed = new Map(left).set(part, [finish]);
    const found = argue(supposed, rules, newBottles, effort, most - length - 1);
    if (found === undefined) return undefined;
    cases.push({ part, finish, follows: found.argument });
    for (const one of found.rests) wanted.add(one);
    length += found.length + 1;
  }
  const { steps, rests } = needed(losses, domains, rules, wanted);
  length += steps.length;
  return length > most ? undefined : { argument: { steps, cases }, rests, length };
}

/** The tied part with fewest finishes left that still has a choice; undefined where none has. */
function mostNarrowed(domains: Domains, rules: Numbered): string | undefined {
  const named = new Set(rules.flatMap(({ rule }) => partsNamed(rule)));
  const hasLimit = rules.some(({ rule }) => partsNamed(rule).length === 0);
  const open = [...domains].filter(
    ([part, refs]) => refs.length > 1 && (hasLimit || named.has(part)),
  );
  return open.sort(([, one], [, other]) => one.length - other.length)[0]?.[0];
}

/** Of all losses those that the last one, or the parts wanted, rest on. */
function needed(
  losses: readonly Loss[],
  domains: Domains,
  rules: Numbered,
  wanted: ReadonlySet<string>,
): { steps: Step[]; rests: ReadonlySet<string> } {
  const states = statesBefore(losses, domains);
  const rests = new Set(wanted);
  const steps: Step[] = [];
  losses.forEach((_, back) => {
    const k = losses.length - 1 - back;
    const { at, part, left } = losses[k]!;
    const isEnd = back === 0 && wanted.size === 0;
    if (!isEnd && (part === undefined || !rests.has(part))) return;
    const { rule, index } = rules[at]!;
    steps.unshift({ rule: index, part, left });
    if (part !== undefined) rests.add(part);
    const named = partsNamed(rule);
    for (const one of named.length > 0 ? named : certainIn(states[k]!)) rests.add(one);
  });
  return { steps, rests };
}

/** What each part can wear before each loss. */
function statesBefore(losses: readonly Loss[], domains: Domains): Domains[] {
  let now: Domains = domains;
  return losses.map(({ part, left }) => {
    const before = now;
    if (part !== undefined) now = new Map(now).set(part, left);
    return before;
  });
}

const certainIn = (domains: Domains): string[] =>
  [...domains].flatMap(([part, refs]) => (refs.length === 1 ? [part] : []));
