/** A viewer's words: what goes along stays as it is, and nothing hidden or steering is in it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestWords } from '../../../src/opinion/answer.ts';
import { spansIn } from '../../../src/opinion/reply/scan.ts';
import { plainText, wordsFrom } from '../../../src/opinion/reply/words.ts';
import { typed } from './arbitrary.ts';

describe('words', () => {
  it('stay as they are when put through again, in one line, within the limit', () => {
    fc.assert(
      fc.property(typed, (text) => {
        const words = wordsFrom(text);
        expect(wordsFrom(words)).toBe(words);
        expect(plainText(words)).toBe(words);
        expect(words.length).toBeLessThanOrEqual(longestWords);
        expect(words).not.toMatch(/[\p{Cc}\p{Cs}\u200b\u202a-\u202e\u2066-\u2069]|\s\s|^\s|\s$/u);
        expect(spansIn(words)).toEqual([]);
      }),
      { seed: 2031, numRuns: 800 },
    );
  });

  it.each([
    ['  the copper\n\nlooks  right\t', 'the copper looks right'],
    ['caf\u0065\u0301 racer', 'café racer'],
    ['&lt;b&gt;bold&lt;/b&gt; &amp;amp; plain', '<b>bold</b> & plain'],
    ['not \u202egnihtyna\u202c but this', 'not gnihtyna but this'],
    ['as she said [7QKP-B-PA0-M], yes', 'as she said [7QKP/B/PA0/M], yes'],
    ['7qkp–b–m', '7qkp/b/m'],
    ['a Type-R with two-tone semi-gloss', 'a Type-R with two-tone semi-gloss'],
    ['عجلات\u200cها', 'عجلات\u200cها'],
    ['> > so it goes', 'so it goes'],
  ])('%j goes along as %j', (text, words) => {
    expect(wordsFrom(text)).toBe(words);
  });

  it('are cut between characters as a reader sees them', () => {
    // Each is seven UTF-16 units: 71 of them are 497, the 72nd would pass 500.
    const mechanic = '👩🏽‍🔧';
    expect(mechanic).toHaveLength(7);
    expect(wordsFrom(mechanic.repeat(80))).toBe(mechanic.repeat(71));
  });

  it('come to an end however often something was written as HTML', () => {
    expect(wordsFrom(`&${'amp;'.repeat(1500)}lt;`)).toBe('<');
  });
});
