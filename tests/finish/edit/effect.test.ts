/**
 * Is only dropped what the new sort cannot have, and is all of it named? Which fields a sort may
 * have is taken from the faults that racks are checked for, and from what cloth and foil are.
 */
import { describe, expect, it } from 'vitest';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import { faultsOf } from '../../../src/finish/edit/admit.ts';
import {
  flopFormOf,
  flopWords,
  setEffect,
  setFlopColour,
  setFlopIndex,
  withoutFlop,
} from '../../../src/finish/edit/effect.ts';
import { finishWith, silverBase } from '../sample.ts';

const bronze = finishWith({
  effect: 'metallic',
  face: { lab: [68, 16, 36] },
  flop: { lab: [27, 8, 15] },
  chemistry: 'lacquer',
  coats: 3,
  undercoats: [silverBase],
  clear: { name: 'Gloss clear', chemistry: 'lacquer' },
  bottle: { id: 'bronze', name: 'Bronze', onHand: true },
  note: 'Shake well.',
});

describe('another sort of finish', () => {
  it('metallic to pearl keeps everything', () => {
    expect(setEffect(bronze, 'pearl')).toEqual({
      finish: { ...bronze, effect: 'pearl' },
      dropped: [],
    });
  });

  it('metallic to solid drops face and flop, and keeps the films', () => {
    const { finish, dropped } = setEffect(bronze, 'solid');
    expect(dropped).toEqual(['the colour of the face', 'the colour of the flop']);
    const { face: _face, flop: _flop, ...rest } = bronze;
    expect(finish).toEqual({ ...rest, effect: 'solid' });
  });

  it('paint to flock drops films, chemistry and coats, and keeps bottle, gloss and notes', () => {
    const { finish, dropped } = setEffect(bronze, 'flock');
    expect(dropped.join('; ')).toBe(
      'the colour of the face; the colour of the flop; the clear coat (Gloss clear); ' +
        'an undercoat (Fine silver base); the paint’s chemistry (lacquer); 3 coats',
    );
    expect(finish.undercoats).toEqual([]);
    expect(finish.clear).toBeUndefined();
    expect(finish).toMatchObject({
      coats: 1,
      chemistry: 'none',
      gloss60: bronze.gloss60,
      note: 'Shake well.',
    });
    expect(finish.bottle).toEqual(bronze.bottle);
    expect(faultsOf(finish)).toEqual([]);
  });

  it('the same sort is no change', () => {
    expect(setEffect(bronze, 'metallic').finish).toBe(bronze);
  });

  it('an unchanged flop index on a solid would be refused at the door', () => {
    const wrong = { ...setFlopIndex(bronze, 9), effect: 'solid' as const };
    expect(faultsOf(wrong).map(({ place }) => place)).toEqual([' › flopIndex']);
  });
});

describe('how a flake turns', () => {
  it('is told by index or by colours, never by both', () => {
    expect(flopFormOf(bronze)).toBe('colours');
    const byIndex = setFlopIndex(bronze, 12);
    expect(flopFormOf(byIndex)).toBe('index');
    expect(byIndex.face).toBeUndefined();
    const byFace = setFlopColour(byIndex, 'face', { srgb: '#ffeecc' });
    expect(byFace.flopIndex).toBeUndefined();
    expect(flopFormOf(withoutFlop(byFace))).toBe('usual');
  });

  it('is nothing for a solid', () => {
    const solid = finishWith();
    expect(setFlopIndex(solid, 9)).toBe(solid);
    expect(setFlopColour(solid, 'flop', { srgb: '#000000' })).toBe(solid);
  });

  it('words for more turning make the flop darker beside the face', () => {
    // Alman 1987: the index grows with the span of lightness from 15° to 110°.
    const spans = flopWords.map(({ flopIndex }) => {
      const { face, flop } = appearanceOf(setFlopIndex(bronze, flopIndex), 'D65');
      return face[0] - flop[0];
    });
    expect(spans).toEqual([...spans].sort((one, other) => one - other));
    expect(new Set(spans).size).toBe(flopWords.length);
  });
});
