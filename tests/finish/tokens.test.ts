/**
 * Racks as design-token files, held against the rules of the Format and Color modules 2025.10 of the
 * Design Tokens Community Group, written out here anew [DTCG2025]; colours against the finishes as
 * colorjs.io converts them, a second library.
 */
import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { appearanceOf } from '../../src/finish/appearance.ts';
import type { Finish } from '../../src/finish/finish.ts';
import { tokensText } from '../../src/finish/rack/tokens.ts';
import { anyFinishes } from './arbitrary.ts';
import { finishWith } from './sample.ts';

interface Token {
  readonly $type: string;
  readonly $value: { colorSpace: string; components: number[]; alpha?: number; hex?: string };
  readonly $description?: string;
}
const fieldsOf = (text: string): [string, unknown][] =>
  Object.entries(JSON.parse(text) as Record<string, unknown>);
const tokensOf = (finishes: readonly Finish[]): [name: string, token: Token][] =>
  fieldsOf(tokensText('Shelf', finishes)).filter(
    (entry): entry is [string, Token] => !entry[0].startsWith('$'),
  );

/** Ranges of the color module, section “supported color spaces”, of the two we write. */
const ranges: Readonly<Record<string, readonly (readonly [low: number, high: number])[]>> = {
  srgb: [
    [0, 1],
    [0, 1],
    [0, 1],
  ],
  oklab: [
    [0, 1],
    [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
    [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
  ],
};

/** What breaks a rule of the format, in words; none where the file is valid. */
function breaches(text: string): string[] {
  return fieldsOf(text).flatMap(([name, field]) => {
    if (name === '$description')
      return typeof field === 'string' ? [] : ['$description is no text'];
    const { $type, $value, $description, ...rest } = field as Token;
    const range = ranges[$value.colorSpace] ?? [];
    return [
      name.startsWith('$') ? ['name begins with $'] : [],
      /[{}.]/.test(name) || name === '' ? [`name ${name}`] : [],
      $type === 'color' ? [] : ['$type'],
      $value.components.length === 3 && range.length === 3 ? [] : ['components'],
      $value.components.every(
        (one, at) => Number.isFinite(one) && one >= range[at]![0] && one <= range[at]![1],
      )
        ? []
        : [`range ${$value.components.join(' ')}`],
      /^#[0-9a-f]{6}$/i.test($value.hex ?? '') ? [] : ['hex'],
      typeof $description === 'string' ? [] : ['$description'],
      Object.keys(rest).length === 0 ? [] : ['an unknown field'],
    ].flat();
  });
}

describe('a design-token file', () => {
  it('keeps every rule of the format, whatever the rack holds', () => {
    fc.assert(
      fc.property(anyFinishes, (finishes) => {
        const text = tokensText('Shelf', finishes);
        expect(breaches(text)).toEqual([]);
        expect(tokensOf(finishes)).toHaveLength(finishes.length);
      }),
      { seed: 81, numRuns: 60 },
    );
  });

  it('holds each finish as it looks dried under D65', () => {
    const labs: [number, number, number][] = [
      [54, -2, -5],
      [20, 10, 12],
      [88, -8, 70],
      [48, 66, 52],
      // No screen of sRGB shows these.
      [50, -70, 10],
      [60, 90, 70],
    ];
    const finishes = labs.map((lab, at) =>
      finishWith({ id: `f${at}`, name: `Colour ${at}`, colour: { lab } }),
    );
    const spaces = tokensOf(finishes).map(([, { $value }], at) => {
      const { lab } = appearanceOf(finishes[at]!, 'D65');
      const token = new Color($value.colorSpace, $value.components as [number, number, number]);
      const drawn = new Color('lab-d65', [lab[0], lab[1], lab[2]]);
      expect(token.deltaE(drawn, '2000')).toBeLessThan(0.05);
      expect(drawn.inGamut('srgb', { epsilon: 0.002 })).toBe($value.colorSpace === 'srgb');
      return $value.colorSpace;
    });
    expect(spaces).toEqual(['srgb', 'srgb', 'srgb', 'srgb', 'oklab', 'oklab']);
  });

  it('writes an sRGB colour as it was given, as components and as hex', () => {
    const [[, token]] = tokensOf([finishWith({ colour: { srgb: '#ff8000' } })]) as [
      [string, Token],
    ];
    // 255/255, 128/255, 0/255.
    expect(token.$value.hex).toBe('#ff8000');
    const expected = [1, 128 / 255, 0];
    for (const [at, one] of expected.entries()) {
      expect(token.$value.components[at]).toBeCloseTo(one, 3);
    }
  });

  it('mends names that the format does not allow, and keeps all apart', () => {
    const names = ['No. 5 {new}', '$ilver', 'Gloss 8.5', 'BLUE', 'Blue', '...', '__proto__', '$'];
    const finishes = names.map((name, at) => finishWith({ id: `f-${at}`, name }));
    expect(tokensOf(finishes).map(([name]) => name)).toEqual([
      'No 5 (new)',
      'ilver',
      'Gloss 8,5',
      'BLUE',
      'Blue 2',
      'f-5',
      '__proto__',
      'f-7',
    ]);
  });

  it('says what each finish is', () => {
    const [plain, flake] = tokensOf([
      finishWith({ gloss60: 7, provenance: { how: 'swatch' } }),
      finishWith({ id: 'b', name: 'B', effect: 'metallic', flopIndex: 12 }),
    ]).map(([, token]) => token.$description);
    expect(plain).toMatch(/^solid, matt \(7 GU at 60°\); colour by swatch, off by about ΔE 4$/);
    expect(flake).toMatch(/^metallic, .*from #[0-9a-f]{6} facing the light to #[0-9a-f]{6} away/);
  });
});
