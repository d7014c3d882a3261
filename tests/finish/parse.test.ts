/**
 * The door: what is refused before anything is looked at, and how it is told. JSON faults are held
 * against the engine's own parser as oracle: both must agree on what is JSON.
 */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { checkedAgainst, parseJson, problemsFrom } from '../../src/finish/parse.ts';
import { syntaxFaultOf } from '../../src/finish/text/syntax.ts';
import { InputError } from '../../src/ground/problem.ts';

const firstOf = (act: () => unknown) => {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return error.problems[0];
    throw error;
  }
  return undefined;
};
const read = (text: string) => firstOf(() => parseJson(text, 'file.json'));

describe('broken JSON', () => {
  it('is told by line, column and what was due', () => {
    expect(syntaxFaultOf('{\n  "a": 1,\n}')).toMatchObject({ line: 3, column: 1, found: '}' });
    expect(syntaxFaultOf('[1 2]')).toMatchObject({ line: 1, column: 4, wanted: ', or ]' });
    expect(syntaxFaultOf('{"a" 1}')).toMatchObject({ column: 6, wanted: ':' });
    expect(syntaxFaultOf('[1, 2')).toMatchObject({ column: 6, found: '' });
    expect(syntaxFaultOf('[1] x')).toMatchObject({ column: 5, wanted: 'the end' });
    expect(syntaxFaultOf("{'a': 1}")).toMatchObject({ column: 2 });
  });

  it('is found wherever the engine finds some, and nowhere else', () => {
    // Oracle: JSON.parse, on valid texts with one character cut out or put in.
    const damaged = fc
      .tuple(
        fc.json({ maxDepth: 4 }),
        fc.nat(),
        fc.constantFrom('', ',', '}', ']', '"', ':', '1', '\\'),
      )
      .map(([text, at, put]) => {
        const cut = at % (text.length + 1);
        return text.slice(0, cut) + put + text.slice(put === '' ? cut + 1 : cut);
      })
      // The walk also stops at the delete and C1 characters, which our files refuse anyway.
      .filter((text) => !/[\u007f-\u009f]/.test(text));
    fc.assert(
      fc.property(damaged, (text) => {
        let isJson = true;
        try {
          JSON.parse(text);
        } catch {
          isJson = false;
        }
        expect(syntaxFaultOf(text) === undefined).toBe(isJson);
      }),
      { seed: 80, numRuns: 3000 },
    );
  });

  it('an empty file and a file of something else are told apart from a slip', () => {
    expect(read('')?.found).toBe('no JSON');
    expect(read('\n\n')?.found).toBe('no JSON');
    expect(read('name,colour\nPlum,#552244')).toMatchObject({ place: 'line 1, column 1' });
  });
});

describe('a field named twice in one object', () => {
  it('is refused by line and column, with the line it stood in first', () => {
    // Derived by counting.
    expect(read('{"a": 1,\n  "b": {"a": 2},\n  "\\u0061": 3}')).toMatchObject({
      place: 'line 3, column 3',
      found: 'the field “a” again, first in line 1',
    });
  });

  it('is no fault across objects, nor inside text', () => {
    expect(
      read('[{"a": 1}, {"a": 2}, {"b": {"a": "\\\\"}, "a": "\\"a\\": 1, \\"a\\": 2"}]'),
    ).toBeUndefined();
  });

  it('is found exactly where one field is put in again', () => {
    // Oracle: the text is written here, so whether it names a field twice is known beforehand.
    const field = fc.string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 4 });
    const inner = fc.oneof(fc.string({ unit: 'grapheme-ascii' }), fc.integer(), fc.constant({}));
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(field, inner), { selector: ([name]) => name, maxLength: 8 }),
        fc.nat(),
        fc.boolean(),
        fc.constantFrom('', ' ', '\n\t'),
        (fields, which, isTwice, space) => {
          const told = fields.map(([name, value]) => [name, value] as const);
          if (isTwice && told.length > 0) told.push(told[which % told.length]!);
          const text = told
            .map(
              ([name, value]) => `${space}${JSON.stringify(name)}${space}:${JSON.stringify(value)}`,
            )
            .join(',');
          const problem = read(`{"in": [{${text}}]}`);
          expect(problem !== undefined).toBe(isTwice && told.length > 1);
          if (problem !== undefined) expect(problem.found).toContain('again');
        },
      ),
      { seed: 81, numRuns: 500 },
    );
  });
});

describe('too much of something', () => {
  it('a text over the limit is refused by size, counted in bytes', () => {
    expect(firstOf(() => parseJson('"aaaa"', 'f', 5))?.found).toContain('MB');
    expect(firstOf(() => parseJson('"ééé"', 'f', 7))?.found).toContain('MB');
    expect(firstOf(() => parseJson('"ééé"', 'f', 8))).toBeUndefined();
  });

  it('deep nesting and long lists are refused without being walked to the end', () => {
    expect(read('['.repeat(60) + ']'.repeat(60))?.found).toContain('levels');
    expect(read(`[${'0,'.repeat(20_000)}0]`)?.found).toBe('a list of 20001');
  });

  it('a file with more faults than can be listed still says the first', () => {
    const schema = v.array(v.array(v.string()));
    const rows = Array.from({ length: 60 }, () => new Array(10_000).fill(0));
    const problem = firstOf(() => checkedAgainst(schema, rows, 'f'));
    expect(problem?.place).toBe('1 › 1');
  });
});

describe('hostile text', () => {
  it('control, direction-changing and broken characters are refused wherever they stand', () => {
    for (const character of [
      '\u0000',
      '\u001b',
      '\u009b',
      '\u202e',
      '\u2066',
      '\u2028',
      '\ud800',
    ]) {
      const problem = read(JSON.stringify({ names: [`a${character}b`] }));
      expect(problem?.place).toBe('names › 1');
      expect(problem?.found).not.toContain(character);
      expect(read(JSON.stringify({ [`k${character}`]: 1 }))).toBeDefined();
    }
  });

  it('line breaks, tabs, markup and other scripts are plain text', () => {
    const text = JSON.stringify(['a\nb\tc', '<img src=x onerror=alert(1)>', 'наклейка', '赤 🎨']);
    expect(read(text)).toBeUndefined();
  });

  it('a name a megabyte long is shown short', () => {
    const schema = v.pipe(v.string(), v.maxLength(120));
    const problem = firstOf(() => checkedAgainst(schema, 'x'.repeat(1e6), 'f'));
    expect(problem?.found).toBe('1000000 characters');
  });
});

describe('schema faults', () => {
  it('of a choice of forms are those of the nearest form', () => {
    const schema = v.union([
      v.strictObject({ srgb: v.string() }),
      v.strictObject({ lab: v.tuple([v.number(), v.number(), v.number()]) }),
    ]);
    const told = (value: unknown) =>
      problemsFrom(v.safeParse(schema, value).issues ?? [], 'colour');
    expect(told({ lab: [50, 'red', 0] })).toEqual([
      expect.objectContaining({ place: 'colour › lab › 2', expected: 'a number' }),
    ]);
    expect(told({})).toEqual([
      expect.objectContaining({ place: 'colour', expected: 'exactly one of the fields srgb, lab' }),
    ]);
  });
});
