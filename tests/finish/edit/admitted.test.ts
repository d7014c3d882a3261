/**
 * Whatever is done in the form, may it stand in a rack? Random finishes, random edits one after the
 * other; the oracle is the door through which rack files come in (`parseRack`), which knows nothing
 * of the form.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultIn, faultsOf } from '../../../src/finish/edit/admit.ts';
import {
  besideColour,
  directions,
  stepColour,
  stepSizes,
} from '../../../src/finish/edit/beside.ts';
import { freshBottle, setBottle } from '../../../src/finish/edit/bottle.ts';
import { obtained, setColour, setSpectrum } from '../../../src/finish/edit/colour.ts';
import {
  setEffect,
  setFlopColour,
  setFlopIndex,
  withoutFlop,
} from '../../../src/finish/edit/effect.ts';
import {
  addUndercoat,
  changeClear,
  changeUndercoat,
  moveUndercoat,
  removeUndercoat,
  setClear,
  setTint,
} from '../../../src/finish/edit/film.ts';
import {
  likelySampleGloss,
  setGloss,
  setGlossClass,
  setSampleGloss,
} from '../../../src/finish/edit/gloss.ts';
import { spectrumFromText } from '../../../src/finish/edit/spectrum.ts';
import { chemistries, effects, type Finish } from '../../../src/finish/finish.ts';
import { emptyRack, putFinish } from '../../../src/finish/rack/edit.ts';
import { parseRack, textOfRack } from '../../../src/finish/rack/rack.ts';
import { sheenClasses } from '../../../src/finish/sheen.ts';
import { anyFinishes } from '../arbitrary.ts';

type Edit = (finish: Finish) => Finish;
const hex = fc.stringMatching(/^#[0-9a-f]{6}$/).map((srgb) => ({ srgb }));
const place = fc.integer({ min: 0, max: 5 });
const gloss = fc.double({ min: 0, max: 100, noNaN: true });
const anyFinish = anyFinishes.filter((finishes) => finishes.length > 0).map(([first]) => first!);

const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
  fc.constantFrom(...effects).map(
    (effect): Edit =>
      (now) =>
        setEffect(now, effect).finish,
  ),
  hex.map(
    (colour): Edit =>
      (now) =>
        setColour(now, colour),
  ),
  fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 31, maxLength: 31 }).map(
    (percents): Edit =>
      (now) => {
        const text = percents.map((percent) => `${percent / 100}`).join('\n');
        const read = spectrumFromText(text, { firstNm: 400, stepNm: 10 });
        return 'spectrum' in read ? setSpectrum(now, read.spectrum) : now;
      },
  ),
  anyFinish.map(
    (reference): Edit =>
      (now) =>
        besideColour(now, reference),
  ),
  fc.tuple(fc.constantFrom(...directions), fc.constantFrom(...stepSizes)).map(
    ([direction, { deltaE }]): Edit =>
      (now) =>
        stepColour(now, direction, deltaE),
  ),
  fc.constantFrom('measured', 'guess').map(
    (how): Edit =>
      (now) =>
        obtained(now, how as 'measured' | 'guess'),
  ),
  gloss.map(
    (value): Edit =>
      (now) =>
        setGloss(now, value),
  ),
  fc.constantFrom(...sheenClasses).map(
    ({ id }): Edit =>
      (now) =>
        setGlossClass(now, id),
  ),
  fc.constantFrom('same' as const, 'glossier' as const, 'duller' as const).map(
    (form): Edit =>
      (now) =>
        setSampleGloss(now, likelySampleGloss(now, form)),
  ),
  fc.double({ min: 0, max: 30, noNaN: true }).map(
    (index): Edit =>
      (now) =>
        setFlopIndex(now, index),
  ),
  fc.constant<Edit>(withoutFlop),
  fc
    .tuple(fc.constantFrom('face' as const, 'flop' as const), fc.option(hex, { nil: undefined }))
    .map(
      ([look, colour]): Edit =>
        (now) =>
          setFlopColour(now, look, colour),
    ),
  fc.constant<Edit>((now) => addUndercoat(now)),
  place.map(
    (at): Edit =>
      (now) =>
        removeUndercoat(now, at),
  ),
  fc.tuple(place, fc.constantFrom(1 as const, -1 as const)).map(
    ([at, by]): Edit =>
      (now) =>
        moveUndercoat(now, at, by),
  ),
  fc.tuple(place, fc.constantFrom(...chemistries), fc.integer({ min: 1, max: 20 })).map(
    ([at, chemistry, coats]): Edit =>
      (now) =>
        changeUndercoat(now, at, { chemistry, coats }),
  ),
  fc.boolean().map(
    (isOn): Edit =>
      (now) =>
        setClear(now, isOn),
  ),
  fc.option(hex, { nil: undefined }).map(
    (tint): Edit =>
      (now) =>
        setTint(now, tint),
  ),
  fc.constantFrom(...chemistries).map(
    (chemistry): Edit =>
      (now) =>
        changeClear(now, { chemistry }),
  ),
  fc.tuple(fc.constantFrom('paint' as const, 'clear' as const, 0, 1), fc.boolean()).map(
    ([at, isOn]): Edit =>
      (now) =>
        setBottle(now, at, isOn ? freshBottle('Shared', []) : undefined),
  ),
);

describe('any edits of any finish', () => {
  it('leave one that a rack file may hold', () => {
    fc.assert(
      fc.property(anyFinish, fc.array(anyEdit, { minLength: 1, maxLength: 8 }), (start, edits) => {
        const finish = edits.reduce((now, edit) => edit(now), start);
        expect(faultsOf(finish)).toEqual([]);
        const rack = putFinish(emptyRack('shelf', 'Shelf'), finish);
        expect(parseRack(textOfRack(rack), 'shelf').finishes).toEqual([
          JSON.parse(JSON.stringify(finish)),
        ]);
      }),
      { seed: 20, numRuns: 400 },
    );
  });
});

describe('what may not stand', () => {
  it.each<[string, (finish: Finish) => Finish, RegExp]>([
    ['too much gloss', (finish) => ({ ...finish, gloss60: 101 }), /at most 100/],
    ['no name', (finish) => ({ ...finish, name: ' ' }), /not blank/],
    ['half a coat', (finish) => ({ ...finish, coats: 1.5 }), /whole number/],
    [
      'text that changes direction',
      (finish) => ({ ...finish, note: 'a\u202eb' }),
      /direction-changing/,
    ],
    [
      'hidden characters in the name of a bottle',
      (finish) => ({
        ...finish,
        bottle: { id: 'x', name: 'x\u200f', onHand: true, leadDays: 0 },
      }),
      /direction-changing/,
    ],
    [
      'a flop on a solid',
      (finish) => ({ ...setEffect(finish, 'solid').finish, flopIndex: 3 }),
      /metallic and pearl only/,
    ],
  ])('%s is told with how to mend it', (_, spoil, told) => {
    fc.assert(
      fc.property(anyFinish, (finish) => {
        expect(faultIn(finish)).toBeUndefined();
        expect(faultIn(spoil(finish))).toMatch(told);
      }),
      { seed: 1, numRuns: 20 },
    );
  });
});
