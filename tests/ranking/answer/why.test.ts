/**
 * Why a row stands above another. Properties derived from the definition of the overall (weighted
 * geometric mean: logarithms add up), over seeded pairs of rows of small builds; bottles are counted
 * from the rows themselves.
 */
import { describe, expect, it } from 'vitest';
import type { Build } from '../../../src/build/build.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { sharesOf } from '../../../src/ranking/answer/share.ts';
import { type Why, whyAbove } from '../../../src/ranking/answer/why.ts';
import type { RankedRow } from '../../../src/ranking/ranking.ts';
import { scoreKeys } from '../../../src/score/evidence.ts';
import { sentenceOf } from '../../../src/score/sentence.ts';
import { demo, demoWith, drawn, everyRow, openInDemo } from './every.ts';

interface Pair {
  readonly build: Build;
  readonly upper: RankedRow;
  readonly lower: RankedRow;
  readonly why: Why;
}

const draw = drawFrom(41);
const pairs: Pair[] = Array.from({ length: 8 }, () => {
  const weights = Object.fromEntries(
    scoreKeys.map((key) => [key, draw.below(4) === 0 ? 0 : draw.below(40)]),
  ) as Build['weights'];
  const build = { ...demoWith(drawn(openInDemo, 4, draw)), weights: { ...weights, contrast: 20 } };
  const rows = everyRow(build);
  return Array.from({ length: 40 }, (_, k): Pair => {
    // Half of them neighbours, half far apart.
    const at = draw.below(rows.length - 1);
    const below = k % 2 === 0 ? at + 1 : at + 1 + draw.below(rows.length - 1 - at);
    const [upper, lower] = [rows[at]!, rows[below]!];
    return { build, upper, lower, why: whyAbove(build, upper, lower) };
  });
}).flat();

describe('why a row stands above another', () => {
  it('points by score add up to the difference, one for each score', () => {
    for (const { upper, lower, why } of pairs) {
      const sum = why.shares.reduce((total, { points }) => total + points, 0);
      expect(sum).toBeCloseTo(upper.sheet.overall - lower.sheet.overall, 6);
      expect(why.points).toBe(upper.sheet.overall - lower.sheet.overall);
      expect(why.shares.map(({ score }) => score).sort()).toEqual([...scoreKeys].sort());
    }
  });

  it('points by score are in proportion to weighted differences of logarithms, the constant being one for all', () => {
    // derived: ln overall = Σ w ln S / Σ w, so a score's part of the difference is w Δ ln S / Σ w.
    for (const { build, upper, lower, why } of pairs) {
      const total = scoreKeys.reduce((sum, key) => sum + build.weights[key], 0);
      const logs = why.shares.map(
        ({ score }) =>
          (build.weights[score] *
            (Math.log(upper.sheet.scores[score]) - Math.log(lower.sheet.scores[score]))) /
          total,
      );
      const whole = Math.log(upper.sheet.overall) - Math.log(lower.sheet.overall);
      expect(logs.reduce((a, b) => a + b, 0)).toBeCloseTo(whole, 9);
      why.shares.forEach(({ points }, k) => {
        expect(points * whole).toBeCloseTo(logs[k]! * why.points, 6);
      });
    }
  });

  it('a finding that is quoted stands on the lower sheet and not on the upper', () => {
    const quoted = pairs.filter(({ why }) => why.fault !== undefined);
    expect(quoted.length).toBeGreaterThan(100);
    for (const { upper, lower, why } of quoted) {
      const { sentence, finding, isLess } = why.fault!;
      expect(lower.sheet.evidence.map(sentenceOf)).toContain(sentence);
      expect(upper.sheet.evidence.map(sentenceOf)).not.toContain(sentence);
      const share = why.shares.find(({ score }) => score === finding.score)!;
      expect(share.points).toBeGreaterThan(0);
      if (!isLess) continue;
      const alike = upper.sheet.evidence.filter(({ kind }) => kind === finding.kind);
      expect(alike.length).toBeGreaterThan(0);
      expect(Math.min(...alike.map(({ cost }) => cost))).toBeLessThan(finding.cost);
    }
  });

  it('what is well instead, where no finding tells, stands on the upper sheet and not on the lower', () => {
    const merits = pairs.filter(({ why }) => why.merit !== undefined);
    expect(merits.length).toBeGreaterThan(0);
    for (const { upper, lower, why } of merits) {
      const { sentence, finding } = why.merit!;
      expect(why.fault).toBeUndefined();
      expect(finding.cost).toBeLessThanOrEqual(0.5);
      expect(upper.sheet.evidence.map(sentenceOf)).toContain(sentence);
      expect(lower.sheet.evidence.map(sentenceOf)).not.toContain(sentence);
    }
  });

  it('points that are named add up to the difference, unless it says “mostly”', () => {
    let summed = 0;
    for (const { why } of pairs) {
      if (why.isLevel || why.difference.includes('mostly')) continue;
      const named = [...why.difference.matchAll(/([+−])(\d+\.\d)/g)].map(
        ([, sign, number]) => (sign === '+' ? 1 : -1) * Number(number),
      );
      const sum = named.reduce((total, one) => total + one, 0);
      // Each of at most six is rounded by up to 0.05, left out below that.
      expect(Math.abs(sum - why.points), why.difference).toBeLessThanOrEqual(0.3);
      summed++;
    }
    expect(summed).toBeGreaterThan(100);
  });

  it('bottles are told as the rows count them, and only where readiness tells', () => {
    let told = 0;
    for (const { upper, lower, why } of pairs) {
      const found = /(\w+) bottles? (more|fewer)/.exec(why.sentence);
      if (found === null) continue;
      told++;
      const difference = upper.toBuy.length - lower.toBuy.length;
      expect(found[1]).toBe(['no', 'one', 'two', 'three'][Math.abs(difference)]);
      expect(found[2]).toBe(difference > 0 ? 'more' : 'fewer');
    }
    expect(told).toBeGreaterThan(20);
  });

  it('where the upper is worse it is said with “though”, and nowhere else', () => {
    for (const { why } of pairs) {
      if (why.isLevel) continue;
      const isWorse = why.shares.some(({ points }) => points <= -0.05);
      expect(why.sentence.includes('though'), why.sentence).toBe(isWorse);
      if (isWorse) expect(why.though!.points).toBe(Math.min(...why.shares.map((s) => s.points)));
    }
  });

  it('of level ones it is said that they are, and what the lower wears instead', () => {
    const level = pairs.filter(({ why }) => why.isLevel);
    expect(level.length).toBeGreaterThan(3);
    for (const { upper, lower, why } of level) {
      expect(Math.abs(upper.sheet.overall - lower.sheet.overall)).toBeLessThan(0.001);
      expect(why.sentence).toMatch(/^Level with number \d+/);
      expect(why.sentence).not.toContain('ahead');
      const { scores } = lower.sheet;
      const isSame = scoreKeys.every(
        (key) => Math.abs(upper.sheet.scores[key] - scores[key]) < 0.05,
      );
      expect(why.sentence.includes('on every score'), why.sentence).toBe(isSame);
      for (const { id, name } of demo.parts) {
        const differs = upper.choices[id] !== lower.choices[id];
        if (id in upper.choices && differs) expect(why.sentence).toContain(name);
      }
    }
  });

  it('weights of 0 carry nothing, whatever the scores', () => {
    for (const { build, why } of pairs) {
      for (const { score, points } of why.shares) {
        if (build.weights[score] === 0) expect(Math.abs(points)).toBe(0);
      }
    }
  });

  it('one score apart and all else equal carries the whole difference (derived)', () => {
    const { sheet } = pairs[0]!.upper;
    const weights = { contrast: 1, accent: 1, sheen: 0, harmony: 0, steadiness: 0, readiness: 0 };
    const scores = { ...sheet.scores, contrast: 90, accent: 40 };
    const upper = { ...sheet, overall: 60, scores };
    const lower = { ...sheet, overall: 20, scores: { ...scores, contrast: 10 } };
    // √(90 · 40) = 60 and √(10 · 40) = 20.
    expect(sharesOf(upper, lower, weights)[0]).toEqual({
      score: 'contrast',
      points: expect.closeTo(40, 9),
    });
  });
});
