/** Accents tried on all the parts that may wear them. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import type { Build, Rule } from '../../../src/build/build.ts';
import {
  addAlternative,
  alternativePerShared,
  noteAlternative,
  renameAlternative,
  toCompare,
} from '../../../src/build/edit/alternative.ts';
import { setAbsent, wearOn } from '../../../src/build/edit/part.ts';
import { sharedFinishes } from '../../../src/build/edit/shared.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { ref, sketched } from '../sample.ts';

const names = (build: Build) => build.alternatives.map(({ name }) => name);
const worn = (build: Build, part: string) =>
  build.alternatives.map(({ choices }) => choices[part]?.split('/')[1]);
const sound = (build: Build): Build => {
  expect(buildFrom(structuredClone(build))).toEqual(build);
  return build;
};
const called = (build: Build, name: string) => renameAlternative(build, 'first', name);
/** Three accents that share teal and red, one part with a choice of its own, one without. */
const accents = (rules: readonly Rule[] = []) =>
  called(
    sketched({
      parts: {
        piping: ['teal', 'red'],
        dash: ['teal', 'red'],
        badges: ['red', 'teal', 'slate'],
        stripes: ['sand', 'slate'],
        body: 'sand',
      },
      rules,
    }),
    'First idea',
  );
const groups = (build: Build) =>
  sharedFinishes(build).map((group) => group.map(({ finish, parts }) => [finish, parts]));

describe('what open parts share', () => {
  it('is what two of them have at least two of in common, each with all parts that may wear it', () => {
    expect(groups(accents())).toEqual([
      [
        [ref('teal'), ['piping', 'dash', 'badges']],
        [ref('red'), ['piping', 'dash', 'badges']],
      ],
    ]);
  });

  it('is nothing where only one finish is common, or only one part is open', () => {
    const parts = { piping: ['teal', 'red'], dash: ['teal', 'sand'], body: 'sand' };
    expect(groups(sketched({ parts }))).toEqual([]);
    expect(groups(sketched({ parts: { piping: ['teal', 'red'], body: 'teal' } }))).toEqual([]);
  });

  it('does not ask about parts that are not on the model', () => {
    const without = setAbsent(setAbsent(accents(), 'dash', true), 'badges', true);
    expect(groups(without)).toEqual([]);
  });

  it('leaves out parts that a rule ties to one that cannot wear it', () => {
    const tied = accents([{ kind: 'same', parts: ['badges', 'stripes'] }]);
    expect(groups(tied)).toEqual([
      [
        [ref('teal'), ['piping', 'dash']],
        [ref('red'), ['piping', 'dash']],
      ],
    ]);
  });
});

describe('one all in each', () => {
  it('makes the first of them of the one alternative that came with the build', () => {
    const made = sound(alternativePerShared(accents()));
    expect(names(made)).toEqual(['Teal', 'Red']);
    for (const part of ['piping', 'dash', 'badges'])
      expect(worn(made, part)).toEqual(['teal', 'red']);
    expect(worn(made, 'stripes')).toEqual(['sand', 'sand']);
    expect(toCompare(made)).toBeUndefined();
    expect(alternativePerShared(made)).toBe(made);
  });

  it.each([
    ['that was named', (build: Build) => called(build, 'Quiet')],
    ['with a note', (build: Build) => noteAlternative(build, 'first', 'For the show.')],
    [
      'that wears something chosen',
      (build: Build) => wearOn(build, 'first', 'stripes', ref('slate')),
    ],
  ])('leaves one %s as it is', (_what, change) => {
    const begun = change(accents());
    const made = sound(alternativePerShared(begun));
    expect(made.alternatives[0]).toBe(begun.alternatives[0]);
    expect(names(made).slice(1)).toEqual(['Teal', 'Red']);
  });

  it('leaves two alternatives as they are, and makes none a second time', () => {
    const red = wearOn(
      wearOn(accents(), 'first', 'piping', ref('red')),
      'first',
      'dash',
      ref('red'),
    );
    const two = addAlternative(called(red, 'Mine'), 'Other');
    expect(toCompare(two)?.there.map(({ finish }) => finish)).toEqual([ref('red')]);
    const made = sound(alternativePerShared(two));
    expect(names(made)).toEqual(['Mine', 'Other', 'Teal']);
    expect(worn(made, 'badges')).toEqual(['red', 'red', 'teal']);
  });

  it('keeps what a rule says shall be the same', () => {
    const tied = accents([{ kind: 'same', parts: ['badges', 'stripes'] }]);
    const made = sound(alternativePerShared(tied));
    expect(worn(made, 'piping')).toEqual(['teal', 'red']);
    expect(worn(made, 'badges')).toEqual(['red', 'red']);
    const together = accents([{ kind: 'same', parts: ['badges', 'dash'] }]);
    expect(worn(alternativePerShared(together), 'badges')).toEqual(['teal', 'red']);
  });
});
