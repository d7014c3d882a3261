/** Ready texts: what is asked stands first, the link last, and every limit is counted as stated. */
import { Buffer } from 'node:buffer';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesIn, codePointsIn, fillsOf, postFor } from '../../src/opinion/post.ts';
import { demoRound, roundWith, typed } from './reply/arbitrary.ts';

const address = 'https://example.org/round.html#1abc';
const kinds = ['description', 'comment', 'chat'] as const;

describe('a text to post', () => {
  it.each(kinds)('for a %s begins with the question and ends with the link', (kind) => {
    const { text } = postFor(kind, demoRound, { address, question: 'Where does the marigold go?' });
    const lines = text.split('\n');
    expect(lines[0]).toBe('Dragonfly roadster: Where does the marigold go? A, B or C?');
    expect(lines.at(-1)).toMatch(new RegExp(`${address.replace(/[.]/g, '\\.')}$`));
    // As the demo has it: A stripes in Oyster, B in Slate trim.
    expect(text).toContain('A: stripes in Oyster');
    expect(text).toContain('B: stripes in Slate trim');
    expect(text).toContain('Write A, B or C');
  });

  it('names every part where at most one would be left out', () => {
    const many = { ...demoRound, asks: [] };
    for (const kind of kinds) {
      const { text } = postFor(kind, many, { address });
      for (const part of ['stripes', 'mirrors', 'seat piping', 'dashboard', 'badges']) {
        expect(text).toContain(`${part} in `);
      }
    }
  });

  it('keeps the question in what is seen at once: name and letters give way to it', () => {
    fc.assert(
      fc.property(typed, fc.integer({ min: 2, max: 26 }), (question, count) => {
        const { text, fills } = postFor('comment', roundWith(count), { address, question });
        const [first = ''] = text.split('\n');
        const [seen] = fills;
        expect(seen?.count).toBe([...first].length);
        expect(seen?.over).toBe(Math.max(0, [...first].length - 150));
        expect(text.endsWith(address)).toBe(true);
      }),
      { seed: 150, numRuns: 300 },
    );
    const long = 'Which of these would you put on the shelf next to a green one? '.repeat(2).trim();
    const [line] = postFor('chat', demoRound, { address, question: long }).text.split('\n');
    expect(line).toBe(`${long} A, B or C?`);
  });

  it('is counted in code points, UTF-16 units and bytes', () => {
    // Worked by hand: U+1F3CE U+FE0F is 2 code points, 3 units, 7 bytes; é is 1, 1, 2.
    const text = '🏎️é';
    expect(codePointsIn(text)).toBe(3);
    expect(text).toHaveLength(4);
    expect(bytesIn(text)).toBe(9);
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (any) => {
        expect(bytesIn(any)).toBe(Buffer.byteLength(any, 'utf8'));
      }),
      { seed: 5000, numRuns: 200 },
    );
  });

  it.each([
    ['comment', 'a'.repeat(150), 0, 0],
    ['comment', 'a'.repeat(151), 1, 0],
    ['chat', `?\n${'🏎'.repeat(1000)}`, 0, 2],
    ['description', `?\n${'é'.repeat(2499)}`, 0, 0],
    ['description', `?\n${'é'.repeat(2501)}`, 0, 4],
  ] as const)('a %s is told by how much it passes which limit', (kind, text, seen, whole) => {
    expect(fillsOf(kind, text).map(({ over }) => over)).toEqual([seen, whole]);
  });
});
