/** The sheet says what its makers said of invented schemes, and ranks them in the same tiers. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { SightTable } from '../../src/car/table.ts';
import type { ScoreSheet } from '../../src/score/comparison.ts';
import { sentenceOf } from '../../src/score/sentence.ts';
import { compareAlternatives } from '../../src/score/sheet.ts';
import { buildOf, schemes } from './schemes.ts';

const sight: SightTable = JSON.parse(
  readFileSync(new URL('../../models/roadster.sight.json', import.meta.url), 'utf8'),
);
const judging = { today: '2031-05-01', withoutCloseness: true };
const all = Object.keys(schemes);
const sheets = new Map(
  compareAlternatives(buildOf(all), sight, judging).alternatives.map((sheet) => [
    sheet.name,
    sheet,
  ]),
);
const tonal = compareAlternatives(buildOf(all, { tonal: true }), sight, judging).alternatives.find(
  ({ name }) => name === 'S10',
)!;
const sheetOf = (name: string): ScoreSheet => sheets.get(name)!;

/** Findings of a kind, optionally about one part. */
const found = (sheet: ScoreSheet, kind: string, part?: string) =>
  sheet.evidence.filter(
    (one) =>
      `${one.score}/${one.kind}` === kind && (part === undefined || one.parts.includes(part)),
  );
const family = (sheet: ScoreSheet, kind: string) =>
  found(sheet, kind).map(({ words }) => words.colour);

describe('what the sheet must say of invented schemes', () => {
  it('S01 orange on mirrors, piping and calipers ties in', () => {
    expect(family(sheetOf('S01'), 'accent/echoed')).toEqual(['orange']);
  });
  it('S08 red ties in and no sheen is at fault on the skin', () => {
    expect(family(sheetOf('S08'), 'accent/echoed')).toEqual(['red']);
    expect(found(sheetOf('S08'), 'sheen/near-miss', 'body')).toEqual([]);
  });
  it('S10 declared tonal has no accent as meant', () => {
    expect(found(tonal, 'accent/tonal')).toHaveLength(1);
  });
  it('S12 the body colour is carried in', () => {
    expect(found(sheetOf('S12'), 'accent/body-carried-in')).toHaveLength(1);
  });
  it('S11 tan is the colour of the cabin, not an orphan', () => {
    expect(family(sheetOf('S11'), 'accent/orphan')).not.toContain('tan');
    expect(family(sheetOf('S11'), 'accent/zone-colour')).toContain('tan');
  });
  it('S09 orange over seats and wheels is no accent', () => {
    for (const kind of ['accent/orphan', 'accent/echoed', 'accent/apart']) {
      expect(family(sheetOf('S09'), kind)).not.toContain('orange');
    }
  });
  it('S07 cream ties in and matt wheels are no fault', () => {
    expect(family(sheetOf('S07'), 'accent/echoed')).toContain('cream');
    expect(found(sheetOf('S07'), 'sheen/near-miss', 'wheels')).toEqual([]);
  });
  it('S13 body and mirrors are nearly the same', () => {
    expect(found(sheetOf('S13'), 'harmony/nearly-same', 'mirrors')).not.toEqual([]);
  });
  it('S02 orange on the piping alone is an orphan', () => {
    expect(family(sheetOf('S02'), 'accent/orphan')).toEqual(['orange']);
    expect(found(sheetOf('S02'), 'accent/orphan')[0]!.parts).toEqual(['piping']);
  });
  it('S14 candy without gloss clear is called out on the body', () => {
    expect(found(sheetOf('S14'), 'sheen/flake-without-clear', 'body')).toHaveLength(1);
  });
  it('S04 everything is one colour', () => {
    expect(found(sheetOf('S04'), 'accent/one-colour')).toHaveLength(1);
  });
  it('S06 the sheen of stripes and body is a near miss', () => {
    expect(found(sheetOf('S06'), 'sheen/near-miss', 'body')).not.toEqual([]);
  });
  it('S05 accents compete', () => {
    expect(found(sheetOf('S05'), 'accent/competing')).toHaveLength(1);
  });
  it('S15 ribbon has no business on body and stripes', () => {
    expect(found(sheetOf('S15'), 'sheen/out-of-place', 'body')).toHaveLength(1);
    expect(found(sheetOf('S15'), 'sheen/out-of-place', 'stripes')).toHaveLength(1);
  });
  it('leather seats, ribbon belts, flock carpet and bright metal are where they belong', () => {
    for (const name of all.filter((one) => one !== 'S15')) {
      expect(found(sheetOf(name), 'sheen/out-of-place'), name).toEqual([]);
    }
  });
  it('S16 orange stripes are called too large for an accent, not that there is none', () => {
    expect(family(sheetOf('S16'), 'accent/too-large')).toEqual(['orange']);
    expect(found(sheetOf('S16'), 'accent/no-accent')).toEqual([]);
    expect(found(sheetOf('S16'), 'accent/second-colour')).toEqual([]);
  });
  it('a colour is called by the finish where one makes it, by a word where several do', () => {
    expect(sentenceOf(found(sheetOf('S02'), 'accent/orphan')[0]!)).toMatch(/^Or shows/);
    const [echoed] = found(sheetOf('S08'), 'accent/echoed');
    expect(sentenceOf(echoed!)).toMatch(/^Red \(r, rr\) ties in/);
  });
  it('S03 belts and piping get lost', () => {
    expect(found(sheetOf('S03'), 'contrast/lost', 'belts')).not.toEqual([]);
    expect(found(sheetOf('S03'), 'contrast/lost', 'piping')).not.toEqual([]);
  });
});

describe('tiers', () => {
  const overallIn = (tier: string): number[] =>
    all
      .filter((name) => schemes[name]!.tier === tier)
      .map((name) => (name === 'S10' ? tonal : sheetOf(name)).overall);
  for (const [better, worse] of ['AB', 'BC', 'CD']) {
    it(`every scheme labelled ${better} is ahead of every one labelled ${worse}`, () => {
      expect(Math.min(...overallIn(better!))).toBeGreaterThan(Math.max(...overallIn(worse!)));
    });
  }
  it('a tonal scheme that is not declared so falls a tier', () => {
    expect(sheetOf('S10').overall).toBeLessThan(Math.min(...overallIn('A')));
  });
});

describe('evidence', () => {
  it('has words for everything it finds, and never an unfilled number', () => {
    for (const sheet of [...sheets.values(), tonal]) {
      for (const one of sheet.evidence) {
        const sentence = sentenceOf(one);
        expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
        expect(sentence).toMatch(/^[A-ZÀ-Ý].*\.$/s);
      }
    }
  });
  it('accounts for every score: its costs add up to what the score says', () => {
    for (const sheet of [...sheets.values(), tonal]) {
      for (const [key, score] of Object.entries(sheet.scores)) {
        const cost = sheet.evidence
          .filter((one) => one.score === key)
          .reduce((sum, one) => sum + one.cost, 0);
        expect(100 * 2 ** (-1.4 * cost)).toBeCloseTo(score, 6);
      }
    }
  });
});
