/**
 * A new finish on a rack: where it goes, and what is said where there is no room. Derived: a rack
 * holds 20,000, as its file format says, so one of 19,999 takes one more and no second.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { addFreshFinish } from '../../../src/app/finish/fresh.ts';
import { hushUp, useSaying } from '../../../src/app/pieces/said.ts';
import { undo, useBench, type Work } from '../../../src/app/store.ts';
import { emptyRack } from '../../../src/finish/rack/edit.ts';
import { sketched } from '../../build/sample.ts';
import { finishWith } from '../../finish/sample.ts';

const build = sketched({ finishes: ['grey'], parts: { body: ['grey'] } });
const one = finishWith({ id: 'plum', name: 'Plum' });
const nearlyFull = {
  ...emptyRack('wall', 'The wall'),
  finishes: Array.from({ length: 19_999 }, (_, at) => ({ ...one, id: `f${at}`, name: `F ${at}` })),
};
const onTheWall = () => useBench.getState().racks![0]!.finishes;

beforeEach(() => {
  useBench.setState({ work: { build, key: 'test' } as Work, racks: [nearlyFull] });
  useBench.temporal.getState().clear();
  hushUp();
});

describe('a new finish', () => {
  it('goes on as long as there is room; after that nothing changes and the builder is told', () => {
    const last = addFreshFinish('wall');
    expect(onTheWall().map(({ id }) => id)).toContain(last);
    expect(useSaying.getState().words).toBeUndefined();
    const full = onTheWall();
    expect(addFreshFinish('wall', one)).toBeUndefined();
    expect(onTheWall()).toBe(full);
    expect(useSaying.getState()).toMatchObject({ isDone: false });
    expect(useSaying.getState().words).toMatch(/^The wall is full with 20,000 finishes\./);
    // The refusal is no step: what undo takes back is the finish that went on.
    undo();
    expect(onTheWall()).toHaveLength(19_999);
  });
});
