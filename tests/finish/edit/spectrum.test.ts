/**
 * Is a pasted measurement read as it was meant, and is the faulty line named? The oracle is the
 * table itself, written out in the ways that instruments and spreadsheets write tables; faults are
 * placed by hand.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reflectanceFromTable } from '../../../src/colour/spectrum.ts';
import { type SpectrumRead, spectrumFromText } from '../../../src/finish/edit/spectrum.ts';

const grid = { firstNm: 400, stepNm: 10 };
const nm = Array.from({ length: 31 }, (_, band) => 400 + 10 * band);
const values = nm.map((_, band) => Number((0.05 + 0.02 * band).toFixed(3)));

const spectrumOf = (read: SpectrumRead) => {
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read.spectrum;
};
const faultsOf = (text: string): string[] => {
  const read = spectrumFromText(text, grid);
  return 'problems' in read ? read.problems.map(({ place, found }) => `${place}: ${found}`) : [];
};
const table = (rows: readonly (readonly (string | number)[])[], separator = '\t'): string =>
  rows.map((row) => row.join(separator)).join('\n');
const rows = nm.map((at, band) => [at, values[band]!] as const);

describe('a table as it is copied', () => {
  const comma = (value: number): string => String(value).replace('.', ',');
  it.each<[string, string]>([
    ['two columns with tabs', table(rows)],
    ['two columns with blanks and Windows line ends', table(rows, '  ').replaceAll('\n', '\r\n')],
    ['two columns with commas', table(rows, ',')],
    ['two columns with comma and blank', table(rows, ', ')],
    [
      'semicolons and decimal commas',
      table(
        rows.map(([at, value]) => [at, comma(value)]),
        ';',
      ),
    ],
    ['tabs and decimal commas', table(rows.map(([at, value]) => [at, comma(value)]))],
    ['a head line and empty lines', `Wavelength\tSample 1\n\n${table(rows)}\n\n`],
    ['two rows, as a spreadsheet lays them across', table([nm, values])],
    ['values alone, a line each', values.join('\n')],
    ['values alone in one line', values.join(' ')],
    ['values alone with tabs', values.join('\t')],
    ['from long to short waves', table(rows.toReversed())],
  ])('%s', (_, text) => {
    const { nm: read, reflectance } = spectrumOf(spectrumFromText(text, grid));
    expect(read).toEqual(nm);
    expect(reflectance).toEqual(values);
  });

  it('values above 1.5 are taken for percent, and that is said', () => {
    const text = table(rows.map(([at, value]) => [at, `${(100 * value).toFixed(1)}%`]));
    const read = spectrumFromText(text, grid);
    spectrumOf(read).reflectance.forEach((value, band) => {
      expect(value).toBeCloseTo(values[band]!, 10);
    });
    expect('remarks' in read && read.remarks.join()).toMatch(/percent/);
  });

  it('values alone take the wavelengths they are told to start at', () => {
    const fine = Array.from({ length: 81 }, (_, band) => 380 + 5 * band);
    const text = fine.map(() => '0.4').join('\n');
    const read = spectrumFromText(text, { firstNm: 380, stepNm: 5 });
    expect(spectrumOf(read).nm).toEqual(fine);
    expect('remarks' in read && read.remarks.join()).toMatch(/380 to 780 nm/);
  });

  it('any table that covers 400–700 nm comes back as it was, and makes a spectrum', () => {
    const anyTable = fc
      .record({
        start: fc.integer({ min: 300, max: 400 }),
        steps: fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 8, maxLength: 200 }),
        separator: fc.constantFrom('\t', ' ', ',', ';', ', '),
      })
      .map(({ start, steps, separator }) => {
        const at = [start];
        for (const step of steps) if (at.at(-1)! + step <= 900) at.push(at.at(-1)! + step);
        while (at.at(-1)! < 700) at.push(at.at(-1)! + 50);
        return { at, separator };
      });
    fc.assert(
      fc.property(
        anyTable,
        fc.infiniteStream(fc.integer({ min: 0, max: 1000 })),
        (laid, stream) => {
          const reflectance = laid.at.map(() => Number(stream.next().value) / 1000);
          const text = table(
            laid.at.map((one, k) => [one, reflectance[k]!]),
            laid.separator,
          );
          const spectrum = spectrumOf(spectrumFromText(text, grid));
          expect(spectrum).toEqual({ nm: laid.at, reflectance });
          expect(reflectanceFromTable(spectrum.nm, spectrum.reflectance).reflectance.length).toBe(
            41,
          );
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});

describe('a table that cannot be used', () => {
  const withRow = (line: number, row: readonly (string | number)[]): string =>
    table(rows.map((one, at) => (at + 1 === line ? row : one)));
  it.each<[string, string, RegExp]>([
    ['a word where a number should be', withRow(4, [430, 'n/a']), /^line 4: “n\/a”$/],
    ['a wavelength twice', withRow(5, [430, 0.1]), /^line 5: 430 nm after 430 nm$/],
    ['a value below 0', withRow(6, [450, -0.01]), /^line 6: -0.01$/],
    ['a row with one number', withRow(7, [460]), /^line 7: one number$/],
    ['a third column', withRow(8, [470, 0.1, 0.2]), /^line 8: 3 columns$/],
    [
      'a gap',
      table(rows.filter(([at]) => at < 500 || at > 560)),
      /^line 11: a gap from 490 to 570/,
    ],
    ['too short a range', table(rows.slice(3)), /430 to 700 nm/],
    ['too few values', table(rows.slice(0, 5)), /5 values/],
    ['nothing', '  \n ', /nothing/],
  ])('%s', (_, text, told) => {
    expect(faultsOf(text).join()).toMatch(told);
  });

  it('every faulty line is told, with what to do', () => {
    const read = spectrumFromText(
      table(rows.map(([at, value], k) => [at, k === 2 || k === 9 ? '?' : value])),
      grid,
    );
    expect('problems' in read && read.problems.map(({ place }) => place)).toEqual([
      'line 3',
      'line 10',
    ]);
    expect('problems' in read && read.problems.every(({ mend }) => mend.length > 5)).toBe(true);
  });

  it('lines are counted as they stand, with the head and empty lines', () => {
    const text = `nm;R\n\n${table(
      rows.map(([at, value]) => [at, at === 410 ? 'x' : value]),
      ';',
    )}`;
    expect(faultsOf(text)).toEqual(['line 4: “x”']);
  });
});
