/**
 * Words in pictures and names of their files. Files: the portable filename character set of POSIX
 * (IEEE Std 1003.1-2017, 3.282; from memory: A–Z a–z 0–9 . _ -). Lines: a brute search over all
 * ways to break.
 */
import { describe, expect, it } from 'vitest';
import { fileNameOf, linesOf, seenWords, shortened } from '../../../src/app/picture/words.ts';

describe('names of files', () => {
  it.each([
    'Dragonfly roadster',
    'Über/alles: "Grün" & Crème?',
    '…/..\\con',
    'x'.repeat(300),
    '車',
  ])('are portable: %s', (name) => {
    const file = fileNameOf({ id: 'my-build', name }, ['A', 'B'], 'wide');
    expect(file).toMatch(/^[A-Za-z0-9][A-Za-z0-9._-]*$/);
    // What common file systems take as one name.
    expect(file.length).toBeLessThanOrEqual(255);
    expect(file.endsWith('-ab-wide.png')).toBe(true);
  });
  it('keep what can be kept of the name', () => {
    expect(fileNameOf({ id: 'b', name: 'Crème & Tan' }, ['C'])).toBe('creme-tan-c.png');
    expect(fileNameOf({ id: 'b', name: '車' }, ['C'])).toBe('b-c.png');
  });
});

describe('the conditions', () => {
  it('are told in words and metres', () => {
    expect(seenWords('D65', 400)).toBe('Seen in daylight from 0.4 m');
    expect(seenWords('A', 2000)).toBe('Seen by a warm lamp from 2 m');
  });
});

describe('lines', () => {
  const measure = (text: string): number => [...text].length;
  /** Fewest lines over every way to break between words. */
  const fewest = (words: readonly string[], width: number): number => {
    if (words.length === 0) return 0;
    let best = Number.POSITIVE_INFINITY;
    for (let take = 1; take <= words.length; take++) {
      if (measure(words.slice(0, take).join(' ')) > width) break;
      best = Math.min(best, 1 + fewest(words.slice(take), width));
    }
    return best;
  };
  const text = 'one thread of marigold on the seats and a second on the mirrors';
  it.each([8, 10, 13, 20, 80])('fit %i letters, and are as few as can be', (width) => {
    const lines = linesOf(text, width, measure);
    for (const line of lines) expect(measure(line)).toBeLessThanOrEqual(width);
    expect(lines.join(' ')).toBe(text);
    expect(lines).toHaveLength(fewest(text.split(' '), width));
  });
  it('break within a word only where it fits no line', () => {
    expect(linesOf('a marigolds b', 4, measure)).toEqual(['a', 'mari', 'gold', 's b']);
  });
  it('say by an ellipsis that some had to go', () => {
    const lines = linesOf(text, 10, measure);
    const short = shortened(lines, 2, 10, measure);
    expect(short).toHaveLength(2);
    expect(short[0]).toBe(lines[0]);
    expect(short[1]).toMatch(/…$/);
    expect(measure(short[1] ?? '')).toBeLessThanOrEqual(10);
    expect(shortened(lines, 99, 10, measure)).toEqual(lines);
  });
});
