/**
 * Ids and free names made from names: by rules that must hold for any names. Where characters end
 * is held against `Intl.Segmenter`, which follows Unicode Standard Annex 29.
 */
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { cutText, freeId, freeName, idGiver } from '../../src/ground/id.ts';

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

/** Holds half of a character. */
const isBroken = (text: string): boolean => /\p{Cs}/u.test(text);
const racer = '\u{1f3ce}';
const family = '\u{1f469}\u200d\u{1f469}\u200d\u{1f467}';
const pieces = [
  'a',
  ' ',
  'ö',
  'e\u0301',
  racer,
  family,
  '\u{1f1eb}\u{1f1ee}',
  '箱',
  'क्षि',
  'ab\u0308\u0308',
];
const long = fc
  .array(fc.oneof(fc.constantFrom(...pieces), fc.string({ unit: 'grapheme', maxLength: 3 })), {
    maxLength: 120,
  })
  .map((list) => list.join(''));
const charactersOf = (text: string): string[] =>
  Array.from(
    new Intl.Segmenter(undefined, { granularity: 'grapheme' }).segment(text),
    (one) => one.segment,
  );

describe('text that is too long', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is cut after the last whole character that fits, as a reader sees them', () => {
    fc.assert(
      fc.property(long, fc.integer({ min: 1, max: 130 }), (text, most) => {
        const cut = cutText(text, most);
        let fitting = '';
        for (const one of charactersOf(text)) {
          if (fitting.length + one.length > most) break;
          fitting += one;
        }
        // Where not even the first character fits, there is something all the same.
        if (fitting !== '' || text === '') expect(cut).toBe(fitting);
        else expect(cut.length <= most && text.startsWith(cut) && !isBroken(cut)).toBe(true);
      }),
      { seed: 85, numRuns: 500 },
    );
  });

  it('is cut between code points where the browser knows no more', () => {
    vi.stubGlobal('Intl', {});
    expect(cutText(`a${racer.repeat(60)}`)).toBe(`a${racer.repeat(59)}`);
    expect(cutText(`${'x'.repeat(119)}${racer}`)).toBe('x'.repeat(119));
  });

  it('that is one character with more marks than fit keeps as many as fit', () => {
    expect(cutText(`o${'\u0308'.repeat(200)}`)).toBe(`o${'\u0308'.repeat(119)}`);
  });
});

describe('a free name', () => {
  it('fits, is not taken, and breaks no character', () => {
    fc.assert(
      fc.property(fc.array(long, { minLength: 1, maxLength: 6 }), (names) => {
        const taken = names.filter((one) => one !== '').map((one) => cutText(one));
        for (const one of names) {
          const free = freeName(one, taken);
          expect(taken).not.toContain(free);
          expect(free.length).toBeLessThanOrEqual(120);
          expect(isBroken(free)).toBe(isBroken(one));
          taken.push(free);
        }
      }),
      { seed: 86, numRuns: 300 },
    );
  });
});
