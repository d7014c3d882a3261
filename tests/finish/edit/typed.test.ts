/**
 * Is what hands type read as they mean it? Hex forms after CSS Color Module Level 4, section 5.2
 * (three digits are each doubled); numbers are derived by hand.
 */
import { describe, expect, it } from 'vitest';
import { hexTyped, numberTyped, perhapsNumberTyped } from '../../../src/finish/edit/typed.ts';

const gloss = { low: 0, high: 100, unit: 'GU' };

describe('numbers typed into a field', () => {
  it.each([
    ['45', 45],
    [' 12.5 ', 12.5],
    ['12,5', 12.5],
    ['.5', 0.5],
    ['7.', 7],
    ['+3', 3],
    ['0', 0],
    ['100', 100],
  ])('%j is %d', (text, value) => {
    expect(numberTyped(text, gloss)).toEqual({ value });
  });

  it('takes both sorts of minus', () => {
    const span = { low: -160, high: 160 };
    expect(numberTyped('-5', span)).toEqual({ value: -5 });
    expect(numberTyped('−5', span)).toEqual({ value: -5 });
  });

  it.each(['', ' ', 'matt', '1.2.3', '1,2,3', '1e9', '12 GU', 'Infinity', 'NaN', '--1', '0x10'])(
    '%j is refused with what to write',
    (text) => {
      expect(numberTyped(text, gloss).fault).toMatch(/a number from 0 to 100 GU/);
    },
  );

  it('tells too high from too low, and whole numbers from others', () => {
    expect(numberTyped('101', gloss).fault).toMatch(/too high/);
    expect(numberTyped('-1', gloss).fault).toMatch(/too low/);
    expect(numberTyped('2.5', { low: 1, high: 20, isWhole: true }).fault).toMatch(/not whole/);
    expect(numberTyped('3', { low: 1, high: 20, isWhole: true })).toEqual({ value: 3 });
  });

  it('an empty field may mean that nothing is said', () => {
    expect(perhapsNumberTyped(' ', gloss)).toEqual({ value: undefined });
    expect(perhapsNumberTyped('x', gloss).fault).toBeDefined();
  });
});

describe('colour codes typed into a field', () => {
  it.each([
    ['#B3402a', '#b3402a'],
    ['b3402a', '#b3402a'],
    ['#abc', '#aabbcc'],
    [' 0f0 ', '#00ff00'],
  ])('%j is %s', (text, value) => {
    expect(hexTyped(text)).toEqual({ value });
  });

  it.each(['', '#', '#12', '#12345', '#1234567', 'red', '#12345g', 'rgb(1,2,3)'])(
    '%j is refused with what to write',
    (text) => {
      expect(hexTyped(text).fault).toMatch(/# and six digits/);
    },
  );
});
