/**
 * Can these combinations be ranked at all? What is refused, in clear words and before anything large is
 * laid out: nothing open, weights that weigh nothing, rules that cannot hold together, more finishes
 * than fit. Everything here throws `InputError`.
 */
import { type Build, isOpen } from '../../build/build.ts';
import {
  choiceRulesOf,
  type Domains,
  domainsOf,
  mostEffort,
  narrowed,
  newBottlesIn,
} from '../../build/choice/choice.ts';
import { contradictions } from '../../build/choice/contradiction.ts';
import { namesIn, ruleSentence } from '../../build/rule.ts';
import { InputError, type Problem, shown } from '../../ground/problem.ts';
import { scoreKeys } from '../../score/evidence.ts';

/** More finishes take too long to sort into colour families: the work grows with their cube. */
const mostFinishes = 1000;
/** Costs of pairs kept at most: 80 MB, and some 240 MB with what a search makes of them. */
export const mostCells = 20_000_000;

const refuse = (place: string, found: string, expected: string, mend: string): never => {
  const problem: Problem = { place, found, expected, mend };
  throw new InputError([problem]);
};

/** Refuses a build with nothing open, weights that weigh nothing, or too many finishes. */
export function checkBuild(build: Build): void {
  const fitted = build.parts.filter(({ absent }) => !absent);
  if (!fitted.some(isOpen)) {
    refuse(
      'parts',
      'no open part',
      'at least one part with candidates',
      'Open a part and give it the finishes to choose from.',
    );
  }
  for (const key of scoreKeys) {
    const weight: unknown = build.weights[key];
    if (typeof weight === 'number' && Number.isFinite(weight) && weight >= 0) continue;
    const expected = 'a number from 0 up';
    refuse(
      `weights › ${key}`,
      shown(weight),
      expected,
      'Give every score a weight; 0 leaves it out.',
    );
  }
  if (scoreKeys.every((key) => build.weights[key] === 0)) {
    refuse(
      'weights',
      'all of them 0',
      'at least one weight above 0',
      'Raise the weight of a score that matters: only their proportions count.',
    );
  }
  const refs = new Set([
    ...fitted.flatMap((part) => (isOpen(part) ? part.candidates : [part.finish])),
    ...build.alternatives.flatMap(({ choices }) => Object.values(choices)),
  ]);
  if (refs.size > mostFinishes) {
    refuse(
      'candidates',
      `${counted(refs.size)} different finishes`,
      `at most ${counted(mostFinishes)}`,
      'Take candidates away that you would not spray, or rank part of them at a time.',
    );
  }
}

/** What each part may wear once the rules are thought through; refuses rules that cannot hold. */
export function domainsLeft(build: Build): Domains {
  const verdict = contradictions(build);
  if (verdict.kind === 'cannot-hold') {
    refuseRules(clashing(verdict.contradiction.sentence));
  }
  const rules = choiceRulesOf(build).map(({ rule }) => rule);
  const left = narrowed(domainsOf(build), rules, newBottlesIn(build), { left: mostEffort });
  return left ?? domainsOf(build);
}

/** `With these candidates 2 rules cannot hold together: …` as what was found. */
const clashing = (sentence: string): string =>
  sentence
    .replace(/\.$/, '')
    .replace(/^With these candidates /, '')
    .replace(/^(\d+ rules) cannot/, '$1 that cannot')
    .replace(/^one rule can never/, 'one rule that can never');

/** Refuses tables of pairs larger than memory should bear. */
export function checkCells(cells: number, sizes: readonly number[]): void {
  if (cells <= mostCells) return;
  refuse(
    'candidates',
    `${sizes.length} choices with up to ${Math.max(...sizes)} finishes each, which are ${counted(cells)} pairs to compare`,
    `at most ${counted(mostCells)} pairs`,
    'Settle some parts, tie parts by a rule, or take candidates away.',
  );
}

/** Refuses a build of which no combination keeps all rules. */
export function refuseWhereNoneIsLeft(build: Build): never {
  const names = namesIn(build);
  const asking = build.rules.flatMap((rule, at) =>
    asksOfTheCar.includes(rule.kind) ? [`rule ${at + 1} (${ruleSentence(rule, names)})`] : [],
  );
  const blamed = asking.length === 0 ? '' : `, with ${asking.join(' and ')}`;
  return refuseRules(`no combination that keeps all of them${blamed}`);
}

/** Kinds of rule that choices alone do not decide. */
const asksOfTheCar = ['must-echo', 'most-share', 'ready-by'];

const refuseRules = (found: string): never =>
  refuse(
    'rules',
    found,
    'at least one combination that keeps them all',
    'Take one of these rules out, loosen it, or add a candidate.',
  );

const counted = (count: number): string => count.toLocaleString('en-GB');
