/** Parts that are not on the model fall away with all that names only them. Derived: by hand. */
import { describe, expect, it } from 'vitest';
import { assignmentOf } from '../../src/build/build.ts';
import { setAbsent } from '../../src/build/edit/part.ts';
import { absentCarParts, fittedBuild } from '../../src/build/fitted.ts';
import { buildFrom } from '../../src/build/read/document.ts';
import { ref, sketched } from './sample.ts';

const whole = {
  ...sketched({
    parts: { stripes: ['red', 'teal'], mirrors: ['teal', 'red'], seats: ['red'], body: 'sand' },
    rules: [
      { kind: 'same', parts: ['stripes', 'mirrors'] },
      { kind: 'same', parts: ['stripes', 'mirrors', 'seats'] },
      { kind: 'must-echo', part: 'mirrors' },
      { kind: 'must-echo', part: 'seats' },
      {
        kind: 'never-together',
        first: { part: 'seats', finish: ref('red') },
        second: { part: 'mirrors', finish: ref('red') },
      },
      { kind: 'most-new-bottles', count: 2 },
    ],
  }),
  mustRead: ['mirrors', 'seats'],
};
const without = setAbsent(whole, 'mirrors', true);
const fitted = fittedBuild(without);

describe('a build without its mirrors', () => {
  it('has the other parts, and alternatives that say nothing of mirrors', () => {
    expect(fitted.parts.map(({ id }) => id)).toEqual(['stripes', 'seats', 'body']);
    expect(fitted.alternatives[0]!.choices).toEqual({ stripes: ref('red'), seats: ref('red') });
    expect(fitted.mustRead).toEqual(['seats']);
    expect(buildFrom(structuredClone(fitted))).toEqual(fitted);
  });

  it('keeps of its rules what still says something', () => {
    expect(fitted.rules).toEqual([
      { kind: 'same', parts: ['stripes', 'seats'] },
      { kind: 'must-echo', part: 'seats' },
      { kind: 'most-new-bottles', count: 2 },
    ]);
  });

  it('wears the same with and without what it leaves out', () => {
    expect(assignmentOf(without, without.alternatives[0]!)).toEqual(
      assignmentOf(fitted, fitted.alternatives[0]!),
    );
  });

  it('names the parts of the car that are gone, and what goes with them', () => {
    const car = [
      { id: 'stalk-cap', goesWith: 'mirror-stalks' },
      { id: 'mirror-stalks', goesWith: 'mirrors' },
      { id: 'buckles', goesWith: 'belts' },
      { id: 'mirrors' },
    ];
    expect([...absentCarParts(without, [])]).toEqual(['mirrors']);
    expect([...absentCarParts(without, car)].sort()).toEqual([
      'mirror-stalks',
      'mirrors',
      'stalk-cap',
    ]);
    expect([...absentCarParts(whole, car)]).toEqual([]);
  });

  it('is told once, so that whoever asks again gets the same', () => {
    expect(fittedBuild(without)).toBe(fitted);
  });
});

it('a build that lacks nothing is its own', () => {
  expect(fittedBuild(whole)).toBe(whole);
});
