/** What can be asked of a build, and what becomes of a round on a bench. Oracle: brute force. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthWords } from '../../../src/app/ask/length.ts';
import { partsToAsk, toggled } from '../../../src/app/ask/wanted.ts';
import { openedWords } from '../../../src/app/opening/round.ts';
import { assignmentOf } from '../../../src/build/build.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { buildOf } from '../../../src/opinion/own.ts';
import { lettersIn, roundOf } from '../../../src/opinion/round.ts';
import { demo } from '../../opinion/reply/arbitrary.ts';

const ids = demo.alternatives.map(({ id }) => id);

describe('parts that can be asked one by one', () => {
  it('are those that differ on the wanted alternatives, for every choice of these', () => {
    fc.assert(
      fc.property(fc.subarray(ids), (wanted) => {
        const worn = demo.alternatives
          .filter(({ id }) => wanted.includes(id))
          .map((one) => assignmentOf(demo, one));
        const differing = demo.parts.filter(
          ({ id, absent }) =>
            !absent && worn.some((one) => worn.some((other) => one.get(id) !== other.get(id))),
        );
        expect(partsToAsk(demo, wanted)).toEqual(differing);
      }),
    );
  });

  it('are ticked and unticked without repeats', () => {
    expect(toggled(['a', 'b'], 'b', true)).toEqual(['a', 'b']);
    expect(toggled(['a', 'b'], 'a', false)).toEqual(['b']);
  });
});

describe('a round on a bench', () => {
  const round = roundOf(demo, { parts: ['stripes'], withStory: true });

  it('is a build that opens, whose round is the same question', () => {
    const build = buildFrom(buildOf(round));
    expect(roundOf(build, { parts: ['stripes'], withStory: true })).toEqual(round);
    expect(build.name).toBe(demo.name);
  });

  it('names alternatives by something else than their letters, each by its own', () => {
    const names = buildOf(round).alternatives.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).not.toMatch(/^[A-Z]$/);
  });

  it('tells which was chosen, under the letter that it has here', () => {
    expect(openedWords(round, 'B')).toMatch(/You chose B\.$/);
    expect(openedWords(round, undefined)).not.toMatch(/chose/);
    expect(openedWords(round, 'Z')).not.toMatch(/chose/);
    const [, ...later] = ids;
    const without = roundOf(demo, { alternatives: later });
    expect(lettersIn(without)).toEqual(['B', 'C']);
    expect(openedWords(without, 'C')).toMatch(/You chose C, which is B here\.$/);
  });
});

describe('the length of a link', () => {
  it('is told plainly, and from 2,001 characters on with what may become of it', () => {
    expect(lengthWords(512)).toBe('512 characters, fits anywhere we know of.');
    expect(lengthWords(2000)).toMatch(/^2,000 characters, fits/);
    expect(lengthWords(2001)).toMatch(/^2,001 characters\. Over 2,000, .* may cut it/);
  });
});
