/**
 * Does a build's copy of a finish follow a change in the rack, and keep what it says of its own?
 * Derived by hand; that any copy may stand is held against the door that rack files come through.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changedAlike } from '../../../src/build/edit/alike.ts';
import { setEffect } from '../../../src/finish/edit/effect.ts';
import { setGloss } from '../../../src/finish/edit/gloss.ts';
import { effects } from '../../../src/finish/finish.ts';
import { parseRack, textOfRack } from '../../../src/finish/rack/rack.ts';
import { anyFinishes } from '../../finish/arbitrary.ts';
import { finishWith } from '../../finish/sample.ts';

const bottle = { id: 'jar', name: 'Jar', onHand: false, leadDays: 14 };
const stored = finishWith({ bottle, note: 'From the shop.' });
const copy = { rack: 'shop', ...stored, bottle: { ...bottle, onHand: true } };

describe('a copy in a build', () => {
  it('takes what was changed and keeps the bottle that was bought since', () => {
    expect(changedAlike(copy, stored, setGloss(stored, 12))).toEqual({ ...copy, gloss60: 12 });
  });

  it('loses what was taken away', () => {
    const { note: _note, ...bare } = stored;
    const { note: _own, ...bareCopy } = copy;
    expect(changedAlike(copy, stored, bare)).toEqual(bareCopy);
  });

  it('is told of the bottle what was said anew of it, and no more', () => {
    const sooner = { ...stored, bottle: { ...bottle, leadDays: 3 } };
    expect(changedAlike(copy, stored, sooner).bottle).toEqual({ ...copy.bottle, leadDays: 3 });
    const full = { ...stored, bottle: { ...bottle, onHand: true } };
    expect(changedAlike({ ...copy, bottle }, stored, full).bottle?.onHand).toBe(true);
    expect(changedAlike(copy, full, stored).bottle?.onHand).toBe(false);
  });

  it('is the same copy where nothing was changed', () => {
    expect(changedAlike(copy, stored, { ...stored })).toBe(copy);
  });

  it('that could not stand gives way to the whole finish', () => {
    // Only the copy is a flake with an index: the same change of kind would leave that behind.
    const flake = { ...copy, effect: 'metallic' as const, flopIndex: 9 };
    const after = setEffect(stored, 'flock').finish;
    expect(changedAlike(flake, stored, after)).toEqual({
      rack: 'shop',
      ...after,
      bottle: copy.bottle,
    });
  });

  it('may always stand in a file, however far copy and rack have drifted', () => {
    const three = anyFinishes.filter((finishes) => finishes.length > 1);
    fc.assert(
      fc.property(three, fc.constantFrom(...effects), ([one, other], effect) => {
        const drifted = { ...other!, id: one!.id, rack: 'shop' };
        const after = setGloss(setEffect(one!, effect).finish, 33);
        const { rack, ...finish } = changedAlike(drifted, one!, after);
        expect(rack).toBe('shop');
        expect(finish.gloss60).toBe(33);
        const text = textOfRack({
          format: 'testspoon-rack',
          version: 1,
          id: 'shop',
          name: 'Shop',
          finishes: [finish],
        });
        expect(parseRack(text, 'shop').finishes).toHaveLength(1);
      }),
      { seed: 4, numRuns: 200 },
    );
  });
});
