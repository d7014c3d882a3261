/** Whatever a viewer answers is read back as it was, whatever a channel did on the way. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isCounted, readReply, repliesIn } from '../../../src/opinion/reply/read.ts';
import { wordsFrom } from '../../../src/opinion/reply/words.ts';
import { replyOf } from '../../../src/opinion/reply/write.ts';
import { answered, answerTo, demoRound } from './arbitrary.ts';
import { around, mistyped, through } from './channels.ts';

describe('a reply is read back exactly', () => {
  it('for any letters, parts, pairs, names of parts and words', () => {
    fc.assert(
      fc.property(answered(), ({ round, answer }) => {
        const reply = replyOf(round, answer);
        expect(readReply(reply, round)).toEqual(answer);
        expect(reply.length).toBeLessThanOrEqual(2000);
      }),
      { seed: 1131, numRuns: 250 },
    );
  });

  it.each(Object.entries(around))('after %s', (_name, channel) => {
    fc.assert(
      fc.property(answered(), ({ round, answer }) => {
        expect(readReply(channel(replyOf(round, answer)), round)).toEqual(answer);
      }),
      { seed: 1132, numRuns: 40 },
    );
  });

  it.each(Object.entries(through))('after %s', (_name, channel) => {
    fc.assert(
      fc.property(answered(), ({ round, answer }) => {
        const read = readReply(channel(replyOf(round, answer)), round);
        expect(read).toEqual({ ...answer, words: wordsFrom(channel(answer.words)) });
      }),
      { seed: 1136, numRuns: 40 },
    );
  });

  it.each(Object.entries(mistyped))('after typing %s', (_name, mistype) => {
    // With 15 or more alternatives O is a letter too; the next test has those.
    fc.assert(
      fc.property(answered(14), ({ round, answer }) => {
        expect(readReply(mistype(replyOf(round, answer)), round)).toEqual(answer);
      }),
      { seed: 1133, numRuns: 150 },
    );
  });

  it('or refused, never read as something else, where O and 0 both mean something', () => {
    // The check character promises this for one wrong character, not for several.
    const swaps = [/0/, /O/, /1/, /I/, /L/].map(
      (from) => (code: string, to: string) => code.replace(from, to),
    );
    fc.assert(
      fc.property(
        answered(),
        fc.constantFrom(...swaps),
        fc.constantFrom(...'0O1IL'),
        (asked, swap, to) => {
          const { round, answer } = asked;
          const [line = '', code = ''] = replyOf(round, answer).split('\n');
          const [found] = repliesIn(`${line}\n${swap(code, to)}`, round);
          expect(found).toBeDefined();
          if (found !== undefined && isCounted(found)) expect(found.answer).toEqual(answer);
        },
      ),
      { seed: 1134, numRuns: 250 },
    );
  });

  it('when many stand in one thread, each with its own words', () => {
    const thread = fc.array(answerTo(demoRound), { minLength: 1, maxLength: 12 });
    const noise = fc.constantFrom('', '\n@someone_else · 1h\nlovely car!\n', '\n\n', ' ');
    fc.assert(
      fc.property(thread, noise, (answers, between) => {
        const text = answers
          .map((answer, at) => `@viewer${at}\n${replyOf(demoRound, answer)}\nReply${between}`)
          .join('\n');
        const found = repliesIn(text, demoRound);
        expect(found.filter(isCounted).map(({ answer }) => answer)).toEqual(answers);
        const lines = text.split('\n');
        for (const { line, code } of found) expect(lines[line - 1]).toBe(code);
      }),
      { seed: 1135, numRuns: 50 },
    );
  });
});
