/**
 * Can the rules of a build be kept at all, and if not, which of them cannot hold together?
 *
 * Narrowing (choice.ts) with depth-first search on the part with fewest finishes left; where
 * nothing fits, rules are put aside in halving groups, then singly, as long as the rest still
 * cannot hold: what remains is irreducible (dropping any one of them frees the others). Effort
 * is bounded, so a hostile build gets the honest answer “not settled” rather than a hung page.
 */
import type { Build, FinishRef } from '../build.ts';
import { listed, namesIn, ruleSentence } from '../rule.ts';
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

export interface Contradiction {
  /** Positions in `build.rules`, from 0, of rules that cannot hold together. */
  readonly rules: readonly number[];
  /** Whether dropping any one of them is known to free the others. */
  readonly isSmallest: boolean;
  readonly sentence: string;
}

/** Whether some assignment keeps the choice rules: one that does, why none can, or not settled. */
export type Verdict =
  | { readonly kind: 'can-hold'; readonly example: ReadonlyMap<string, FinishRef> }
  | { readonly kind: 'cannot-hold'; readonly contradiction: Contradiction }
  | { readonly kind: 'not-settled' };

/** Whether the choice rules of `build` can all be kept, over every combination of candidates. */
export function contradictions(build: Build, effort: Effort = { left: mostEffort }): Verdict {
  const numbered = choiceRulesOf(build);
  const domains = domainsOf(build);
  const newBottles = newBottlesIn(build);
  const solve = (entries: typeof numbered): Domains | 'none' | 'not-settled' =>
    firstFit(
      domains,
      entries.map(({ rule }) => rule),
      newBottles,
      effort,
    );
  const fit = solve(numbered);
  if (fit === 'not-settled') return { kind: 'not-settled' };
  if (fit !== 'none') {
    return { kind: 'can-hold', example: new Map([...fit].map(([part, refs]) => [part, refs[0]!])) };
  }
  const core = irreducible(numbered, (entries) => solve(entries) === 'none');
  const rules = core.map(({ index }) => index);
  const isSmallest = effort.left > 0;
  const sentence = sentenceFor(build, rules);
  return { kind: 'cannot-hold', contradiction: { rules, isSmallest, sentence } };
}

/** Rules told in full before the rest is counted: more than a builder takes in at once. */
const mostTold = 6;

function sentenceFor(build: Build, rules: readonly number[]): string {
  const names = namesIn(build);
  const told = rules
    .slice(0, mostTold)
    .map((index) => `rule ${index + 1} (${ruleSentence(build.rules[index]!, names)})`);
  if (rules.length === 1) {
    return `With these candidates one rule can never be kept: ${told[0]}.`;
  }
  const more = rules.length - told.length;
  const all = more > 0 ? [...told, `${more} more`] : told;
  return `With these candidates ${rules.length} rules cannot hold together: ${listed(all)}.`;
}

/** A complete fit (every domain down to one finish), the proof that none exists, or no answer. */
function firstFit(
  domains: Domains,
  rules: readonly ChoiceRule[],
  newBottles: NewBottles,
  effort: Effort,
): Domains | 'none' | 'not-settled' {
  if (effort.left <= 0) return 'not-settled';
  const left = narrowed(domains, rules, newBottles, effort);
  if (left === undefined) return 'none';
  if (effort.left <= 0) return 'not-settled';
  const part = narrowestOpen(left);
  if (part === undefined) return left;
  for (const ref of left.get(part)!) {
    const fit = firstFit(new Map(left).set(part, [ref]), rules, newBottles, effort);
    if (fit !== 'none') return fit;
  }
  return 'none';
}

/** The entries that are left when no more can be put aside without `isStuck` turning false. */
function irreducible<Entry>(
  entries: readonly Entry[],
  isStuck: (rest: Entry[]) => boolean,
): readonly Entry[] {
  let kept = [...entries];
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = Math.floor(size / 2)) {
    for (let start = 0; start < kept.length; ) {
      const rest = [...kept.slice(0, start), ...kept.slice(start + size)];
      if (isStuck(rest)) kept = rest;
      else start += size;
    }
  }
  return kept;
}
