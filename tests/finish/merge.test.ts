/**
 * Finishes coming into a rack that is there. Expected racks and counts are worked out by hand for
 * small cases, and by rules that must hold for any two racks.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finish } from '../../src/finish/finish.ts';
import { emptyRack } from '../../src/finish/rack/edit.ts';
import { besideOthers, mergedInto, type SameId } from '../../src/finish/rack/merge.ts';
import { parseRack, type Rack, rackFaults, textOfRack } from '../../src/finish/rack/rack.ts';
import { anyFinishes } from './arbitrary.ts';
import { finishWith } from './sample.ts';

const rackOf = (...finishes: Finish[]): Rack => ({ ...emptyRack('shelf', 'Shelf'), finishes });
const grey = finishWith({ id: 'grey', name: 'Grey' });
const darker = finishWith({ id: 'grey', name: 'Grey', colour: { lab: [30, 0, 0] } });
const plum = finishWith({ id: 'plum', name: 'Plum' });
const clear = (onHand: boolean) => ({ id: 'clear', name: 'Clear', onHand, leadDays: 0 });

describe('finishes coming into a rack', () => {
  it.each<[SameId, string[], number, Partial<Record<string, number>>]>([
    ['replace', ['grey', 'plum'], 30, { added: 1, replaced: 1 }],
    ['keep-both', ['grey', 'grey-2', 'plum'], 54, { added: 1, keptBoth: 1 }],
    ['skip', ['grey', 'plum'], 54, { added: 1, skipped: 1 }],
  ])('with an id that is there: %s', (sameId, ids, lightness, counts) => {
    const none = {
      added: 0,
      replaced: 0,
      keptBoth: 0,
      skipped: 0,
      unchanged: 0,
      over: 0,
      retold: 0,
    };
    const { rack, ...told } = mergedInto(rackOf(grey), [darker, plum], sameId);
    expect(rack.finishes.map(({ id }) => id)).toEqual(ids);
    expect(rack.finishes[0]?.colour).toMatchObject({ lab: [lightness, 0, 0] });
    expect(told).toEqual({ ...none, ...counts });
  });

  it('change nothing where they are the same, in whatever order their fields stand', () => {
    const turned = Object.fromEntries(Object.entries(grey).reverse()) as unknown as Finish;
    for (const sameId of ['replace', 'keep-both', 'skip'] as const) {
      const { rack, unchanged } = mergedInto(rackOf(grey), [turned], sameId);
      expect([rack.finishes, unchanged]).toEqual([[grey], 1]);
    }
  });

  it('never empty the shelf, and fill it in the whole rack', () => {
    const full = rackOf({ ...grey, bottle: clear(true) }, { ...plum, bottle: clear(true) });
    const sky = (onHand: boolean) => finishWith({ id: 'sky', name: 'Sky', bottle: clear(onHand) });
    const kept = mergedInto(full, [sky(false)], 'skip');
    expect(kept.rack.finishes.map(({ bottle }) => bottle?.onHand)).toEqual([true, true, true]);
    expect(kept.retold).toBe(0);
    const empty = rackOf({ ...grey, bottle: clear(false) }, { ...plum, bottle: clear(false) });
    const filled = mergedInto(empty, [sky(true)], 'skip');
    expect(filled.rack.finishes.map(({ bottle }) => bottle?.onHand)).toEqual([true, true, true]);
    expect(filled.retold).toBe(2);
  });

  it('say otherwise of a bottle where they replace one that said it, and count whom it meets', () => {
    const full = rackOf({ ...grey, bottle: clear(true) }, { ...plum, bottle: clear(true) });
    const used = [{ ...grey, bottle: clear(false) }];
    const { rack, retold } = mergedInto(full, used, 'replace');
    expect(rack.finishes.map(({ bottle }) => bottle?.onHand)).toEqual([false, false]);
    expect(retold).toBe(1);
    // One that is passed over says nothing.
    expect(mergedInto(full, used, 'skip').rack).toEqual(full);
  });

  it('take a bottle of their own along when they stay beside another', () => {
    const own = { id: 'grey', name: 'Grey', leadDays: 0 };
    const there = rackOf({ ...grey, bottle: { ...own, onHand: true } });
    const { rack } = mergedInto(
      there,
      [{ ...darker, bottle: { ...own, onHand: false } }],
      'keep-both',
    );
    expect(rack.finishes.map(({ bottle }) => [bottle?.id, bottle?.onHand])).toEqual([
      ['grey', true],
      ['grey-2', false],
    ]);
  });

  it('stop at 20,000', () => {
    const many = Array.from({ length: 19_999 }, (_, at) => finishWith({ id: `f${at}` }));
    const { rack, added, over, replaced } = mergedInto(
      rackOf(...many),
      [plum, grey, finishWith({ id: 'f3', name: 'Other' })],
      'replace',
    );
    expect([rack.finishes.length, added, over, replaced]).toEqual([20_000, 1, 1, 1]);
  });

  it('always leave a rack that can be read, with everyone accounted for', () => {
    fc.assert(
      fc.property(
        anyFinishes,
        anyFinishes,
        fc.constantFrom<SameId>('replace', 'keep-both', 'skip'),
        (own, incoming, sameId) => {
          const before = rackOf(...own);
          const { rack, ...told } = mergedInto(before, incoming, sameId);
          expect(rackFaults(rack.finishes)).toEqual([]);
          expect(parseRack(textOfRack(rack), 'shelf.json')).toEqual(rack);
          expect(rack.finishes).toHaveLength(own.length + told.added + told.keptBoth);
          const { added, keptBoth, replaced, skipped, unchanged, over } = told;
          expect(added + keptBoth + replaced + skipped + unchanged + over).toBe(incoming.length);
          // Bringing the same again adds nothing and changes nothing.
          if (sameId !== 'keep-both') {
            expect(mergedInto(rack, incoming, sameId).rack).toEqual(rack);
          }
        },
      ),
      { seed: 82, numRuns: 150 },
    );
  });
});

describe('a rack from elsewhere', () => {
  it('stands beside others under an id and a name of its own', () => {
    const rack = rackOf(grey);
    expect(besideOthers([], rack)).toEqual(rack);
    const second = besideOthers([rack], rack);
    expect([second.id, second.name]).toEqual(['shelf-2', 'Shelf 2']);
    expect(second.finishes).toBe(rack.finishes);
  });
});
