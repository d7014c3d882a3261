/**
 * A day typed into a date field: what of it becomes the build's, and how many undo steps it takes.
 * Derived: the values are those a browser's date field hands on for 05/24/2031 typed key by key,
 * seen in Chromium, where the year grows from 0002 to 2031.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { typeWanted } from '../../../src/app/model/wanted.ts';
import { endStep, undo, useBench, type Work } from '../../../src/app/store.ts';
import { sketched } from '../../build/sample.ts';

const build = sketched({ finishes: ['grey'], parts: { body: ['grey'] } });
const wanted = (): string | undefined => useBench.getState().work!.build.wantedBy;
const steps = (): number => useBench.temporal.getState().pastStates.length;

beforeEach(() => {
  useBench.setState({ work: { build, key: 'test' } as Work, racks: [] });
  useBench.temporal.getState().clear();
  endStep();
});

describe('a day typed figure by figure', () => {
  it('is taken once its year is whole, as one undo step', () => {
    const before = wanted();
    for (const [typed, isTaken] of [
      ['', true],
      ['0002-05-24', false],
      ['0020-05-24', false],
      ['0203-05-24', false],
      ['2031-05-24', true],
    ] as const) {
      expect(typeWanted(typed) === undefined, typed).toBe(isTaken);
      if (typed !== '') expect(wanted()).toBe(isTaken ? typed : undefined);
    }
    expect(steps()).toBe(1);
    undo();
    expect(wanted()).toBe(before);
  });

  it.each(['2031-02-29', '1899-12-31', '02031-05-24'])('is refused in words: %s', (text) => {
    expect(typeWanted(text)).toMatch(/\.$/);
    expect(steps()).toBe(0);
  });

  it('and blanked again leaves the build without one', () => {
    typeWanted('2031-05-24');
    typeWanted('');
    expect(wanted()).toBeUndefined();
    expect('wantedBy' in useBench.getState().work!.build).toBe(false);
  });
});
