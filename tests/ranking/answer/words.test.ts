/**
 * What is said of a ranking. The sentences expected are written by hand; how many combinations keep
 * the rules, and what differs, is counted by plain enumeration of a small build.
 */
import { describe, expect, it } from 'vitest';
import type { Rule } from '../../../src/build/build.ts';
import { atMostPoints, counted, points } from '../../../src/ranking/answer/figures.ts';
import {
  differenceInWords,
  differsSentence,
  gapOf,
  openSentence,
  standingSentence,
  toBuyInShort,
  toBuySentence,
} from '../../../src/ranking/answer/words.ts';
import { demo, demoWith, everyRanking } from './every.ts';

const same: Rule = { kind: 'same', parts: ['mirrors', 'badges'] };
const free = demoWith(['mirrors', 'badges', 'wheels']);
const tied = demoWith(['mirrors', 'badges', 'wheels'], [same]);
const asked = (build: typeof demo, count: number, isDifferent = false) => ({
  build,
  count,
  isDifferent,
});

describe('how a ranking stands, in words', () => {
  const ranking = everyRanking(free, 20);

  it('a proved one says of how many combinations it is the best', () => {
    expect(standingSentence(ranking, asked(free, 20))).toBe(
      'These are the best 20 of 27 combinations, proved.',
    );
    expect(standingSentence(everyRanking(tied, 5), asked(tied, 5))).toBe(
      'These are the best 5 that keep every rule, of 27 combinations: proved.',
    );
    expect(standingSentence(everyRanking(tied, 1), asked(tied, 1))).toBe(
      'This is the best that keeps every rule, of 27 combinations: proved.',
    );
    expect(standingSentence(ranking, asked(free, 20, true))).toBe(
      'These are the best 20 that differ plainly from those above them, of 27 combinations: proved.',
    );
  });

  it('one with fewer rows than wanted says that there are no more, and why', () => {
    // derived: two tied parts of three candidates leave 3 × 3 of 27.
    expect(standingSentence(everyRanking(tied, 20), asked(tied, 20))).toBe(
      'Only nine of 27 combinations keep every rule; these are all of them, best first, proved.',
    );
    expect(standingSentence(everyRanking(free, 50), asked(free, 50))).toBe(
      'There are only 27 combinations; these are all of them, best first.',
    );
    const few = { ...ranking, rows: ranking.rows.slice(0, 4) };
    expect(standingSentence(few, asked(free, 20, true))).toBe(
      'Nothing more to show: every other looks much like one of these four, proved.',
    );
    expect(standingSentence({ ...ranking, rows: [] }, asked(tied, 20))).toBe(
      'No combination keeps every rule: proved for 27 combinations.',
    );
  });

  it('a stopped one says by how much it may still be beaten, rounded up', () => {
    const overall = ranking.rows[0]!.sheet.overall;
    const stopped = { ...ranking, isProved: false, atMost: overall + 3.11 };
    expect(gapOf(stopped)).toBeCloseTo(3.11, 9);
    expect(standingSentence(stopped, asked(free, 20))).toBe(
      `Best found so far: ${overall.toFixed(1)}; no combination can beat it by more than 3.2 points.`,
    );
    expect(standingSentence({ ...stopped, atMost: overall }, asked(free, 20))).toBe(
      `The first, ${overall.toFixed(1)}, is proved the best; what comes after it is the best found so far.`,
    );
    expect(standingSentence({ ...stopped, rows: [], atMost: 81.24 }, asked(free, 20))).toBe(
      'None found so far; nothing can reach more than 81.3.',
    );
  });

  it('what is open is counted, and nothing open is said', () => {
    expect(openSentence(ranking)).toBe('Three open parts, 27 combinations.');
    expect(openSentence({ ...ranking, open: [], combinations: 1n })).toBe(
      'Nothing is open: there is nothing to choose.',
    );
  });
});

describe('figures', () => {
  it('never tell a bound as less than it is, nor a difference as none', () => {
    for (let k = 1; k < 400; k++) {
      const most = k / 37;
      const told = Number.parseFloat(atMostPoints(most));
      expect(told).toBeGreaterThanOrEqual(most - 1e-9);
      expect(told).toBeLessThan(most + 0.1 + 1e-9);
    }
    expect(atMostPoints(2.3)).toBe('2.3 points');
    expect(points(0.02)).toBe('less than 0.1 points');
    expect(points(-1)).toBe('1.0 point');
    expect([1, 4, 10, 11, 1296].map((n) => counted(n, 'row'))).toEqual([
      'one row',
      'four rows',
      'ten rows',
      '11 rows',
      '1,296 rows',
    ]);
  });
});

describe('rows in words', () => {
  const { rows } = everyRanking(demoWith(['mirrors', 'badges', 'wheels', 'stripes']), 81);

  it('a row names exactly the parts in which it differs, and what they wear', () => {
    rows.slice(1).forEach((row, at) => {
      const above = rows[at]!;
      const told = differsSentence(demo, above, row);
      expect(told.startsWith(`As number ${at + 1}, but `)).toBe(true);
      for (const part of demo.parts) {
        const [was, is] = [above.choices[part.id], row.choices[part.id]];
        // No name of these four parts stands in another part's or in a finish's name.
        if (is !== undefined) expect(told.includes(part.name), told).toBe(was !== is);
      }
    });
  });

  it('a row names every bottle it takes with the parts that wait for it', () => {
    const buying = rows.filter(({ toBuy }) => toBuy.length > 1);
    expect(buying.length).toBeGreaterThan(0);
    for (const row of buying) {
      const told = toBuySentence(demo, row);
      for (const { bottle, parts } of row.toBuy) {
        const names = parts.map((id) => demo.parts.find((part) => part.id === id)!.name);
        expect(told).toContain(`${bottle.name}, for ${names.at(0)}`);
        for (const name of names) expect(told).toContain(name);
      }
    }
    expect(toBuySentence(demo, { toBuy: [] })).toBe('Nothing to buy.');
    expect(toBuyInShort({ toBuy: [] })).toBe('nothing to buy');
    expect(toBuyInShort(buying[0]!)).toMatch(/^\w+ bottles to buy$/);
  });

  it('names the first parts that differ and counts the others', () => {
    const [one, other] = ['corner-shop/dragonfly', 'corner-shop/marigold'];
    const choices = (ref: string) => ({
      choices: Object.fromEntries(demo.parts.slice(0, 9).map(({ id }) => [id, ref])),
    });
    const told = differenceInWords(demo, choices(one!), choices(other!));
    const named = demo.parts.filter(({ name }) => told.includes(name));
    expect(named).toEqual(demo.parts.slice(0, 4));
    expect(told).toMatch(/ in Marigold; five more parts otherwise$/);
  });
});
