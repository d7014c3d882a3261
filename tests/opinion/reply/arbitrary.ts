/** Rounds, answers and words for properties: any letters, parts and pairs, any text people type. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { letterOf } from '../../../src/build/build.ts';
import { parseBuild } from '../../../src/build/file.ts';
import type { Answer } from '../../../src/opinion/answer.ts';
import { wordsFrom } from '../../../src/opinion/reply/words.ts';
import { differingParts, lettersIn, type Round, roundOf } from '../../../src/opinion/round.ts';

const demoFile = new URL('../../../src/build/demo.json', import.meta.url);
export const demo = parseBuild(readFileSync(demoFile, 'utf8'), 'the demo');

/** The demo's round, every part that differs asked about. */
export const demoRound = roundOf(demo, { parts: differingParts(demo) });

/** The demo's round with so many alternatives, and names of parts replaced in turn. */
export function roundWith(count: number, asked = 99, names: readonly string[] = []): Round {
  const { build } = demoRound;
  const alternatives = Array.from({ length: count }, (_, at) => {
    const like = build.alternatives[at % build.alternatives.length]!;
    return { ...like, id: letterOf(at).toLowerCase(), name: letterOf(at) };
  });
  const parts = build.parts.map((part, at) => ({ ...part, name: names[at] ?? part.name }));
  return { build: { ...build, alternatives, parts }, asks: demoRound.asks.slice(0, asked) };
}

const trouble = [
  '[7QKP-B-PA0-M]',
  'B for me.',
  '7QKP-B-M',
  '[',
  ']',
  '&amp;',
  '<b>loud</b>',
  '> quoted',
  '\n',
  '\r\n\r\n',
  '  ',
  '"straight" and “curly”',
  "it's ’tis",
  '\u202eturned\u202c',
  '\u200b',
  '👩🏽‍🔧',
  '🏴󠁧󠁢󠁥󠁮󠁧󠁿',
  'é',
  'e\u0301',
  'أحب العجلات النحاسية',
  'אני בעד הגלגלים',
  '-',
  '—',
  '@maker ',
  'A for me; wheels as B.',
  '\u0000\u0007\u001b[31m',
  '\ud83d',
];

/** Raw words as somebody might type or paste them. */
export const typed: fc.Arbitrary<string> = fc.oneof(
  { weight: 1, arbitrary: fc.constant('') },
  { weight: 3, arbitrary: fc.string({ unit: 'grapheme', maxLength: 60 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 60 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', minLength: 480, maxLength: 700 }) },
  {
    weight: 4,
    arbitrary: fc
      .array(fc.oneof(fc.constantFrom(...trouble), fc.string({ maxLength: 8 })), { maxLength: 8 })
      .map((pieces) => pieces.join('')),
  },
);

/** A round of 2 to `most` alternatives whose parts have any names, and an answer to it. */
export const answered = (most = 26): fc.Arbitrary<{ round: Round; answer: Answer }> =>
  fc
    .record({
      count: fc.integer({ min: 2, max: most }),
      asked: fc.integer({ min: 0, max: demoRound.asks.length }),
      names: fc.array(
        fc.oneof(
          fc.constant('Wheels'),
          typed.map((text) => text.slice(0, 120)),
        ),
        { minLength: 12, maxLength: 12 },
      ),
    })
    .map(({ count, asked, names }) => roundWith(count, asked, names))
    .chain((round) => answerTo(round).map((answer) => ({ round, answer })));

/** Any answer to a round. */
export function answerTo(round: Round): fc.Arbitrary<Answer> {
  const letters = lettersIn(round);
  const letter = fc.constantFrom(...letters);
  const pair = fc
    .tuple(letter, letter)
    .filter(([chosen, over]) => chosen !== over)
    .map(([chosen, over]) => ({ chosen, over }));
  const choices = fc.tuple(...round.asks.map(() => fc.option(letter, { nil: undefined })));
  return fc.record({
    letter,
    parts: choices.map((chosen) =>
      Object.fromEntries(
        round.asks.flatMap((id, at) => (chosen[at] === undefined ? [] : [[id, chosen[at]]])),
      ),
    ),
    pairs: fc.array(pair, { maxLength: letters.length + 3 }),
    words: typed.map(wordsFrom),
  });
}
