/** Messages about bad input: whole sentences, short, harmless on any screen. */
import { describe, expect, it } from 'vitest';
import { InputError, problemSentence, shown } from '../../src/ground/problem.ts';

const problem = {
  place: 'parts › belts › finish',
  found: '“shelf/reed”',
  expected: 'a finish this build holds',
  mend: 'Did you mean “shelf/red”?',
};

describe('a problem', () => {
  it('reads as place, what stands there, what should, and how to mend it', () => {
    expect(problemSentence(problem)).toBe(
      'parts › belts › finish: found “shelf/reed”; expected a finish this build holds. Did you mean “shelf/red”?',
    );
  });

  it('about the whole input starts without a place', () => {
    expect(problemSentence({ ...problem, place: '' })).toMatch(/^found /);
  });
});

describe('an input error', () => {
  it('carries every problem and names its source', () => {
    const error = new InputError([problem, { ...problem, place: 'row 14' }], 'shelf.csv');
    expect(error).toBeInstanceOf(Error);
    expect(error.problems.map(({ place }) => place)).toEqual(['parts › belts › finish', 'row 14']);
    expect(error.source).toBe('shelf.csv');
    expect(error.message.split('\n')).toHaveLength(2);
  });
});

describe('a shown value', () => {
  it('says numbers and truth plainly, and words in quotation marks', () => {
    expect([shown(4), shown(Number.NaN), shown(false), shown(null)]).toEqual([
      '4',
      'NaN',
      'false',
      'null',
    ]);
    expect(shown('teal')).toBe('“teal”');
    expect(shown('')).toBe('“”');
    expect(shown(undefined)).toBe('nothing');
  });

  it('never spills a list or an object into the message', () => {
    expect(shown([1, 2, 3])).toBe('a list of 3');
    expect(shown({ name: 'secret' })).toBe('an object');
  });

  it('cuts a megabyte down to sixty letters and says so', () => {
    const text = shown('x'.repeat(1_000_000));
    expect(text).toBe(`“${'x'.repeat(60)}…”`);
  });

  it('keeps markup as the text it is', () => {
    expect(shown('<b>hi</b>')).toBe('“<b>hi</b>”');
  });

  it.each([
    ['a bell', '\u0007', '\\u0007'],
    ['a line break', '\n', '\\u000a'],
    ['an escape sequence', '\u001b', '\\u001b'],
    ['a right-to-left override', '\u202e', '\\u202e'],
    ['a direction isolate', '\u2066', '\\u2066'],
    ['a byte order mark', '\ufeff', '\\ufeff'],
  ])('writes out %s instead of sending it to the screen', (_what, character, written) => {
    expect(shown(`red${character}car`)).toBe(`“red${written}car”`);
  });
});
