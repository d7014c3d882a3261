/** Scales and distances as builders write them. Derived: 1 cm = 10 mm, 1 m = 1000 mm. */
import { describe, expect, it } from 'vitest';
import { distanceFrom, distanceWords, scaleFrom } from '../../../src/app/model/measures.ts';

describe('a scale', () => {
  it.each([
    ['1:24', 24],
    ['1/35', 35],
    ['43', 43],
    [' 1 : 12 ', 12],
    ['1:22,5', 22.5],
    ['1:1', 1],
    ['1:200', 200],
  ])('%s', (text, scale) => expect(scaleFrom(text)).toBe(scale));

  it.each(['', '0', '1:0.5', '1:201', '24 mm', '2:24', '-24', 'twenty', '1:24:1'])(
    '“%s” is none',
    (text) => expect(scaleFrom(text)).toBeUndefined(),
  );
});

describe('a distance', () => {
  it.each([
    ['400', 400],
    ['450 mm', 450],
    ['45 cm', 450],
    ['0.45 m', 450],
    ['1,5 M', 1500],
    ['2m', 2000],
    ['5 cm', 50],
    ['20 m', 20_000],
  ])('%s', (text, mm) => expect(distanceFrom(text)).toBe(mm));

  it.each(['', '4 cm', '21 m', '40 in', 'far', '-1 m', '1 m 20'])('“%s” is none', (text) =>
    expect(distanceFrom(text)).toBeUndefined(),
  );

  it.each([50, 400, 999, 1000, 1500, 20_000])('%i mm comes back from its words', (mm) =>
    expect(distanceFrom(distanceWords(mm))).toBe(mm),
  );
});
