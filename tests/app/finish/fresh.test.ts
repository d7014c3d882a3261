/**
 * A new finish on a rack: where it goes, and what is said where there is no room. Derived: a rack
 * holds 20,000, as its file format says, so one of 19,999 takes one more and no second.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { useEditing } from '../../../src/app/finish/editing.ts';
import { addFreshFinish, dropUntouched, makeFinish } from '../../../src/app/finish/fresh.ts';
import { hushUp, useSaying } from '../../../src/app/pieces/said.ts';
import { chooseFrom, edit, editRacks, undo, useBench, type Work } from '../../../src/app/store.ts';
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

describe('a finish that was missed', () => {
  const shelf = { ...emptyRack('shelf', 'Shelf'), finishes: [one] };
  const state = () => useBench.getState();
  const steps = () => useBench.temporal.getState();
  const names = () => state().racks?.flatMap(({ finishes }) => finishes.map(({ name }) => name));
  const nobody = () => undefined;
  const edited = () => useEditing.getState().edited!;
  beforeEach(() => {
    useBench.setState({ racks: [shelf, emptyRack('other', 'Other')] });
    steps().clear();
  });

  it('is made on the first rack or the one looked at, called and coloured as it was typed', () => {
    makeFinish({ name: 'Smoked quince', srgb: '#b8a05a' }, undefined, nobody);
    expect(edited()).toEqual({ rack: 'shelf', finish: 'smoked-quince' });
    makeFinish({ name: 'Plum' }, 'other', nobody);
    expect(edited()).toEqual({ rack: 'other', finish: 'plum' });
    expect(state().racks![0]!.finishes[1]).toMatchObject({
      name: 'Smoked quince',
      colour: { srgb: '#b8a05a' },
      provenance: { how: 'guess' },
    });
  });

  it('comes with a rack of its own where there is none, and goes with it in one step', () => {
    useBench.setState({ racks: [] });
    steps().clear();
    makeFinish({ name: 'Sky' }, undefined, nobody);
    expect(state().racks).toMatchObject([{ name: 'My shelf', finishes: [{ name: 'Sky' }] }]);
    undo();
    expect(state().racks).toEqual([]);
  });

  it('is handed on at once, and stays though nothing more is said of it', () => {
    const alternative = build.alternatives[0]!.id;
    makeFinish({ name: 'Sky' }, undefined, (made) => chooseFrom(alternative, 'body', made));
    dropUntouched(edited());
    expect(names()).toContain('Sky');
    expect(state().work?.build.alternatives[0]?.choices.body).toBe('shelf/sky');
  });

  it('goes again where nobody named or touched it, and nothing is left to undo or redo', () => {
    makeFinish({}, undefined, nobody);
    expect(names()).toContain('New finish');
    dropUntouched(edited());
    expect(names()).toEqual(['Plum']);
    expect([steps().pastStates.length, steps().futureStates.length]).toEqual([0, 0]);

    const before = state().work;
    makeFinish({}, undefined, (made) => chooseFrom(build.alternatives[0]!.id, 'body', made));
    expect(state().work).not.toBe(before);
    dropUntouched(edited());
    expect(names()).toEqual(['Plum']);
    expect(state().work).toBe(before);
    expect([steps().pastStates.length, steps().futureStates.length]).toEqual([0, 0]);
  });

  it('stays once it has been touched, or something else has been done', () => {
    makeFinish({}, undefined, nobody);
    editRacks((racks) =>
      racks.map((rack) => ({
        ...rack,
        finishes: rack.finishes.map((each) =>
          each.id === 'new-finish' ? { ...each, gloss60: 12 } : each,
        ),
      })),
    );
    dropUntouched(edited());
    expect(names()).toContain('New finish');
    makeFinish({}, 'other', nobody);
    edit((now) => ({ ...now, name: 'Another' }));
    dropUntouched(edited());
    expect(state().racks?.[1]?.finishes).toHaveLength(1);
  });

  it('that is a copy stays, since it was asked for by name', () => {
    addFreshFinish('shelf', one);
    dropUntouched({ rack: 'shelf', finish: 'like-plum' });
    expect(names()).toEqual(['Plum', 'Like Plum']);
  });
});
