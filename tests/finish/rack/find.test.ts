/**
 * What a builder finds on a rack of thousands, held against plain loops written here, and nearness
 * against a second library's CIEDE2000 (colorjs.io), itself held against the published pairs of
 * Sharma, Wu & Dalal (2005) in `tests/published`.
 */
import Color from 'colorjs.io';
import { describe, expect, it } from 'vitest';
import {
  find,
  indexOf,
  kindsIn,
  leadDaysOf,
  stockOf,
  wordsIn,
} from '../../../src/finish/rack/find.ts';
import {
  differenceInWords,
  nearnessTo,
  noteLab,
  unknownLabs,
} from '../../../src/finish/rack/nearness.ts';
import { sheenClasses } from '../../../src/finish/sheen.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { asLab, type Lab } from '../../../src/ground/unit.ts';
import { finishWith, type Written } from '../sample.ts';
import { thousandsOf } from './thousands.ts';

const shelved = (changes: Written) => ({ rack: 'shelf', ...finishWith(changes) });
const namesFound = (finishes: ReturnType<typeof shelved>[], words: string): string[] =>
  find(indexOf(finishes), { words }).map((at) => finishes[at]!.name);

describe('words', () => {
  const shelf = [
    shelved({ id: 'a', name: 'Crème brûlée', effect: 'pearl', gloss60: 90, chemistry: 'lacquer' }),
    shelved({
      id: 'b',
      name: 'Copper pan',
      effect: 'metallic',
      gloss60: 30,
      note: 'over gloss black',
    }),
    shelved({ id: 'c', name: 'Weißer Käse, gloss', gloss60: 3, chemistry: 'enamel' }),
    shelved({ id: 'd', name: 'Łódź Ørsted', gloss60: 3, note: 'Copper underneath' }),
  ];

  it('are found at the start of any word, whatever capitals and accents', () => {
    expect(namesFound(shelf, 'creme')).toEqual(['Crème brûlée']);
    expect(namesFound(shelf, 'BRÛ')).toEqual(['Crème brûlée']);
    expect(namesFound(shelf, 'weisser kase')).toEqual(['Weißer Käse, gloss']);
    expect(namesFound(shelf, 'lodz orst')).toEqual(['Łódź Ørsted']);
    expect(namesFound(shelf, 'opper')).toEqual([]);
  });

  it('must all be there, in name, kind or note, in any order', () => {
    expect(namesFound(shelf, 'black pan')).toEqual(['Copper pan']);
    expect(namesFound(shelf, 'metallic satin')).toEqual(['Copper pan']);
    expect(namesFound(shelf, 'lacquer pearl high')).toEqual(['Crème brûlée']);
    expect(namesFound(shelf, 'copper pearl')).toEqual([]);
  });

  it('in a name come before those that are only mentioned', () => {
    expect(namesFound(shelf.toReversed(), 'copper')).toEqual(['Copper pan', 'Łódź Ørsted']);
    expect(namesFound(shelf, 'gloss')).toEqual([
      'Weißer Käse, gloss',
      'Crème brûlée',
      'Copper pan',
    ]);
  });

  it('that are none ask for nothing', () => {
    expect(namesFound(shelf, '  … ')).toHaveLength(4);
    expect(wordsIn('Semi-gloss, 10 ml')).toEqual(['semi', 'gloss', '10', 'ml']);
  });
});

describe('kinds and stock', () => {
  const finishes = thousandsOf(600, 20);
  const index = indexOf(finishes);

  it('are found as a plain loop over the finishes finds them', () => {
    const sheenOf = (gloss60: number): string =>
      sheenClasses.find(({ from, to }) => gloss60 >= from && gloss60 < to)!.id;
    for (const wanted of [
      { effect: 'metallic', stock: 'on hand' },
      { sheen: 'satin', chemistry: 'enamel' },
      { effect: 'solid', sheen: 'gloss', stock: 'to buy' },
    ] as const) {
      const plain = finishes.flatMap((finish, at) => {
        const isThere =
          (!('effect' in wanted) || finish.effect === wanted.effect) &&
          (!('sheen' in wanted) || sheenOf(finish.gloss60) === wanted.sheen) &&
          (!('chemistry' in wanted) || finish.chemistry === wanted.chemistry) &&
          (!('stock' in wanted) || finish.bottle?.onHand === (wanted.stock === 'on hand'));
        return isThere ? [at] : [];
      });
      expect(plain.length).toBeGreaterThan(2);
      expect(find(index, wanted)).toEqual(plain);
    }
  });

  it('that can be chosen are those there are, and their counts add up', () => {
    const { effects, sheens, chemistries, stocks } = kindsIn(index);
    for (const counts of [effects, sheens, chemistries, stocks]) {
      expect([...counts.values()].reduce((sum, count) => sum + count, 0)).toBe(600);
    }
  });

  it('are on hand only with every bottle, and wait for the last that is missing', () => {
    const clear = (onHand: boolean, leadDays: number) => ({
      name: 'Gloss clear',
      chemistry: 'lacquer' as const,
      bottle: { id: 'clear', name: 'Gloss clear', onHand, leadDays },
    });
    const bottle = { id: 'own', name: 'Own', onHand: true };
    expect(stockOf(finishWith({ bottle, clear: clear(true, 9) }))).toBe('on hand');
    expect(stockOf(finishWith({ bottle, clear: clear(false, 9) }))).toBe('to buy');
    expect(stockOf(finishWith())).toBe('unrecorded');
    expect(leadDaysOf(finishWith({ bottle, clear: clear(false, 9) }))).toBe(9);
    expect(leadDaysOf(finishWith({ bottle: { ...bottle, leadDays: 4 } }))).toBe(0);
  });
});

describe('nearness', () => {
  // Seed 11: colours all over Lab, near greys and equal ones among them.
  const draw = drawFrom(11);
  const labs: Lab[] = Array.from({ length: 800 }, (_, k) =>
    k % 40 === 0
      ? asLab(50, 0, 0)
      : asLab(100 * draw.uniform(), 40 * draw.normal(), 40 * draw.normal()),
  );
  const flat = unknownLabs(labs.length);
  labs.forEach((lab, at) => {
    noteLab(flat, at, lab);
  });
  // The formula knows no white, so D65 values go through that library's D50 Lab unchanged.
  const colourOf = (lab: Lab) => new Color('lab', [lab[0], lab[1], lab[2]]);
  const oracle = (one: Lab, other: Lab): number => colourOf(one).deltaE(colourOf(other), '2000');

  it('is CIEDE2000 of every finish, the nearest first, as a second library has it', () => {
    for (const target of [asLab(50, 0, 0), asLab(28, 40, -60), asLab(81, -3, 70)]) {
      const { deltaE, order } = nearnessTo(target, flat);
      const told = labs.map((lab) => oracle(target, lab));
      labs.forEach((_, at) => {
        expect(deltaE[at]).toBeCloseTo(told[at]!, 6);
      });
      const nearestFirst = [...told.keys()].sort(
        (one, other) => told[one]! - told[other]! || one - other,
      );
      expect([...order].map((at) => told[at]!.toFixed(6))).toEqual(
        nearestFirst.map((at) => told[at]!.toFixed(6)),
      );
    }
  });

  it('sorts what is found, and leaves out what is not known yet', () => {
    const finishes = thousandsOf(800, 12);
    const index = indexOf(finishes);
    const some = flat.slice();
    some.fill(NaN, 3 * 500);
    const near = nearnessTo(asLab(50, 0, 0), some);
    const found = find(index, { words: 'grey', near });
    expect(found.length).toBeGreaterThan(10);
    expect(found.every((at) => at < 500)).toBe(true);
    const told = found.map((at) => oracle(asLab(50, 0, 0), labs[at]!));
    expect(told).toEqual(told.toSorted((one, other) => one - other));
    expect(new Set(found)).toEqual(
      new Set(find(index, { words: 'grey' }).filter((at) => at < 500)),
    );
  });

  it('is told in words that change where observers do', () => {
    // Paravina et al. (2015): half of 175 observers see ΔE2000 0.8 and reject 1.8.
    expect(differenceInWords(0.79)).not.toBe(differenceInWords(0.81));
    expect(differenceInWords(1.79)).not.toBe(differenceInWords(1.81));
    expect(differenceInWords(0.81)).toBe(differenceInWords(1.79));
    expect(differenceInWords(90)).toBe('far off');
  });
});
