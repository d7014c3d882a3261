/** What is cut, mistyped or meant for another round is told apart, and never counted. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markDigits, markOf } from '../../../src/opinion/mark.ts';
import { checkOf } from '../../../src/opinion/reply/check.ts';
import { ReplyError } from '../../../src/opinion/reply/fault.ts';
import { isCounted, readReply, repliesIn } from '../../../src/opinion/reply/read.ts';
import { replyOf } from '../../../src/opinion/reply/write.ts';
import type { Round } from '../../../src/opinion/round.ts';
import { answered, answerTo, demoRound, roundWith } from './arbitrary.ts';

/** A code with a right check character, whatever it says. */
const sealed = (body: string): string => `[${body}-${checkOf(body)}]`;
const mark = markOf(demoRound);
const faultOf = (text: string, round: Round = demoRound): string | undefined => {
  try {
    readReply(text, round);
    return undefined;
  } catch (error) {
    if (!(error instanceof ReplyError)) throw error;
    return error.fault ?? error.problems[0]?.found;
  }
};

describe('a reply that is not what it was', () => {
  it('is never taken for another answer where one character is wrong', () => {
    const characters = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
    const rounds = [demoRound, roundWith(9), roundWith(26)].map((round) =>
      answerTo(round).map((answer) => ({ round, answer })),
    );
    fc.assert(
      fc.property(fc.oneof(...rounds), ({ round, answer }) => {
        const [opening = '', code = ''] = replyOf(round, answer).split('\n');
        for (let at = 1; at < code.length - 1; at++) {
          if (code[at] === '-') continue;
          for (const wrong of characters) {
            const altered = code.slice(0, at) + wrong + code.slice(at + 1);
            const [found] = repliesIn(`${opening}\n${altered}`, round);
            expect(found).toBeDefined();
            if (found !== undefined && isCounted(found)) expect(found.answer).toEqual(answer);
          }
        }
      }),
      { seed: 3736, numRuns: 12 },
    );
  });

  it('is told, not passed over, where a character is lost or doubled', () => {
    fc.assert(
      fc.property(answered(), fc.nat(), fc.boolean(), ({ round, answer }, seed, isLost) => {
        const code = replyOf(round, answer).split('\n')[1] ?? '';
        // Behind the bracket and up to the last but one, where the check stands alone.
        const at = 1 + (seed % (code.length - 4));
        fc.pre(code[at] !== '-' && !(isLost && code[at - 1] === '-' && code[at + 1] === '-'));
        const altered = isLost
          ? code.slice(0, at) + code.slice(at + 1)
          : code.slice(0, at) + code[at] + code.slice(at);
        expect(repliesIn(altered, round)).toHaveLength(1);
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  it('is told as damaged wherever it is cut behind the mark and the letter', () => {
    fc.assert(
      fc.property(answered(), fc.nat(), ({ round, answer }, seed) => {
        const reply = replyOf(round, answer);
        const start = reply.lastIndexOf('[') + '[0000-A'.length;
        const length = start + (seed % (reply.length - start));
        const found = repliesIn(reply.slice(0, length), round);
        expect(found).toMatchObject([{ fault: 'damaged' }]);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('for another round is told so, and not counted here', () => {
    fc.assert(
      fc.property(answered(), answered(), (one, other) => {
        fc.pre(markOf(one.round) !== markOf(other.round));
        const found = repliesIn(replyOf(one.round, one.answer), other.round);
        expect(found).toMatchObject([{ fault: 'other round' }]);
      }),
      { seed: 2, numRuns: 100 },
    );
  });

  it.each([
    ['passes over what only adds, A to M', `${mark}-B-X`.replace('X', 'D7QZ'), undefined],
    ['passes over padding', `${mark}-B-K`, undefined],
    ['says newer where a section changes the answer', `${mark}-B-N1`, 'newer'],
    ['says newer before it looks at what it knows', `${mark}-B-PAAAAAAAAA-Z`, 'newer'],
    ['refuses a letter that is not asked about', `${mark}-Q`, 'not of this round'],
    ['refuses too many parts', `${mark}-B-PABCABC`, 'not of this round'],
    ['refuses too few parts', `${mark}-B-PA`, 'not of this round'],
    ['refuses a part with a letter that is not there', `${mark}-B-PZ0000`, 'not of this round'],
    ['refuses half a pair', `${mark}-B-VABC`, 'not of this round'],
    ['refuses a pair of one', `${mark}-B-VAA`, 'not of this round'],
    ['refuses a section that stands twice', `${mark}-B-VAB-VBA`, 'not of this round'],
    ['takes sections in any order', `${mark}-B-VAB-PA0000`, undefined],
  ])('%s', (_title, body, fault) => {
    expect(faultOf(sealed(body))).toBe(fault);
  });

  it('contradicts itself where the sentence was changed and the code was not', () => {
    const reply = replyOf(demoRound, { letter: 'B', parts: {}, pairs: [], words: 'nice' });
    expect(faultOf(reply.replace('B for me', 'A for me'))).toBe('contradicts itself');
    // What the viewer says of another letter behind the opening is no contradiction.
    const words = 'A for me is too loud';
    const chosen = { letter: 'B', parts: {}, pairs: [], words };
    expect(readReply(replyOf(demoRound, chosen), demoRound)).toEqual(chosen);
  });

  it('is not found at all in plain talk', () => {
    for (const text of [
      '',
      'B please!',
      'a Type-R in semi-gloss (see [1] and [note])',
      '[]',
      '[-]',
    ]) {
      expect(repliesIn(text, demoRound)).toEqual([]);
      expect(() => readReply(text, demoRound)).toThrow(/expected a reply/);
    }
  });

  it('more than one is none', () => {
    const reply = replyOf(demoRound, { letter: 'B', parts: {}, pairs: [], words: '' });
    expect(faultOf(`${reply}\n${reply}`)).toBe('2 replies');
  });

  it('an answer that the round does not ask for is not written', () => {
    const none = { letter: 'A', parts: {}, pairs: [], words: '' };
    for (const wrong of [
      { ...none, letter: 'Z' },
      { ...none, letter: '' },
      { ...none, parts: { stripes: 'Q' } },
      { ...none, parts: { engine: 'A' } },
      { ...none, pairs: [{ chosen: 'A', over: 'A' }] },
    ]) {
      expect(() => replyOf(demoRound, wrong)).toThrow(/expected/);
    }
  });

  it('never makes the reader stumble, whatever is pasted', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        '[',
        ']',
        '-',
        '–',
        `[${mark}`,
        `${mark}-B-`,
        '&#91;',
        '&amp;',
        '>',
        '\n',
        ' ',
      ),
      fc.string({ unit: 'binary', maxLength: 6 }),
      fc.constantFrom(...markDigits),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        for (const found of repliesIn(pieces.join(''), demoRound)) {
          if (isCounted(found)) expect('ABC').toContain(found.answer.letter);
        }
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it('comes to an end with a long text made to hold it up', () => {
    const patterns = [
      '[',
      `[${mark}-`,
      `${mark}-B-`,
      '&amp;',
      '&a&#8203;m',
      '> ',
      'B for me. ',
      '\n\n',
    ];
    const reply = replyOf(demoRound, { letter: 'A', parts: {}, pairs: [], words: '' });
    for (const pattern of patterns) {
      const text = `${pattern.repeat(400_000 / pattern.length)} \n\n${reply}`;
      const found = repliesIn(text, demoRound).filter(isCounted);
      expect(found.map(({ answer }) => answer.letter)).toEqual(['A']);
    }
    const crowd = `${reply.replace('\n', ' ')} `.repeat(20_000);
    expect(repliesIn(crowd, demoRound).filter(isCounted)).toHaveLength(20_000);
  });
});
