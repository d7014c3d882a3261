/**
 * What rules cost. Oracle: every combination of small builds visited by the sheet, with all rules and
 * with each one left out.
 */
import { describe, expect, it } from 'vitest';
import type { Rule } from '../../../src/build/build.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { type RuleCost, type RuleCosts, ruleCosts } from '../../../src/ranking/answer/price.ts';
import { priceSentence, pricesSentence } from '../../../src/ranking/answer/priced.ts';
import { demo, demoWith, drawn, everyRow, openInDemo, sight, today } from './every.ts';
import { drawnRule } from './rules.ts';

const draw = drawFrom(20);
const cases = Array.from({ length: 44 }, () => {
  const open = drawn(openInDemo, 3, draw);
  const { choices } = everyRow(demoWith(open))[0]!;
  const wears = (part: string) => ({ part, finish: choices[part]! });
  // What the best would wear, forbidden: such a rule bites.
  const biting: Rule = { kind: 'never-together', first: wears(open[0]!), second: wears(open[1]!) };
  const rules = Array.from({ length: 1 + draw.below(3) }, () => drawnRule(open, draw));
  if (draw.below(2) === 0) rules.push(biting);
  const build = demoWith(open, rules);
  const bestWith = everyRow(build)[0]?.sheet.overall;
  const bestWithout = rules.map((_, at) => everyRow(build, at)[0]?.sheet.overall);
  return { build, bestWith, bestWithout, told: ruleCosts(build, sight, { today }) };
});

describe('the price of a rule', () => {
  it('is the best without it less the best with it, as plain enumeration finds them', () => {
    const seen = new Map<string, number>();
    for (const { build, bestWith, bestWithout, told } of cases) {
      expect(told.withAll.isProved).toBe(true);
      expect(told.withAll.row?.sheet.overall ?? 0).toBeCloseTo(bestWith ?? 0, 2);
      told.rules.forEach((cost, at) => {
        seen.set(cost.kind, (seen.get(cost.kind) ?? 0) + 1);
        const without = bestWithout[at];
        const where = `${JSON.stringify(build.rules)}, rule ${at + 1}`;
        expect(cost.rule).toBe(at);
        if (bestWith === undefined) {
          expect(cost.kind, where).toBe(without === undefined ? 'stuck' : 'frees');
          return;
        }
        const price = without! - bestWith;
        expect(cost.kind, where).toBe(price < 0.001 ? 'free' : 'costs');
        expect(Math.abs(cost.least! - price), where).toBeLessThan(0.002);
        expect(Math.abs(cost.most! - price), where).toBeLessThan(0.002);
      });
    }
    for (const kind of ['costs', 'free', 'frees', 'stuck']) {
      expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(4);
    }
  });

  it('is the same with a ranking at hand', () => {
    for (const { build, told } of cases.slice(0, 6)) {
      const { row, atMost, isProved } = told.withAll;
      if (row === undefined || atMost === undefined) continue;
      const atHand = { open: [], combinations: 0n, rows: [row], isProved, atMost, steps: 0 };
      expect(ruleCosts(build, sight, { today }, {}, atHand)).toEqual(told);
    }
  });

  it('lies between what a stopped search says of it', () => {
    for (const { build, bestWith, bestWithout } of cases.slice(0, 15)) {
      if (bestWith === undefined) continue;
      for (const looks of [0, 1, 2, 3, 5]) {
        let left = looks;
        const stopped = ruleCosts(build, sight, { today }, { isOver: () => left-- <= 0 });
        stopped.rules.forEach(({ least, most }, at) => {
          const price = bestWithout[at]! - bestWith;
          expect(least ?? 0).toBeLessThan(price + 0.002);
          expect(most ?? 100).toBeGreaterThan(price - 0.002);
        });
      }
    }
  });

  it('lies between what is said where the ranking at hand was stopped at a bad row', () => {
    for (const { build, bestWith, bestWithout } of cases.slice(0, 20)) {
      if (bestWith === undefined) continue;
      const rows = everyRow(build).slice(-1);
      const stopped = { open: [], combinations: 0n, rows, isProved: false, steps: 0 };
      const atHand = { ...stopped, atMost: bestWith + 0.5 };
      ruleCosts(build, sight, { today }, {}, atHand).rules.forEach((cost, at) => {
        const price = bestWithout[at]! - bestWith;
        expect(cost.least!).toBeLessThan(price + 0.002);
        expect(cost.most!).toBeGreaterThan(price - 0.002);
        if (price > 0.51) expect(cost.kind).toBe('costs');
      });
    }
  });

  it('is told rule by rule as it becomes known', () => {
    const { build, told } = cases[0]!;
    const heard: number[] = [];
    ruleCosts(build, sight, { today }, { tell: ({ rules }) => heard.push(rules.length) });
    expect(heard).toEqual(told.rules.map((_, at) => at + 1));
  });

  it('of a rule about a part that is not on the model is nothing', () => {
    const rules: Rule[] = [{ kind: 'same', parts: ['mirrors', 'badges'] }];
    const build = demoWith(['mirrors', 'wheels', 'stripes'], rules);
    const parts = build.parts.map((part) =>
      part.id === 'badges' ? { ...part, absent: true } : part,
    );
    const { rules: told } = ruleCosts({ ...build, parts }, sight, { today });
    expect(told.map(({ kind }) => kind)).toEqual(['free']);
  });
});

describe('prices in words', () => {
  const known = cases.find(({ told }) => told.rules.some(({ kind }) => kind === 'costs'))!;
  const costing = known.told.rules.find(({ kind }) => kind === 'costs')!;
  const say = (cost: Partial<RuleCost>): string =>
    priceSentence(known.build, { ...costing, rule: 0, ...cost }, known.told);

  it('name the price, what is reached without the rule, and what is worn then', () => {
    const without = costing.without.row!;
    const changed = demo.parts.filter(
      ({ id }) => without.choices[id] !== known.told.withAll.row!.choices[id],
    );
    expect(say({ least: 2.3, most: 2.3 })).toContain(
      `Rule 1 costs 2.3 points: without it ${without.sheet.overall.toFixed(1)}, with `,
    );
    expect(changed.length).toBeGreaterThan(0);
    for (const { name } of changed) expect(say({})).toContain(name);
  });

  it('are never surer than the search', () => {
    expect(say({ least: 1.26, most: 3.31 })).toContain('costs between 1.2 and 3.4 points: ');
    expect(say({ least: 1.26, most: undefined })).toContain('costs at least 1.2 points: ');
    expect(say({ kind: 'unsure', least: 0, most: 2.21 })).toBe('Rule 1 costs 2.3 points at most.');
    expect(say({ kind: 'unsure', least: undefined, most: undefined })).toBe(
      'What rule 1 costs is not known yet.',
    );
    expect(say({ kind: 'free' })).toBe('Rule 1 costs nothing: without it the best is no better.');
    expect(say({ kind: 'stuck' })).toBe(
      'Taking out rule 1 alone is not enough: still no combination keeps the others.',
    );
    expect(say({ kind: 'frees' })).toMatch(
      /^Rule 1 stands in the way: without it the best comes to \d+\.\d\.$/,
    );
  });

  it('of all rules name the one that costs most, or those that stand in the way, and no other', () => {
    const seen = new Set<string>();
    for (const { build, bestWith, bestWithout, told } of cases) {
      const sentence = pricesSentence(build, told);
      const prices = bestWithout.map((without) => (without ?? 0) - (bestWith ?? 0));
      const named = [...sentence.matchAll(/rule (\d+)/gi)].map(([, number]) => Number(number) - 1);
      const where = `${sentence} ${JSON.stringify(build.rules)}`;
      if (bestWith === undefined) {
        const freeing = bestWithout.flatMap((without, at) => (without === undefined ? [] : [at]));
        expect(named, where).toEqual(freeing);
        expect(sentence).toMatch(/^No combination keeps every rule/);
        if (freeing.length > 0) seen.add('frees');
      } else if (prices.every((price) => price < 0.001)) {
        expect(sentence).toMatch(/costs? (nothing|anything by itself)\.$/);
        expect(pricesSentence(build, { ...told, rules: told.rules.slice(1) })).toBe('');
        seen.add('free');
      } else if (named.length > 0) {
        expect(prices[named[0]!], where).toBeGreaterThan(Math.max(...prices) - 0.002);
        seen.add(sentence.startsWith('Only') ? 'only' : 'most');
      }
    }
    const stuck: RuleCosts = {
      withAll: { row: undefined, atMost: undefined, isProved: true },
      rules: [0, 1].map((rule) => ({ ...costing, rule, kind: 'stuck' as const })),
    };
    expect(pricesSentence({ rules: [] }, stuck)).toBe(
      'No combination keeps every rule, and taking out one of them is not enough.',
    );
    expect([...seen].sort()).toEqual(['free', 'frees', 'most', 'only']);
    expect(
      pricesSentence(
        { rules: [] },
        { withAll: { row: undefined, atMost: 90, isProved: false }, rules: [] },
      ),
    ).toBe('');
  });
});
