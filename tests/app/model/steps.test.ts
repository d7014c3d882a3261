/** The three questions of a new build tick themselves off. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import { isBegun, stepsOf } from '../../../src/app/model/steps.ts';
import type { Build } from '../../../src/build/build.ts';
import { addAlternative } from '../../../src/build/edit/alternative.ts';
import {
  openPart,
  setAbsent,
  setCandidate,
  settlePart,
  wearOn,
} from '../../../src/build/edit/part.ts';
import { ref, sketched } from '../../build/sample.ts';

const answers = (build: Build) => stepsOf(build).map(({ answer }) => answer);
const blank = sketched({
  finishes: ['grey', 'red', 'teal'],
  parts: { body: 'grey', stripes: 'grey', mirrors: 'grey' },
});

describe('a build that has only begun', () => {
  it('answers nothing', () => {
    expect(answers(blank)).toEqual([undefined, undefined, undefined]);
  });

  it('is given a number once anything is painted, has a choice, or alternatives differ', () => {
    expect(isBegun(blank)).toBe(false);
    const opened = openPart(blank, 'stripes');
    expect(isBegun(opened)).toBe(false);
    expect(isBegun(setCandidate(opened, 'stripes', ref('red'), true))).toBe(true);
    expect(isBegun(settlePart(blank, 'body', true))).toBe(true);
    const two = addAlternative(addAlternative(blank, 'One'), 'Other');
    expect(isBegun(two)).toBe(false);
    expect(isBegun(wearOn(two, two.alternatives[1]!.id, 'body', ref('teal')))).toBe(true);
  });

  it('says what is painted already, but not of parts that are not on the model', () => {
    const painted = settlePart(settlePart(blank, 'body', true), 'mirrors', true);
    expect(answers(painted)[0]).toBe('Body and Mirrors');
    expect(answers(setAbsent(painted, 'mirrors', true))[0]).toBe('Body');
  });

  it('counts a part as open once there is something to choose from', () => {
    const opened = openPart(openPart(blank, 'stripes'), 'mirrors');
    expect(answers(opened)[1]).toBeUndefined();
    expect(answers(setCandidate(opened, 'stripes', ref('red'), true))[1]).toBe(
      'Stripes; 1 part without a choice',
    );
  });

  it('wants alternatives that differ: a mere copy is none', () => {
    const opened = setCandidate(openPart(blank, 'stripes'), 'stripes', ref('red'), true);
    const copied = addAlternative(opened, 'Second', 'first');
    expect(answers(copied)[2]).toBeUndefined();
    expect(answers(wearOn(copied, 'second', 'stripes', ref('red')))[2]).toBe('2 alternatives');
  });
});
