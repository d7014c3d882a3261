/**
 * Does a sheen word stand for a gloss that a painter would call so? Bounds from the published sheen
 * levels in `tests/published/mpi_gloss_levels.csv`; which of our words answers to which level is our
 * reading of their descriptions.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  glossOfClass,
  likelySampleGloss,
  nearestReference,
  referenceGlosses,
  sampleFormOf,
  setGlossClass,
  setSampleGloss,
} from '../../../src/finish/edit/gloss.ts';
import { sheenClasses, sheenClassOf } from '../../../src/finish/sheen.ts';
import { numberIn, rowsOf } from '../../published/table.ts';
import { finishWith } from '../sample.ts';

const levels: Readonly<Record<string, string>> = {
  'dead-matt': 'G1',
  matt: 'G2',
  eggshell: 'G3',
  satin: 'G4',
  'semi-gloss': 'G5',
  gloss: 'G6',
  'high-gloss': 'G7',
};

describe('gloss in a word', () => {
  it.each(Object.entries(levels))('%s lies within the published level %s', (id, level) => {
    const row = rowsOf('mpi_gloss_levels').find((one) => one.level === level)!;
    const { gloss60 } = setGlossClass(finishWith(), id);
    expect(gloss60).toBeGreaterThanOrEqual(numberIn(row, 'GU60_min'));
    if (row.GU60_max !== '') expect(gloss60).toBeLessThanOrEqual(numberIn(row, 'GU60_max'));
  });

  it('every word comes back from its own figure', () => {
    for (const sheen of sheenClasses) expect(sheenClassOf(glossOfClass(sheen))).toBe(sheen);
  });

  it('a word nobody uses changes nothing', () => {
    const finish = finishWith();
    expect(setGlossClass(finish, 'shiny')).toBe(finish);
  });
});

describe('gloss beside reference spoons', () => {
  it('the row rises, holds every sheen word, and a spoon of it is nearest to itself', () => {
    expect([...referenceGlosses].sort((one, other) => one - other)).toEqual(referenceGlosses);
    expect(new Set(referenceGlosses.map((gloss) => sheenClassOf(gloss).id)).size).toBe(7);
    for (const gloss of referenceGlosses) expect(nearestReference(gloss)).toBe(gloss);
  });

  it('what lies between two spoons goes to one of these two', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 89, noNaN: true }), (gloss) => {
        const above = referenceGlosses.find((one) => one >= gloss)!;
        const below = referenceGlosses.findLast((one) => one <= gloss)!;
        expect([above, below]).toContain(nearestReference(gloss));
      }),
      { seed: 3 },
    );
  });
});

describe('the sample that the colour was taken from', () => {
  it('told as glossier or duller, it is so', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 99.9, noNaN: true }),
        fc.constantFrom('glossier' as const, 'duller' as const),
        (gloss60, form) => {
          const finish = finishWith({ gloss60 });
          const told = setSampleGloss(finish, likelySampleGloss(finish, form));
          expect(sampleFormOf(told)).toBe(form);
          expect(sampleFormOf(setSampleGloss(told, undefined))).toBe('same');
        },
      ),
      { seed: 5 },
    );
  });
});
