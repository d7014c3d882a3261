/** A thread as somebody pastes it: every code with its line, its words, or why it does not count. */
import { describe, expect, it } from 'vitest';
import { problemOf } from '../../../src/opinion/reply/fault.ts';
import { isCounted, repliesIn } from '../../../src/opinion/reply/read.ts';
import { replyOf } from '../../../src/opinion/reply/write.ts';
import { demoRound, roundWith } from './arbitrary.ts';

const reply = (letter: string, words = '', parts: Record<string, string> = {}): string =>
  replyOf(demoRound, { letter, parts, pairs: [], words });
const codeOf = (text: string): string => text.split('\n').at(-1) ?? '';

describe('a pasted thread', () => {
  const thread = [
    '@garage_door · 2 days ago', // 1
    reply('B', 'the marigold sings', { stripes: 'A' }), // 2–3
    '2 likes · Reply', // 4
    '', // 5
    '@old_hand · 1 day ago', // 6
    'B for me.', // 7: said in words alone, no code
    '', // 8
    '@quoter · 1 day ago', // 9
    reply('B', 'the marigold sings', { stripes: 'A' }).replace(/^/gm, '> '), // 10–11
    `I'd rather: ${reply('C')}`, // 12–13
    '', // 14
    '@late · 3 hours ago', // 15
    `my own words instead ${codeOf(reply('A'))}`, // 16
    '', // 17
    '@elsewhere', // 18
    replyOf(roundWith(2), { letter: 'A', parts: {}, pairs: [], words: 'hello' }), // 19–20
    '@cut', // 21
    reply('B').slice(0, -2), // 22–23
  ].join('\n');
  const found = repliesIn(thread, demoRound);

  it('gives each code with its line', () => {
    expect(found.map(({ line }) => line)).toEqual([3, 11, 13, 16, 20, 23]);
  });

  it('counts what is whole and says what is not', () => {
    expect(found.map((one) => (isCounted(one) ? one.answer.letter : one.fault))).toEqual([
      'B',
      'quoted again',
      'C',
      'A',
      'other round',
      'damaged',
    ]);
  });

  it('gives each its own words and nobody else’s', () => {
    expect(found.slice(0, 3).map(({ words }) => words)).toEqual([
      'the marigold sings',
      'the marigold sings',
      '',
    ]);
    expect(found[0]).toMatchObject({ answer: { parts: { stripes: 'A' } }, isOpened: true });
    // Where the opening is gone, whose words they are is less sure, and said so.
    expect(found[3]).toMatchObject({
      words: '@late · 3 hours ago my own words instead',
      isOpened: false,
    });
  });

  it('tells each fault with its place and how to mend it', () => {
    const sentences = found.flatMap((one) => (isCounted(one) ? [] : [problemOf(one, demoRound)]));
    expect(sentences.map(({ place }) => place)).toEqual(['line 11', 'line 20', 'line 23']);
    for (const { found: seen, expected, mend } of sentences) {
      expect(seen).toMatch(/^“\[/);
      expect(expected).not.toBe('');
      expect(mend).toMatch(/\.$/);
    }
  });

  it('counts a reply that stands only quoted', () => {
    const quoted = reply('C', 'so they said').replace(/^/gm, '> ');
    const [one] = repliesIn(quoted, demoRound);
    expect(one).toMatchObject({ answer: { letter: 'C', words: 'so they said' }, isQuoted: true });
  });

  it('counts two viewers who say the same', () => {
    const both = repliesIn(`${reply('C')}\n\n${reply('C')}`, demoRound);
    expect(both.filter(isCounted)).toHaveLength(2);
  });

  it('takes a code without brackets behind its own mark only', () => {
    const bare = codeOf(reply('B', '', { badges: 'C' })).slice(1, -1);
    expect(repliesIn(`B for me: ${bare}.`, demoRound)).toMatchObject([{ answer: { letter: 'B' } }]);
    expect(repliesIn(bare, roundWith(2))).toEqual([]);
  });

  it('is read where lines were wrapped, the opening too', () => {
    const words = 'I would leave the stripes as they are and put the marigold on the belts';
    const text = reply('B', words, { stripes: 'A', badges: 'C' });
    const wrapped = text.replace(/(.{1,20})( |$)/gm, '> $1\n');
    expect(wrapped.split('\n').length).toBeGreaterThan(6);
    expect(repliesIn(wrapped, demoRound)).toMatchObject([
      { answer: { letter: 'B', parts: { stripes: 'A', badges: 'C' }, words }, isOpened: true },
    ]);
  });

  it('shows what somebody added behind the code, on its line only', () => {
    const added = `${reply('B', 'one')} and two\nReply\n${reply('C', 'three')}.`;
    expect(repliesIn(added, demoRound).map(({ words, after }) => [words, after])).toEqual([
      ['one', 'and two'],
      ['three', ''],
    ]);
  });

  it('hides nothing in what it shows of a code', () => {
    const long = `[${'-A'.repeat(900)}]`.replace('-A', 'ABCD-A');
    const [one] = repliesIn(long, demoRound);
    expect(one?.code.length).toBeLessThanOrEqual(200);
  });
});
