/**
 * The quick terms of `score/terms` against the same definitions written out plainly (oracle), over
 * seeded schemes that mix the finishes of all invented ones.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { SightTable } from '../../src/car/table.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { judge } from '../../src/score/judged.ts';
import { plainCosts } from './plain.ts';
import { buildOf, schemes } from './schemes.ts';

const sight: SightTable = JSON.parse(
  readFileSync(new URL('../../models/roadster.sight.json', import.meta.url), 'utf8'),
);
const count = 300;

describe('quick terms', () => {
  for (const { title, changes, distanceMm } of [
    { title: 'as built', changes: {}, distanceMm: 400 },
    { title: 'declared tonal, from a metre away', changes: { tonal: true }, distanceMm: 1000 },
    {
      title: 'with parts that must read, against a date',
      changes: { mustRead: ['belts', 'piping', 'mirrors'], wantedBy: '2031-05-04' },
      distanceMm: 400,
    },
  ]) {
    const seed = 7;
    it(`equal the plain definitions on ${count} mixed schemes, seed ${seed}: ${title}`, () => {
      const judged = judge(buildOf(Object.keys(schemes), changes), sight, {
        today: '2031-05-01',
        distanceMm,
      });
      const draw = drawFrom(seed);
      const costs = new Float64Array(6);
      const seen = new Set<number>();
      for (let k = 0; k < count; k++) {
        const choice = judged.terms.candidates.map((list) => draw.below(list.length));
        judged.terms.costs(choice, costs);
        plainCosts(judged.terms, choice).forEach((plain, score) => {
          expect(costs[score]).toBeCloseTo(plain, 9);
          if (plain > 0) seen.add(score);
        });
      }
      // Guards against a comparison of zeros: every score must have cost something somewhere.
      expect(seen.size).toBe(6);
    });
  }
});
