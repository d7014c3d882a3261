/** Names of ours follow what is worn; names of the builder stay. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import type { Build } from '../../../src/build/build.ts';
import {
  addAlternative,
  alternativePerCandidate,
  alternativePerShared,
  copyAlternative,
  moveAlternative,
  renameAlternative,
} from '../../../src/build/edit/alternative.ts';
import { withNamesFollowing } from '../../../src/build/edit/naming.ts';
import { renamePart, wearOn } from '../../../src/build/edit/part.ts';
import { ref, sketched } from '../sample.ts';

const names = (build: Build) => build.alternatives.map(({ name }) => name);
const follow = (build: Build, edit: (build: Build) => Build): Build =>
  withNamesFollowing(build, edit(build));
const put = (alternative: string, part: string, finish: string) => (build: Build) =>
  wearOn(build, alternative, part, ref(finish));
const begun = renameAlternative(
  sketched({
    parts: {
      piping: ['teal', 'red'],
      dash: ['teal', 'red'],
      stripes: ['sand', 'slate'],
      body: 'sand',
    },
  }),
  'first',
  'First idea',
);
const two = alternativePerShared(begun);

describe('a name of ours', () => {
  it('goes once it is no longer true, and comes back when it is', () => {
    const mixed = follow(two, put('red', 'dash', 'teal'));
    expect(names(mixed)).toEqual(['Teal', 'Second idea']);
    expect(names(follow(mixed, put('red', 'dash', 'red')))).toEqual(['Teal', 'Red']);
  });

  it('after one part becomes that of the whole, once all wear it', () => {
    const piping = alternativePerCandidate(begun, 'piping');
    expect(names(piping)).toEqual(['First idea', 'Red piping']);
    expect(names(follow(piping, put('red-piping', 'dash', 'red')))).toEqual(['First idea', 'Red']);
    expect(names(follow(piping, put('red-piping', 'piping', 'teal')))[1]).not.toContain('Red');
  });

  it('after one part is told by the part’s new name', () => {
    const piping = alternativePerCandidate(begun, 'piping');
    const renamed = follow(piping, (build) => renamePart(build, 'piping', 'Seams'));
    expect(names(renamed)).toEqual(['First idea', 'Red seams']);
  });

  it('is never given twice', () => {
    const same = follow(two, (build) =>
      put('red', 'dash', 'teal')(put('red', 'piping', 'teal')(build)),
    );
    expect(names(same)).toEqual(['Teal', 'Second idea']);
    const more = [1, 2, 3].reduce((build) => addAlternative(build, undefined, 'red'), same);
    expect(new Set(names(more)).size).toBe(5);
  });

  it('is what a copy gets too, where its model has one', () => {
    expect(names(copyAlternative(two, 'red'))).toEqual(['Teal', 'Red', 'Third idea']);
    const typed = renameAlternative(two, 'red', 'Loud');
    expect(names(copyAlternative(typed, 'red'))).toEqual(['Teal', 'Loud', 'Copy of Loud']);
  });

  it('does not change with the place', () => {
    const mixed = follow(two, put('red', 'dash', 'teal'));
    const moved = follow(mixed, (build) => moveAlternative(build, 'red', 0));
    expect(names(moved)).toEqual(['Second idea', 'Teal']);
  });
});

describe('a name of the builder', () => {
  it('stays whatever is worn', () => {
    const named = follow(two, (build) => renameAlternative(build, 'red', 'Loud'));
    expect(names(follow(named, put('red', 'dash', 'teal')))).toEqual(['Teal', 'Loud']);
  });

  it('stays as it is typed, even where it says what another thing would', () => {
    expect(names(follow(two, (build) => renameAlternative(build, 'red', 'Second idea')))[1]).toBe(
      'Second idea',
    );
  });
});
