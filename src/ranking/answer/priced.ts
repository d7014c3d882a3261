/**
 * What does a rule cost, in words? One sentence a rule, by its number, never surer than the search:
 * where one was stopped, between what and what the price lies.
 */
import type { Build } from '../../build/build.ts';
import { inWords } from '../../score/finding/scheme.ts';
import { atMostPoints, points, shownScore } from './figures.ts';
import type { RuleCost, RuleCosts } from './price.ts';
import { differenceInWords } from './words.ts';

/** `Rule 1 costs 2.3 points: without it 84.1, with Mirrors in Marigold.` */
export function priceSentence(build: Build, cost: RuleCost, costs: RuleCosts): string {
  const rule = `rule ${cost.rule + 1}`;
  const best = cost.without.row;
  const overall = best === undefined ? '' : shownScore(best.sheet.overall);
  switch (cost.kind) {
    case 'costs': {
      const found = cost.without.isProved ? '' : 'at least ';
      const before = costs.withAll.row;
      const worn =
        before === undefined || best === undefined ? '' : differenceInWords(build, before, best);
      return `${capital(rule)} costs ${priceInWords(cost)}: without it ${found}${overall}, with ${worn}.`;
    }
    case 'free':
      return `${capital(rule)} costs nothing: without it the best is no better.`;
    case 'frees': {
      const reaches = cost.without.isProved
        ? 'the best comes to'
        : 'the best found so far comes to';
      return `${capital(rule)} stands in the way: without it ${reaches} ${overall}.`;
    }
    case 'stuck':
      return `Taking out ${rule} alone is not enough: still no combination keeps the others.`;
    case 'unsure':
      return cost.most === undefined
        ? `What ${rule} costs is not known yet.`
        : `${capital(rule)} costs ${atMostPoints(cost.most)} at most.`;
  }
}

/**
 * All rules in one sentence: which costs most, or which stand in the way of any combination; nothing
 * as long as some are not priced.
 */
export function pricesSentence(build: Pick<Build, 'rules'>, { withAll, rules }: RuleCosts): string {
  if (rules.length < build.rules.length) return '';
  if (withAll.row === undefined) {
    if (!withAll.isProved) return '';
    const freeing = rules
      .filter(({ kind }) => kind === 'frees')
      .map(({ rule }) => `rule ${rule + 1}`);
    if (freeing.length > 0) {
      return `No combination keeps every rule. Without ${inWords(freeing, 'or')} there is one.`;
    }
    return rules.every(({ kind }) => kind === 'stuck')
      ? 'No combination keeps every rule, and taking out one of them is not enough.'
      : 'No combination keeps every rule.';
  }
  if (rules.length > 0 && rules.every(({ kind }) => kind === 'free')) {
    return rules.length === 1 ? 'The rule costs nothing.' : 'No rule costs anything by itself.';
  }
  const costing = rules.filter(({ kind }) => kind === 'costs');
  const dearest = costing.toSorted((one, other) => (other.least ?? 0) - (one.least ?? 0))[0];
  if (dearest === undefined) return '';
  const others = rules.filter(({ rule }) => rule !== dearest.rule);
  const rule = `rule ${dearest.rule + 1} costs`;
  if (others.every(({ kind }) => kind === 'free')) {
    return others.length === 0
      ? `${capital(rule)} ${priceInWords(dearest)}.`
      : `Only ${rule} anything: ${priceInWords(dearest)}.`;
  }
  const isSure = others.every(({ most }) => most !== undefined && most <= (dearest.least ?? 0));
  return isSure ? `${capital(rule)} most: ${priceInWords(dearest)}.` : '';
}

/** `2.3 points`, `between 1.2 and 3.4 points`, `at least 1.2 points`. */
function priceInWords({ least = 0, most }: RuleCost): string {
  const low = Math.floor(least * 10 + 1e-9) / 10;
  if (most === undefined) return low === 0 ? 'something' : `at least ${points(low)}`;
  // Both searches came to their end: one figure, whichever way it is rounded.
  if (most - least < 0.01) return points((least + most) / 2);
  const high = atMostPoints(most);
  return low === 0 ? `at most ${high}` : `between ${shownScore(low)} and ${high}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
