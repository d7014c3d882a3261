/** `testspoon see`: checked against published white points and worked conversions. */
import { describe, expect, it } from 'vitest';
import { scratch, testspoon, written } from './run.ts';

const folder = scratch();
const nm = Array.from({ length: 41 }, (_, k) => 380 + 10 * k);
const rack = (finishes: object[]) => ({
  format: 'testspoon-rack',
  version: 1,
  id: 'check-rack',
  name: 'Check rack',
  finishes: finishes.map((finish) => ({
    effect: 'solid',
    gloss60: 85,
    provenance: { how: 'measured' },
    ...finish,
  })),
});
const path = written(
  folder,
  'rack.json',
  rack([
    { id: 'white', name: 'White', colour: { spectrum: { nm, reflectance: nm.map(() => 1) } } },
    { id: 'grey', name: 'Grey', colour: { srgb: '#808080' } },
    { id: 'ruby', name: 'Ruby', effect: 'candy', coats: 2, colour: { lab: [40, 60, 40] } },
  ]),
);
const seen = async (...args: string[]) => {
  const { status, out, err } = await testspoon(['see', path, ...args, '--json']);
  expect(err).toBe('');
  expect(status).toBe(0);
  return JSON.parse(out);
};

describe('the look as JSON', () => {
  it('has exactly the published fields', async () => {
    const look = await seen('grey');
    expect(Object.keys(look)).toEqual([
      'lab',
      'xyz',
      'srgb',
      'face',
      'flop',
      'gloss60',
      'roughness',
      'sheen',
      'name',
      'indicative',
    ]);
    expect(look).toMatchObject({ srgb: '#808080', gloss60: 85, indicative: false });
    expect(look.name).toMatch(/\w/);
  });

  // Published: ASTM E308, tables 5 and 6, 1931 observer, 10 nm: A 109.850 100 35.585 and
  // D65 95.047 100 108.883; printed to three decimals.
  it.each([
    ['A', [1.0985, 1, 0.35585]],
    ['D65', [0.95047, 1, 1.08883]],
  ])('of a perfect white under %s is the published white of that light', async (light, white) => {
    const { xyz, lab } = await seen('white', '--light', light);
    for (const at of [0, 1, 2]) expect(Math.abs(xyz[at] - white[at]!)).toBeLessThan(2e-5);
    // Derived: the white is its own reference, so L* 100, a* 0, b* 0 after adaptation.
    for (const at of [0, 1, 2]) expect(lab[at]).toBeCloseTo([100, 0, 0][at]!, 2);
  });

  it('of sRGB 50 % grey has the lightness that the formulas give', async () => {
    // Derived: ((128/255 + 0.055) / 1.055)^2.4 = 0.215861; 116 · 0.215861^(1/3) − 16 = 53.585.
    const { lab } = await seen('grey');
    expect(lab[0]).toBeCloseTo(53.585, 2);
    expect(Math.hypot(lab[1], lab[2])).toBeLessThan(0.05);
  });

  it('of a candy gets darker with every coat', async () => {
    const looks = await Promise.all(
      [1, 2, 4, 8].map((count) => seen('ruby', '--coats', String(count))),
    );
    const lightness = looks.map(({ lab }) => lab[0] as number);
    expect(lightness).toEqual([...lightness].sort((a, b) => b - a));
    expect(new Set(lightness).size).toBe(4);
  });
});

describe('racks', () => {
  it('that come along are found by id, from any folder', async () => {
    const { status, out } = await testspoon(['see', 'bench-drawer', 'cherry-syrup']);
    expect(status).toBe(0);
    expect(out).toContain('Cherry syrup');
    expect(out).toMatch(/face[\s\S]+body[\s\S]+flop/);
    expect(out).not.toContain('\u001b');
  });

  it('are read from CSV too, and bad rows are mentioned but do not hide good ones', async () => {
    const csv = written(
      folder,
      'shelf.csv',
      'id,name,effect,colour,gloss60,provenance.how\r\n' +
        'sky,Sky,solid,#88aacc,85,guess\r\n' +
        'bad,Bad,solid,#88aacc,loud,guess\r\n',
    );
    const { status, out, err } = await testspoon(['see', csv, 'sky']);
    expect(status).toBe(0);
    expect(out).toContain('Sky');
    expect(err).toContain('one problem');
  });

  it('and finishes that do not exist are refused with the nearest that does', async () => {
    const noRack = await testspoon(['see', 'bench-draw', 'cherry-syrup']);
    expect(noRack.status).toBe(1);
    expect(noRack.err).toContain('Did you mean “bench-drawer”?');
    const noFinish = await testspoon(['see', 'bench-drawer', 'chery-syrup']);
    expect(noFinish.status).toBe(1);
    expect(noFinish.err).toContain('Did you mean “cherry-syrup”?');
  });
});
