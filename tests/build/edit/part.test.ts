/** What becomes of alternatives and rules when parts are edited. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import { type Build, isOpen } from '../../../src/build/build.ts';
import { addPart, joinParts, splitPart } from '../../../src/build/edit/cover.ts';
import {
  giveFinish,
  openPart,
  renamePart,
  setAbsent,
  setCandidate,
  settlePart,
  undecidedRef,
  wearOn,
  wearOnAll,
} from '../../../src/build/edit/part.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { plainDocument, plainFinish, ref, sketched } from '../sample.ts';

/** Two open parts on two alternatives, two settled ones; `wears` as part → finish of A and of B. */
const two = (wears: Record<string, readonly [string, string]>, more: object = {}): Build => {
  const document = plainDocument(
    ['red', 'teal', 'sand'],
    [],
    { stripes: ['red', 'teal', 'sand'], mirrors: ['teal', 'sand'], body: 'sand', seats: 'red' },
    ['body'],
  );
  const choices = (at: 0 | 1) =>
    Object.fromEntries(Object.entries(wears).map(([part, worn]) => [part, ref(worn[at])]));
  return buildFrom({
    ...document,
    alternatives: [
      { id: 'first', name: 'First', choices: choices(0) },
      { id: 'second', name: 'Second', choices: choices(1) },
    ],
    ...more,
  });
};
const start = two({ stripes: ['teal', 'sand'], mirrors: ['teal', 'teal'] });
const partOf = (build: Build, id: string) => build.parts.find((part) => part.id === id)!;
const chosen = (build: Build, id: string) => build.alternatives.map(({ choices }) => choices[id]);
/** Still a build that a file may hold. */
const sound = (build: Build): Build => {
  expect(buildFrom(structuredClone(build))).toEqual(build);
  return build;
};

describe('settling a part', () => {
  it('takes what the first alternative wears, and every alternative follows', () => {
    const settled = sound(settlePart(start, 'stripes', false));
    expect(partOf(settled, 'stripes')).toMatchObject({ finish: ref('teal'), painted: false });
    expect(chosen(settled, 'stripes')).toEqual([undefined, undefined]);
  });

  it('takes another finish where one is named', () => {
    const settled = sound(settlePart(start, 'stripes', true, ref('red')));
    expect(partOf(settled, 'stripes')).toMatchObject({ finish: ref('red'), painted: true });
  });

  it('that is painted from now on keeps the alternative that departs from it', () => {
    const departing = wearOn(start, 'second', 'seats', ref('teal'));
    const painted = sound(settlePart(departing, 'seats', true));
    expect(partOf(painted, 'seats')).toMatchObject({ finish: ref('red'), painted: true });
    expect(chosen(painted, 'seats')).toEqual([undefined, ref('teal')]);
  });
});

describe('opening a part', () => {
  it('makes what it wears its only candidate', () => {
    const opened = sound(openPart(start, 'seats'));
    expect(partOf(opened, 'seats')).toMatchObject({ candidates: [ref('red')] });
    expect(chosen(opened, 'seats')).toEqual([ref('red'), ref('red')]);
  });

  it('makes what an alternative departs with a candidate, and it goes on wearing that', () => {
    const opened = sound(openPart(wearOn(start, 'second', 'seats', ref('teal')), 'seats'));
    expect(partOf(opened, 'seats')).toMatchObject({ candidates: [ref('red'), ref('teal')] });
    expect(chosen(opened, 'seats')).toEqual([ref('red'), ref('teal')]);
  });

  it('and settling it again is where it began', () => {
    expect(settlePart(openPart(start, 'body'), 'body', true)).toEqual(start);
  });

  it('that is open already changes nothing', () => {
    expect(openPart(start, 'stripes')).toBe(start);
  });
});

describe('candidates', () => {
  it('that are taken out are worn no more: the first that is left is', () => {
    const without = sound(setCandidate(start, 'stripes', ref('sand'), false));
    expect(partOf(without, 'stripes')).toMatchObject({ candidates: [ref('red'), ref('teal')] });
    expect(chosen(without, 'stripes')).toEqual([ref('teal'), ref('red')]);
  });

  it('never run out: the last one stays', () => {
    const one = setCandidate(start, 'mirrors', ref('sand'), false);
    expect(setCandidate(one, 'mirrors', ref('teal'), false)).toBe(one);
  });

  it('take the place of a primer that stood for a choice to come, and only of that', () => {
    const [rack, id] = undecidedRef.split('/') as [string, string];
    const primer = plainFinish(id, [], { rack });
    const blank = two(
      { stripes: ['red', 'red'], mirrors: ['teal', 'teal'] },
      {
        finishes: [...start.finishes, primer],
        parts: start.parts.map((part) =>
          part.id === 'seats' ? { ...part, finish: undecidedRef } : part,
        ),
      },
    );
    const chosenFirst = sound(giveFinish(openPart(blank, 'seats'), 'seats', ref('teal')));
    expect(partOf(chosenFirst, 'seats')).toMatchObject({ candidates: [ref('teal')] });
    expect(chosen(chosenFirst, 'seats')).toEqual([ref('teal'), ref('teal')]);
    const chosenNext = sound(giveFinish(chosenFirst, 'seats', ref('sand')));
    expect(partOf(chosenNext, 'seats')).toMatchObject({ candidates: [ref('teal'), ref('sand')] });
  });
});

describe('spraying parts together', () => {
  it('leaves one part that stands as the first did and covers what all covered', () => {
    const joined = sound(joinParts(start, ['stripes', 'mirrors']));
    expect(joined.parts.map(({ id }) => id)).toEqual(['stripes', 'body', 'seats']);
    expect(partOf(joined, 'stripes')).toMatchObject({
      name: 'Stripes',
      covers: ['stripes', 'mirrors'],
      candidates: [ref('red'), ref('teal'), ref('sand')],
    });
    expect(joined.alternatives.map(({ choices }) => choices)).toEqual([
      { stripes: ref('teal') },
      { stripes: ref('sand') },
    ]);
  });

  it('lets rules speak of the joined part, and drops those that would say nothing', () => {
    const ruled = two(
      { stripes: ['teal', 'sand'], mirrors: ['teal', 'teal'] },
      {
        rules: [
          { kind: 'same', parts: ['stripes', 'mirrors'] },
          { kind: 'same', parts: ['stripes', 'mirrors', 'seats'] },
          { kind: 'must-echo', part: 'mirrors' },
          {
            kind: 'never-together',
            first: { part: 'mirrors', finish: ref('teal') },
            second: { part: 'stripes', finish: ref('red') },
          },
          { kind: 'most-finishes', count: 3 },
        ],
        mustRead: ['mirrors', 'stripes'],
      },
    );
    const joined = sound(joinParts(ruled, ['stripes', 'mirrors']));
    expect(joined.rules).toEqual([
      { kind: 'same', parts: ['stripes', 'seats'] },
      { kind: 'must-echo', part: 'stripes' },
      { kind: 'most-finishes', count: 3 },
    ]);
    expect(joined.mustRead).toEqual(['stripes']);
  });

  it('and taking the part apart again brings back every part of the car by its own name', () => {
    const joined = joinParts(start, ['stripes', 'mirrors'], 'Stripes and mirrors');
    const nameOf = (carPart: string): string => ({ stripes: 'Bands', mirrors: 'Shells' })[carPart]!;
    const split = sound(splitPart(joined, 'stripes', nameOf));
    expect(split.parts.map(({ id, name, covers }) => [id, name, covers])).toEqual([
      ['stripes', 'Bands', ['stripes']],
      ['mirrors', 'Shells', ['mirrors']],
      ['body', 'Body', ['body']],
      ['seats', 'Seats', ['seats']],
    ]);
    expect(chosen(split, 'mirrors')).toEqual([ref('teal'), ref('sand')]);
  });

  it('alone, or with a part there is not, changes nothing', () => {
    expect(joinParts(start, ['stripes'])).toBe(start);
    expect(joinParts(start, ['stripes', 'wings'])).toBe(start);
    expect(splitPart(start, 'stripes', String)).toBe(start);
  });
});

describe('parts that are not on the model', () => {
  it('keep candidates and choices until they turn up', () => {
    const off = sound(setAbsent(start, 'mirrors', true));
    expect(partOf(off, 'mirrors').absent).toBe(true);
    expect(setAbsent(off, 'mirrors', false)).toEqual(start);
  });
});

describe('a model', () => {
  it('always has one part left', () => {
    const others = start.parts.map(({ id }) => id).filter((id) => id !== 'body');
    const bare = sound(others.reduce((build, id) => setAbsent(build, id, true), start));
    expect(bare.parts.filter(({ absent }) => !absent).map(({ id }) => id)).toEqual(['body']);
    expect(setAbsent(bare, 'body', true)).toBe(bare);
    expect(partOf(sound(joinParts(bare, ['stripes', 'body'])), 'stripes').absent).toBe(false);
  });

  it('of which nothing is there is refused as a file', () => {
    const parts = start.parts.map((part) => ({ ...part, absent: true }));
    expect(() => buildFrom({ ...start, parts })).toThrow(/on the model/);
  });
});

describe('a part that is added', () => {
  it('has an id and a name of its own', () => {
    const more = sound(addPart(start, 'Stripes', ['hood'], ref('red')));
    const added = more.parts.at(-1)!;
    expect([added.id, added.name, added.covers]).toEqual(['stripes-2', 'Stripes 2', ['hood']]);
    expect(isOpen(added)).toBe(false);
  });

  it('keeps its id when it is renamed, so that choices hold', () => {
    const renamed = sound(renamePart(start, 'stripes', 'Bands'));
    expect(partOf(renamed, 'stripes').name).toBe('Bands');
    expect(chosen(renamed, 'stripes')).toEqual(chosen(start, 'stripes'));
  });
});

describe('putting a spoon on a part of one alternative', () => {
  it('makes it a candidate of an open part', () => {
    const worn = sound(wearOn(start, 'second', 'mirrors', ref('red')));
    expect(partOf(worn, 'mirrors')).toMatchObject({ candidates: ['teal', 'sand', 'red'].map(ref) });
    expect(chosen(worn, 'mirrors')).toEqual([ref('teal'), ref('red')]);
  });

  it('departs from a settled part, until what was settled is put back', () => {
    const departing = sound(wearOn(start, 'first', 'body', ref('red')));
    expect(chosen(departing, 'body')).toEqual([ref('red'), undefined]);
    expect(wearOn(departing, 'first', 'body', ref('sand'))).toEqual(start);
  });
});

it('an unknown part changes nothing', () => {
  const build = sketched({ parts: { body: 'red' } });
  expect(settlePart(build, 'wings', true)).toBe(build);
  expect(openPart(build, 'wings')).toBe(build);
  expect(giveFinish(build, 'wings', ref('red'))).toBe(build);
  expect(wearOn(build, 'first', 'wings', ref('red'))).toBe(build);
});

describe('one finish on every alternative', () => {
  it('settles a settled part on it, whatever departed before', () => {
    const departing = wearOn(start, 'second', 'seats', ref('sand'));
    const worn = sound(wearOnAll(departing, 'seats', ref('teal')));
    expect(partOf(worn, 'seats')).toMatchObject({ finish: ref('teal'), painted: false });
    expect(chosen(worn, 'seats')).toEqual([undefined, undefined]);
  });

  it('departs from what a part is painted in, so that stripping it is counted on each', () => {
    const worn = sound(wearOnAll(start, 'body', ref('red')));
    expect(partOf(worn, 'body')).toMatchObject({ finish: ref('sand'), painted: true });
    expect(chosen(worn, 'body')).toEqual([ref('red'), ref('red')]);
    expect(sound(wearOnAll(worn, 'body', ref('sand')))).toEqual(start);
  });

  it('is a candidate of an open part, and worn by each', () => {
    const worn = sound(wearOnAll(start, 'mirrors', ref('red')));
    expect(partOf(worn, 'mirrors')).toMatchObject({
      candidates: [ref('teal'), ref('sand'), ref('red')],
    });
    expect(chosen(worn, 'mirrors')).toEqual([ref('red'), ref('red')]);
  });
});
