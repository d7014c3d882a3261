/**
 * How surely an order holds. Oracles: the sheet's own comparison of two alternatives by themselves,
 * and what follows where no colour is uncertain at all (derived).
 */
import { describe, expect, it } from 'vitest';
import type { Build } from '../../../src/build/build.ts';
import { headSentence, nextSentence, surenessOf } from '../../../src/ranking/answer/sure.ts';
import { compareAlternatives } from '../../../src/score/sheet.ts';
import { demoWith, everyRow, sight, today } from './every.ts';

const uncertain = (build: Build, deltaE: number): Build => ({
  ...build,
  finishes: build.finishes.map((one) => ({ ...one, provenance: { how: 'guess', deltaE } })),
});
const build = uncertain(demoWith(['mirrors', 'seat-inserts', 'seat-piping', 'wheels']), 6);
const rows = everyRow(build).slice(0, 12);
const sure = surenessOf(build, sight, { today }, rows);

describe('how surely rows hold their places', () => {
  it('is what the sheet says of the same two alternatives compared by themselves', () => {
    const pairIn100 = (one: number, other: number): number => {
      const alternatives = [one, other].map((at) => ({
        id: `row-${at}`,
        name: `${at}`,
        choices: rows[at]!.choices,
      }));
      const [pair] = compareAlternatives({ ...build, alternatives }, sight, { today }).closeness;
      return pair!.a === `row-${one}` ? pair!.aheadIn100 : 100 - pair!.aheadIn100;
    };
    for (const at of [2, 11]) {
      expect(sure.rows[at]!.firstAhead).toBeCloseTo(pairIn100(0, at), 9);
      expect(sure.rows[at - 1]!.aheadOfNext).toBeCloseTo(pairIn100(at - 1, at), 9);
    }
  });

  it('rows that the first stays ahead of less than 90 times of 100 cannot be told from it', () => {
    // 90 of 100 is the sheet's own line (DEVELOPERS.md, our judgement).
    expect(sure.head).toEqual(
      rows.flatMap((_, at) => (at === 0 || sure.rows[at]!.firstAhead! < 90 ? [at] : [])),
    );
    expect(sure.head.length).toBeGreaterThan(1);
    expect(sure.head.length).toBeLessThan(rows.length);
    for (const { aheadOfNext, isCloseToNext } of sure.rows.slice(0, -1)) {
      expect(isCloseToNext).toBe(aheadOfNext! < 90);
    }
    expect(sure.rows.at(-1)!.aheadOfNext).toBeUndefined();
  });

  it('with every colour certain hardly anything moves: what leads by points leads always', () => {
    // Gloss is still drawn; weights leave only scores that do not look at it.
    const weights = { contrast: 0, accent: 0, sheen: 0, harmony: 1, steadiness: 0, readiness: 1 };
    const certain = { ...uncertain(build, 0), weights };
    const all = everyRow(certain);
    const told = surenessOf(certain, sight, { today }, all.slice(0, 20));
    told.rows.slice(0, -1).forEach(({ aheadOfNext }, at) => {
      const isAhead = all[at]!.sheet.overall - all[at + 1]!.sheet.overall > 1e-9;
      expect(aheadOfNext).toBe(isAhead ? 100 : 50);
    });
  });

  it('of no row and of one row nothing is asked', () => {
    expect(surenessOf(build, sight, { today }, [])).toEqual({ rows: [], head: [] });
    const alone = surenessOf(build, sight, { today }, rows.slice(0, 1));
    expect(alone.head).toEqual([0]);
    expect(headSentence(alone)).toBe('');
    expect(nextSentence(alone.rows[0]!, '2')).toBe('');
  });
});

describe('in words', () => {
  const row = (firstAhead: number | undefined, aheadOfNext?: number) => ({
    firstAhead,
    aheadOfNext,
    isCloseToNext: aheadOfNext !== undefined && aheadOfNext < 90,
  });

  it('the head of the table is counted, or numbered where it has gaps', () => {
    const four = [row(undefined), row(61), row(70), row(80), row(99)];
    expect(headSentence({ rows: four, head: [0, 1, 2, 3] })).toBe(
      'The first four are too close to call; ask your viewers.',
    );
    const gap = [row(undefined), row(95), row(44), row(70), row(99)];
    expect(headSentence({ rows: gap, head: [0, 2, 3] })).toBe(
      'Numbers 1, 3 and 4 are too close to call; ask your viewers. ' +
        'Number 3 is even ahead of the first 56 times of 100.',
    );
    expect(headSentence({ rows: gap.slice(2), head: [0, 1, 2] })).toMatch(
      /^All three are too close/,
    );
  });

  it('never says always where it was not', () => {
    expect(headSentence({ rows: [row(undefined), row(99.5), row(100)], head: [0] })).toBe(
      'The first stays ahead of every other shown, 99 times of 100 or more.',
    );
    expect(headSentence({ rows: [row(undefined), row(100)], head: [0] })).toBe(
      'The first stays ahead of the second 100 times of 100.',
    );
    expect(nextSentence(row(undefined, 99.5), '2')).toBe(
      'Stays ahead of number 2 99 times of 100.',
    );
    expect(nextSentence(row(undefined, 64.2), '2')).toBe(
      'Too close to number 2 to call: ahead 64 times of 100.',
    );
  });
});
