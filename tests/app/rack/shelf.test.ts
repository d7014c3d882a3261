/**
 * One bottle on two racks and in the build: what pickers say of it, and what saying otherwise does.
 * Worked out by hand on a gloss clear that one drawer has and a shop would sell.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { retell } from '../../../src/app/finish/live.ts';
import { everywhere, finishesIn, finishesToPick } from '../../../src/app/rack/finishes.ts';
import { undo, useBench, type Work } from '../../../src/app/store.ts';
import { shelfOf } from '../../../src/build/bottles.ts';
import { embed } from '../../../src/build/edit/finish.ts';
import { bottlesOf, type Finish } from '../../../src/finish/finish.ts';
import { emptyRack } from '../../../src/finish/rack/edit.ts';
import { stockOf } from '../../../src/finish/rack/find.ts';
import { sketched } from '../../build/sample.ts';
import { finishWith } from '../../finish/sample.ts';

const clear = (onHand: boolean): Finish['clear'] => ({
  name: 'Gloss clear',
  chemistry: 'lacquer',
  coats: 2,
  bottle: { id: 'gloss-clear', name: 'Gloss clear', onHand, leadDays: 4 },
});
const drawer = {
  ...emptyRack('drawer', 'Drawer'),
  finishes: [finishWith({ id: 'plum', name: 'Plum', clear: clear(true) })],
};
const shop = {
  ...emptyRack('shop', 'Shop'),
  finishes: [finishWith({ id: 'pan', name: 'Pan', clear: clear(false) })],
};
const build = sketched({ finishes: ['grey'], parts: { body: ['grey'] } });
const racks = [drawer, shop];
const isOnHand = (finish: Finish | undefined) =>
  bottlesOf(finish!).find(({ id }) => id === 'gloss-clear')?.onHand;

describe('a bottle that one rack has and another would buy', () => {
  it('is on hand wherever a finish is picked, and in the build that takes it from there', () => {
    const pan = finishesToPick(racks, build.finishes).find(({ id }) => id === 'pan')!;
    expect(stockOf(pan)).toBe('on hand');
    expect(finishesIn('shop', racks, []).map(stockOf)).toEqual(['on hand']);
    expect(finishesToPick(racks, build.finishes)).toContain(pan);
    expect(shelfOf(embed(build, pan)).get('gloss-clear')?.onHand).toBe(true);
  });

  it('is to buy where nobody has it', () => {
    expect(finishesIn(everywhere, [shop], []).map(stockOf)).toEqual(['to buy']);
  });
});

describe('what is said of a bottle in the editor', () => {
  const held = embed(build, { rack: 'shop', ...shop.finishes[0]! });
  beforeEach(() => {
    useBench.setState({ work: { build: held, key: 'test' } as Work, racks });
    useBench.temporal.getState().clear();
  });
  const everyTelling = () => {
    const { work, racks: now } = useBench.getState();
    const all = [...now!.flatMap(({ finishes }) => finishes), ...work!.build.finishes];
    return all.flatMap(bottlesOf).flatMap(({ id, onHand }) => (id === 'gloss-clear' ? onHand : []));
  };

  it.each([true, false])('holds in every rack and in the build: on hand is %s', (onHand) => {
    retell({ rack: 'shop', finish: 'pan' }, 'gloss-clear', { onHand });
    expect(everyTelling()).toEqual([onHand, onHand, onHand]);
    expect(isOnHand(useBench.getState().work!.build.finishes.at(-1))).toBe(onHand);
    undo();
    expect(everyTelling()).toEqual([true, false, false]);
  });
});
