/** Which alternatives are compared, and under which letters. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import { stagedOf } from '../../src/app/onStage.ts';

const alternatives = (...ids: string[]) => ids.map((id) => ({ id, name: id, choices: {} }));
const staged = (ids: readonly string[], off: readonly string[]) =>
  stagedOf(alternatives(...ids), off).map(
    ({ alternative, letter }) => `${letter} ${alternative.id}`,
  );

describe('the alternatives on the stage', () => {
  it('keep their letters when others are left off', () => {
    expect(staged(['one', 'two', 'three', 'four'], ['two', 'three'])).toEqual(['A one', 'D four']);
  });

  it('are all of them where there are no more than two', () => {
    expect(staged(['one', 'two'], ['two'])).toEqual(['A one', 'B two']);
  });

  it('are all of them again once those that stood there are gone', () => {
    expect(staged(['one', 'two', 'three'], ['one', 'two', 'three'])).toEqual([
      'A one',
      'B two',
      'C three',
    ]);
  });
});
