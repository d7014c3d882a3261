/** Ids made from names: by rules that must hold for any names. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeId, idGiver } from '../../src/ground/id.ts';

const form = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const name = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 80 }),
  fc.constantFrom('Blue', 'blue', 'Blue 2', 'blue-2', 'Café', 'prototype', 'x'.repeat(90)),
);

describe('an id made from a name', () => {
  it('has the form of an id, is at most 60 long and was never given before', () => {
    fc.assert(
      fc.property(
        fc.array(name, { maxLength: 30 }),
        fc.array(name, { maxLength: 5 }),
        (names, others) => {
          const taken = others.map((other) => freeId(other, []));
          const give = idGiver(taken);
          const ids = names.map((one) => give(one));
          for (const id of ids) {
            expect(id).toMatch(form);
            expect(id.length).toBeLessThanOrEqual(60);
            expect(taken).not.toContain(id);
          }
          expect(new Set(ids).size).toBe(ids.length);
        },
      ),
      { seed: 83, numRuns: 300 },
    );
  });

  it('is the one that asking for each by itself would give', () => {
    fc.assert(
      fc.property(fc.array(name, { maxLength: 20 }), (names) => {
        const give = idGiver([]);
        const ids: string[] = [];
        for (const one of names) ids.push(freeId(one, ids));
        expect(names.map((one) => give(one))).toEqual(ids);
      }),
      { seed: 84, numRuns: 200 },
    );
  });
});
