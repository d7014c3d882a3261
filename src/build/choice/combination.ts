/**
 * How many complete assignments do the open parts allow, and how many of them keep the rules that
 * tie choices together? Counted exactly, as whole numbers of any size: parts that no rule ties
 * are multiplied out, not visited. Gives up rather than guesses where counting takes too long.
 */
import type { Build } from '../build.ts';
import {
  type ChoiceRule,
  choiceRulesOf,
  type Domains,
  domainsOf,
  type Effort,
  mostEffort,
  type NewBottles,
  narrowed,
  narrowestOpen,
  newBottlesIn,
} from './choice.ts';

export interface CombinationCount {
  /** Product of the candidate counts of the open parts. */
  readonly all: bigint;
  /** Those that keep every choice rule; undefined where counting them takes too long. */
  readonly keepingRules: bigint | undefined;
}

/** How many complete assignments the open parts allow, without and with the choice rules. */
export function combinationCount(
  build: Build,
  effort: Effort = { left: mostEffort },
): CombinationCount {
  const domains = domainsOf(build);
  const rules = choiceRulesOf(build).map(({ rule }) => rule);
  const all = productOf(domains);
  const keepingRules = countFits(domains, rules, newBottlesIn(build), effort);
  return { all, keepingRules: effort.left > 0 ? keepingRules : undefined };
}

/** Digits up to which a count is written out; beyond nobody reads them (our judgement). */
const mostDigits = 15;
const leading = 2;

/** A count in words: `no combination`, `one combination`, `1,296 combinations`. */
export function combinationsInWords(count: bigint): string {
  if (count === 0n) return 'no combination';
  if (count === 1n) return 'one combination';
  const digits = String(count);
  if (digits.length <= mostDigits) return `${count.toLocaleString('en-GB')} combinations`;

  const noughts = digits.length - leading;
  return `about ${digits.slice(0, leading)} followed by ${noughts} noughts of combinations`;
}

const productOf = (domains: Domains): bigint =>
  [...domains.values()].reduce((product, refs) => product * BigInt(refs.length), 1n);

function countFits(
  domains: Domains,
  rules: readonly ChoiceRule[],
  newBottles: NewBottles,
  effort: Effort,
): bigint {
  const left = narrowed(domains, rules, newBottles, effort);
  if (left === undefined || effort.left <= 0) return 0n;
  // Once no rule can be broken any more, the rest multiplies out without being visited.
  const part = narrowestTied(left, rules);
  if (part === undefined) return productOf(left);
  let count = 0n;
  for (const ref of left.get(part)!) {
    count += countFits(new Map(left).set(part, [ref]), rules, newBottles, effort);
  }
  return count;
}

/** The open part with fewest finishes left that some rule still ties to another choice. */
function narrowestTied(domains: Domains, rules: readonly ChoiceRule[]): string | undefined {
  const tied = new Set(rules.flatMap((rule) => partsTiedBy(rule, domains)));
  return narrowestOpen(new Map([...domains].filter(([part]) => tied.has(part))));
}

function partsTiedBy(rule: ChoiceRule, domains: Domains): string[] {
  switch (rule.kind) {
    case 'same':
      return rule.parts;
    case 'if-then':
      return [rule.when.part, rule.wants.part];
    case 'never-together':
      return [rule.first.part, rule.second.part];
    default:
      return [...domains.keys()];
  }
}
