/** What is said first: a finding that takes points, or that there is nothing to mend. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultWeights } from '../../src/build/build.ts';
import type { SightTable } from '../../src/car/table.ts';
import type { ScoreSheet } from '../../src/score/comparison.ts';
import type { Evidence } from '../../src/score/evidence.ts';
import { gainWithout, headlineOf } from '../../src/score/headline.ts';
import { compareAlternatives } from '../../src/score/sheet.ts';
import { buildOf, schemes } from './schemes.ts';

const sight = JSON.parse(
  readFileSync(new URL('../../models/roadster.sight.json', import.meta.url), 'utf8'),
) as SightTable;
const sheets = compareAlternatives(buildOf(Object.keys(schemes)), sight, {
  today: '2031-05-01',
  withoutCloseness: true,
}).alternatives;

const onlyWith = (sheet: ScoreSheet, keep: (evidence: Evidence) => boolean): ScoreSheet => ({
  ...sheet,
  evidence: sheet.evidence.filter(keep),
});
const isShopping = ({ kind }: Evidence): boolean => kind === 'to-buy';

describe('the headline', () => {
  it('is never a bottle to buy while something takes a point', () => {
    let shopped = 0;
    for (const sheet of sheets) {
      const headline = headlineOf(sheet, defaultWeights);
      if (isShopping(sheet.evidence[0]!)) shopped++;
      if ('finding' in headline) expect(headline.finding.kind).not.toBe('to-buy');
      else {
        for (const one of sheet.evidence.filter((other) => !isShopping(other))) {
          expect(gainWithout(sheet, one, defaultWeights)).toBeLessThan(1);
        }
      }
    }
    // Guards against schemes in which no bottle ever led.
    expect(shopped).toBeGreaterThan(0);
  });

  it('is praise with the shopping where nothing else is found, and with none where all is there', () => {
    const sheet = sheets.find(({ evidence }) => evidence.some(isShopping))!;
    expect(headlineOf(onlyWith(sheet, isShopping), defaultWeights)).toMatchObject({
      praise: expect.stringMatching(/^Nothing to mend\. To buy: /),
    });
    expect(
      headlineOf(
        onlyWith(sheet, ({ cost }) => cost === 0),
        defaultWeights,
      ),
    ).toEqual({
      praise: 'Nothing to mend, and nothing to buy.',
      parts: [],
    });
  });

  it('without a finding the overall would gain what its halvings say', () => {
    // derived: weight 25 of 100, κ 1.4, one halving of cost: the overall is 2^(0.25 · 1.4) as large.
    const sheet = { ...sheets[0]!, overall: 50 };
    const finding: Evidence = { ...sheet.evidence[0]!, score: 'contrast', cost: 1 };
    expect(gainWithout(sheet, finding, defaultWeights)).toBeCloseTo(50 * (2 ** 0.35 - 1), 9);
  });
});
