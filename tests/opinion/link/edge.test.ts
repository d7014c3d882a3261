/**
 * Builds at the edges of what the schema allows: each has a link that opens as its round, or is
 * refused in words before there is any link. Limits are those of the build's own schema.
 */
import { describe, expect, it } from 'vitest';
import type { Build } from '../../../src/build/build.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { InputError } from '../../../src/ground/problem.ts';
import { LinkError, linkOf, roundFrom } from '../../../src/opinion/link/link.ts';
import { differingParts, lettersIn, roundOf } from '../../../src/opinion/round.ts';
import { demo } from '../reply/arbitrary.ts';

type Changes = Readonly<Record<string, unknown>>;
const built = (changes: Changes): Build =>
  buildFrom(JSON.parse(JSON.stringify({ ...demo, ...changes })));
const withParts = (changes: (at: number) => Changes): Build =>
  built({
    rules: [],
    mustRead: [],
    parts: demo.parts.map((one, at) => ({ ...one, ...changes(at) })),
  });
const withFinishes = (changes: Changes, light = 'A'): Build =>
  built({
    viewing: { ...demo.viewing, light },
    finishes: demo.finishes.map(({ face: _face, flop: _flop, flopIndex: _index, ...one }) => ({
      ...one,
      ...changes,
    })),
  });

function expectToOpen(build: Build): void {
  const asking = { parts: differingParts(build), withStory: true };
  const round = roundOf(build, asking);
  expect(roundFrom(linkOf(round))).toEqual(round);
  expect(roundOf(round.build, { parts: round.asks, withStory: true })).toEqual(round);
}

const lights = ['D65', 'A', 'LED-B3', 'D50', 'FL11'];
/** As instruments and spreadsheets write them. */
const grids: Readonly<Record<string, readonly number[]>> = {
  'even, by tens': Array.from({ length: 31 }, (_, at) => 400 + 10 * at),
  'even, in parts of a nanometre': Array.from({ length: 120 }, (_, at) => 380 + 3.3 * at),
  'even, added up': Array.from({ length: 120 }).reduce<number[]>(
    (list) => [...list, (list.at(-1) ?? 376.7) + 3.3],
    [],
  ),
  uneven: [400, 410, 425, 430, 440, 450, 470, 480, 500, 550, 600, 650, 700, 720],
  'uneven at the beginning': [380, ...Array.from({ length: 33 }, (_, at) => 385.37 + 10 * at)],
};

describe('a link opens', () => {
  it.each(Object.entries(grids))('with spectra whose bands are %s', (_, nm) => {
    for (const light of lights) {
      for (const level of [0.5, 1e-7, 0, 1]) {
        const reflectance = nm.map((_one, at) => level * (at / nm.length));
        const spectrum = { spectrum: { nm, reflectance } };
        const undercoats = [
          {
            name: 'Silver',
            role: 'base',
            effect: 'metallic',
            colour: spectrum,
            chemistry: 'lacquer',
            coats: 2,
          },
        ];
        const clear = { name: 'Dyed', chemistry: 'urethane', coats: 3, tint: spectrum };
        expectToOpen(withFinishes({ colour: spectrum }, light));
        expectToOpen(withFinishes({ effect: 'candy', colour: spectrum, undercoats, clear }, light));
        expectToOpen(
          withFinishes(
            {
              effect: 'pearl',
              colour: spectrum,
              face: spectrum,
              flop: spectrum,
              flopIndex: 12.345,
            },
            light,
          ),
        );
      }
    }
  });

  it('with colours at the ends of their scales, in any way of telling them', () => {
    for (const light of lights) {
      for (const colour of [
        { srgb: '#AbCDEF' },
        { lab: [1e-7, -1e-7, 0] },
        { lab: [100, -160, 160] },
        { lab: [50.12345, -10.5, 1e-9], light: 'D50' },
      ]) {
        expectToOpen(withFinishes({ colour, gloss60: 1e-7 }, light));
        expectToOpen(withFinishes({ colour, gloss60: 100, coats: 20 }, light));
      }
    }
  });

  it.each(
    [
      ...[
        '漢字',
        'الهيكل',
        '...',
        '-',
        '0',
        'ß'.repeat(120),
        '👩🏽‍🔧',
        '\u200b',
        '\u00ad',
        'from a link',
      ],
      ...[
        '__proto__',
        'constructor',
        '<b>x</b>',
        '"',
        '\\',
        ' lead',
        'trail ',
        'A',
        'a'.repeat(120),
      ],
    ].map((name) => [name]),
  )('with everything called %j', (name) => {
    const named = <Thing extends object>(list: readonly Thing[]) =>
      list.map((one) => ({ ...one, name }));
    expectToOpen(built({ name, parts: named(demo.parts), finishes: named(demo.finishes) }));
  });

  it('with names that differ by what ids do not tell apart', () => {
    const names = ['a', 'a 2', 'a', 'a-2', 'A', 'a 3'];
    const called = (at: number): Changes => ({ name: names[at % names.length] });
    expectToOpen(withParts(called));
    expectToOpen(built({ finishes: demo.finishes.map((one, at) => ({ ...one, ...called(at) })) }));
  });

  it('with parts called as what they cover, in one word or several', () => {
    const called = (separator: string) =>
      withParts((at) => ({ name: demo.parts[at]!.covers.join(separator) }));
    for (const separator of [' ', '-', ', ']) expectToOpen(called(separator));
  });

  it('with parts that are not on the model', () => {
    expectToOpen(withParts((at) => ({ absent: at % 2 === 0 })));
    expectToOpen(withParts((at) => ({ absent: at > 0 })));
  });

  it('with stories, scales and distances at the ends of what a build allows', () => {
    for (const story of ['', '  ', '\n', '0', 'a\tb\r\nc', 'a'.repeat(2000)]) {
      expectToOpen(built({ story }));
    }
    for (const scale of [1, 1.004, 24.005, 87.123456, 199.999, 200]) expectToOpen(built({ scale }));
    for (const distanceMm of [50, 50.001, 19_999.999, 20_000]) {
      expectToOpen(built({ viewing: { ...demo.viewing, distanceMm } }));
    }
  });

  it('with one alternative', () => {
    const round = roundOf(demo, { alternatives: [demo.alternatives[1]!.id] });
    expect(lettersIn(roundFrom(linkOf(round)))).toEqual(['B']);
  });

  it('with the letters of the builder’s page, whichever are asked about', () => {
    const [first, second, third] = demo.alternatives.map(({ id }) => id);
    for (const [ids, letters] of [
      [[first, third], 'AC'],
      [[second, third], 'BC'],
      [[third, first], 'AC'],
      [[third], 'C'],
    ] as const) {
      const round = roundOf(demo, { alternatives: ids.map((id) => id!) });
      expect(lettersIn(roundFrom(linkOf(round))).join('')).toBe(letters);
    }
  });

  it('with names that a build’s form would not have, made plain', () => {
    // A build at hand may be changed before it is next held against its form.
    for (const name of ['a\tb', 'a\nb', '\u202e', '\ud83d', '\u0000', '']) {
      expectToOpen({ ...demo, name, parts: demo.parts.map((one) => ({ ...one, name })) });
    }
  });
});

describe('there is no link', () => {
  it('to nothing to choose from', () => {
    for (const round of [
      roundOf(demo, { alternatives: [] }),
      roundOf({ ...demo, alternatives: [] }),
    ]) {
      expect(() => linkOf(round)).toThrow(/no alternative.*at least one/);
      expect(() => linkOf(round)).toThrow(InputError);
    }
  });

  it('longer than any that is read', () => {
    // Noise does not pack: a story far longer than a build may have.
    let state = 1;
    const noise = Array.from({ length: 60_000 }, () => {
      state = (state * 48_271) % 2_147_483_647;
      return String.fromCharCode(0x4e00 + (state % 20_000));
    }).join('');
    const round = roundOf({ ...demo, story: noise }, { withStory: true });
    expect(() => linkOf(round)).toThrow(/characters.*fewer alternatives/);
    expect(() => linkOf(round)).not.toThrow(LinkError);
  });
});
