/**
 * Which combinations no other beats. Oracle: every pair of combinations of small builds compared by
 * the definition, with the scores of the sheet; and the best under drawn weights, which must be one.
 */
import { describe, expect, it } from 'vitest';
import type { Build } from '../../../src/build/build.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { unbeatenIn } from '../../../src/ranking/answer/beating.ts';
import { type ParetoSet, paretoSet } from '../../../src/ranking/answer/pareto.ts';
import { unbeatenRows } from '../../../src/ranking/answer/unbeaten.ts';
import type { RankedRow } from '../../../src/ranking/ranking.ts';
import { scoreKeys } from '../../../src/score/evidence.ts';
import { demoWith, drawn, everyRow, openInDemo, sight, today } from './every.ts';
import { drawnRule } from './rules.ts';

type Scores = RankedRow['sheet']['scores'];
/** Sums in another order differ by less than this; real scores differ by more. */
const slack = 1e-6;
const isBeaten = (one: Scores, all: readonly Scores[]): boolean =>
  all.some(
    (other) =>
      scoreKeys.every((key) => other[key] > one[key] - slack) &&
      scoreKeys.some((key) => other[key] > one[key] + slack),
  );
const setOf = (build: Build): Extract<ParetoSet, { kind: 'whole' }> => {
  const set = paretoSet(build, sight, { today });
  if (set.kind !== 'whole') throw new Error(set.kind);
  return set;
};

const draw = drawFrom(7);
const cases = Array.from({ length: 10 }, () => {
  const open = drawn(openInDemo, 4, draw);
  const rules = [0, 1].map(() => drawnRule(open, draw));
  const build = demoWith(open, rules);
  return { build, rows: everyRow(build) };
}).filter(({ rows }) => rows.length > 0);

describe('the combinations that none beats', () => {
  it('are those of plain comparison, pair by pair, rules kept', () => {
    let beaten = 0;
    for (const { build, rows } of cases) {
      const scores = rows.map(({ sheet }) => sheet.scores);
      const expected = scores.filter((one) => !isBeaten(one, scores));
      const { points, keeping } = setOf(build);
      expect(keeping).toBe(rows.length);
      expect(points.reduce((sum, { level }) => sum + level, 0)).toBe(expected.length);
      for (const { scores: own, choices, overall } of points) {
        expect(isBeaten(own, scores)).toBe(false);
        const row = rows.find((one) => JSON.stringify(one.choices) === JSON.stringify(choices))!;
        expect(row.sheet.overall).toBeCloseTo(overall, 6);
        for (const key of scoreKeys) expect(row.sheet.scores[key]).toBeCloseTo(own[key], 5);
      }
      beaten += rows.length - expected.length;
    }
    expect(cases.length).toBeGreaterThan(4);
    expect(beaten).toBeGreaterThan(100);
  });

  it('hold a best one whatever the weights', () => {
    for (const { build, rows } of cases.slice(0, 4)) {
      const { points } = setOf(build);
      for (let k = 0; k < 20; k++) {
        const weigh = scoreKeys.map((key) => [key, draw.uniform()] as const);
        const overall = (scores: Scores): number =>
          weigh.reduce((sum, [key, weight]) => sum + weight * Math.log(scores[key]), 0);
        const best = Math.max(...rows.map(({ sheet }) => overall(sheet.scores)));
        expect(Math.max(...points.map(({ scores }) => overall(scores)))).toBeCloseTo(best, 6);
      }
    }
  });

  it('are found among any rows of six costs, level ones counted (brute force)', () => {
    for (let k = 0; k < 60; k++) {
      const count = draw.below(60);
      // Few different costs, so that many are level.
      const costs = Float64Array.from({ length: count * 6 }, () =>
        draw.below(k % 2 === 0 ? 3 : 50),
      );
      const row = (at: number): number[] => [...costs.subarray(at * 6, at * 6 + 6)];
      const beats = (one: number[], other: number[]): boolean =>
        one.every((cost, s) => cost <= other[s]!) && one.some((cost, s) => cost < other[s]!);
      const all = Array.from({ length: count }, (_, at) => row(at));
      const expected = all.filter((one) => !all.some((other) => beats(other, one)));
      const found = unbeatenIn(costs, count)!.flatMap(({ at, level }) =>
        Array.from({ length: level }, () => row(at).join()),
      );
      expect(found.sort()).toEqual(expected.map((one) => one.join()).sort());
    }
  });

  it('are not told where there are too many to visit, or where it was stopped', () => {
    const [{ build } = { build: demoWith(openInDemo) }] = cases;
    let left = 0;
    expect(paretoSet(build, sight, { today }, () => left++ >= 0)).toEqual({ kind: 'stopped' });
    const every = build.finishes.map(({ rack, id }) => `${rack}/${id}`);
    // derived: 21 finishes on each of five parts are over four million.
    const five = demoWith(openInDemo.slice(0, 5)).parts.map((part) =>
      'candidates' in part ? { ...part, candidates: [...every] } : part,
    );
    expect(paretoSet({ ...build, rules: [], parts: five }, sight, { today })).toEqual({
      kind: 'too-many',
      combinations: every.length ** 5,
    });
  });
});

describe('in words', () => {
  it('exactly where all were visited, else only of the rows found', () => {
    for (const { build, rows } of cases.filter((one) => one.rows.length > 2)) {
      // Not from the top, so that what beats them is not among them.
      const shown = rows.slice(2, 14);
      const scores = rows.map(({ sheet }) => sheet.scores);
      const exact = unbeatenRows(shown, setOf(build));
      const mere = unbeatenRows(shown, { kind: 'stopped' });
      expect(exact.isOfAll).toBe(true);
      shown.forEach(({ sheet }, at) => {
        expect(exact.places.includes(at)).toBe(!isBeaten(sheet.scores, scores));
        expect(mere.places.includes(at)).toBe(!isBeaten(sheet.scores, scores.slice(2, 14)));
      });
      expect(exact.sentence).toContain(`of ${rows.length < 11 ? '' : rows.length}`);
      expect(mere.isOfAll).toBe(false);
      expect(mere.sentence).toMatch(/^In this list no other .* Beyond it there may be: /);
    }
    expect(unbeatenRows([], { kind: 'stopped' }).sentence).toBe('');
  });
});
