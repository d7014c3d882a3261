/** Alternatives come, go and change places without losing a choice. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import type { Build } from '../../../src/build/build.ts';
import {
  addAlternative,
  alternativePerCandidate,
  copyAlternative,
  mostAlternatives,
  moveAlternative,
  noteAlternative,
  removeAlternative,
  renameAlternative,
} from '../../../src/build/edit/alternative.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { ref, sketched } from '../sample.ts';

const one = sketched({
  parts: { stripes: ['red', 'teal', 'sand'], mirrors: ['teal', 'sand'], body: 'sand' },
});
const names = (build: Build) => build.alternatives.map(({ name }) => name);
const sound = (build: Build): Build => {
  expect(buildFrom(structuredClone(build))).toEqual(build);
  return build;
};
const three = ['Second', 'Third'].reduce((build, name) => addAlternative(build, name), one);

describe('adding', () => {
  it('plain puts one at the end that wears every first candidate', () => {
    const added = sound(addAlternative(one, 'Quiet'));
    expect(names(added)).toEqual(['First', 'Quiet']);
    expect(added.alternatives[1]!.choices).toEqual({ stripes: ref('red'), mirrors: ref('teal') });
  });

  it('like another wears the same and stands beside it', () => {
    const changed = {
      ...three,
      alternatives: three.alternatives.map((alternative) => ({
        ...alternative,
        choices: { stripes: ref('sand'), mirrors: ref('sand'), body: ref('red') },
      })),
    };
    const added = sound(addAlternative(changed, 'Louder', 'second'));
    expect(names(added)).toEqual(['First', 'Second', 'Louder', 'Third']);
    expect(added.alternatives[2]!.choices).toEqual(changed.alternatives[1]!.choices);
  });

  it('never gives two the same id or name', () => {
    const again = sound(addAlternative(addAlternative(one, 'First'), 'First'));
    expect(names(again)).toEqual(['First', 'First 2', 'First 3']);
    expect(new Set(again.alternatives.map(({ id }) => id)).size).toBe(3);
  });

  it('ends where a file has no room for more', () => {
    let full = one;
    while (full.alternatives.length < mostAlternatives) full = addAlternative(full, 'More');
    expect(addAlternative(full, 'One too many')).toBe(full);
    expect(copyAlternative(full, 'first')).toBe(full);
    sound(full);
  });
});

describe('copying', () => {
  it('takes the note along', () => {
    const noted = noteAlternative(three, 'second', 'Teal everywhere.');
    const copied = sound(copyAlternative(noted, 'second'));
    expect(names(copied)).toEqual(['First', 'Second', 'Copy of Second', 'Third']);
    expect(copied.alternatives[2]!.note).toBe('Teal everywhere.');
  });
});

describe('one for each candidate', () => {
  it('adds those that no alternative wears yet, like the first in all else', () => {
    const spread = sound(alternativePerCandidate(one, 'stripes'));
    // All in teal is told by that alone: the mirrors are teal already.
    expect(names(spread)).toEqual(['First', 'Teal', 'Sand stripes']);
    expect(spread.alternatives.map(({ choices }) => choices.stripes)).toEqual(
      ['red', 'teal', 'sand'].map(ref),
    );
    expect(spread.alternatives.map(({ choices }) => choices.mirrors)).toEqual(
      ['teal', 'teal', 'teal'].map(ref),
    );
    expect(alternativePerCandidate(spread, 'stripes')).toBe(spread);
  });

  it('of a settled part, or of none, changes nothing', () => {
    expect(alternativePerCandidate(one, 'body')).toBe(one);
    expect(alternativePerCandidate(one, 'wings')).toBe(one);
  });
});

describe('changing places', () => {
  it.each([
    ['first', 2, ['Second', 'Third', 'First']],
    ['third', 0, ['Third', 'First', 'Second']],
    ['second', 99, ['First', 'Third', 'Second']],
    ['second', -3, ['Second', 'First', 'Third']],
  ])('%s to %i', (id, to, order) => {
    expect(names(sound(moveAlternative(three, id, to)))).toEqual(order);
  });

  it('with itself, or of one there is not, changes nothing', () => {
    expect(moveAlternative(three, 'second', 1)).toBe(three);
    expect(moveAlternative(three, 'fourth', 1)).toBe(three);
  });
});

it('renaming and taking out concern one alternative alone', () => {
  const renamed = sound(renameAlternative(three, 'second', 'Loud'));
  expect(names(renamed)).toEqual(['First', 'Loud', 'Third']);
  expect(names(sound(removeAlternative(renamed, 'first')))).toEqual(['Loud', 'Third']);
});

it('a note of blanks is none', () => {
  const noted = noteAlternative(one, 'first', 'For the show.');
  expect(noteAlternative(noted, 'first', '  \n')).toEqual(one);
});
