/**
 * Racks through the door and back: JSON, CSV, and everything that may be wrong with them. Expected
 * values are the inputs themselves (round trips) or faults put in on purpose.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { lightIds } from '../../src/colour/illuminant.ts';
import { appearanceOf } from '../../src/finish/appearance.ts';
import { layeringOf } from '../../src/finish/chemistry.ts';
import { bottlesOf, chemistries, effects, type Finish } from '../../src/finish/finish.ts';
import { csvFromRack, rackFromCsv } from '../../src/finish/rack/csv.ts';
import { parseRack, type Rack, textOfRack } from '../../src/finish/rack/rack.ts';
import { sheenClasses, sheenClassOf } from '../../src/finish/sheen.ts';
import { InputError, type Problem } from '../../src/ground/problem.ts';
import { anyFinishes } from './arbitrary.ts';
import { finishWith } from './sample.ts';

const rackOf = (finishes: Finish[]): Rack => ({
  format: 'testspoon-rack',
  version: 1,
  id: 'shelf',
  name: 'Shelf',
  finishes,
});
const problemsOf = (act: () => unknown): readonly Problem[] => {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [];
};
const faultsIn = (rack: unknown): readonly Problem[] =>
  problemsOf(() => parseRack(JSON.stringify(rack), 'shelf.json'));

describe('a rack', () => {
  it('comes back from JSON as it went', () => {
    fc.assert(
      fc.property(anyFinishes, (finishes) => {
        const rack = rackOf(finishes);
        expect(parseRack(textOfRack(rack), 'shelf.json')).toEqual(rack);
      }),
      { seed: 70, numRuns: 100 },
    );
  });

  it('comes back from a spreadsheet as it went, formulas, quotes and line breaks and all', () => {
    fc.assert(
      fc.property(anyFinishes, (finishes) => {
        const { rack, problems } = rackFromCsv(csvFromRack(rackOf(finishes)), {
          id: 'shelf',
          name: 'Shelf',
        });
        expect(problems).toEqual([]);
        expect(rack.finishes).toEqual(finishes);
      }),
      { seed: 71, numRuns: 200 },
    );
  });

  it('never hands a spreadsheet a cell that it would run as a formula', () => {
    fc.assert(
      fc.property(anyFinishes, (finishes) => {
        const { data } = Papa.parse<string[]>(csvFromRack(rackOf(finishes)).trim());
        for (const cell of data.slice(1).flat()) expect(cell).not.toMatch(/^\s*[=+\-@]/);
      }),
      { seed: 72, numRuns: 100 },
    );
  });

  it('lists every fault at once, each with its place', () => {
    const good = finishWith();
    const places = faultsIn({
      ...rackOf([]),
      finishes: [
        { ...good, colour: { lab: [120, 0, 0] } },
        { ...good, id: 'b', gloss60: 'shiny', effect: 'sparkly' },
        { ...good, id: 'c', colr: 1 },
        { ...good, id: 'd', colour: { srgb: 'red' } },
      ],
    }).map(({ place }) => place);
    expect(places).toEqual([
      'finishes › sample › colour › lab › 1',
      'finishes › b › effect',
      'finishes › b › gloss60',
      'finishes › c',
      'finishes › d › colour › srgb',
    ]);
  });

  it('tells of one id twice, one bottle in two ways, a broken spectrum, face on a solid', () => {
    const bottle = { id: 'clear', name: 'Clear', onHand: true, leadDays: 0 };
    const nm = Array.from({ length: 31 }, (_, band) => 400 + 10 * band);
    const faults = faultsIn(
      rackOf([
        finishWith({ bottle }),
        finishWith(),
        finishWith({ id: 'b', bottle: { ...bottle, onHand: false } }),
        finishWith({
          id: 'c',
          colour: { spectrum: { nm, reflectance: nm.slice(1).map(() => 0.5) } },
        }),
        finishWith({ id: 'd', face: { lab: [50, 0, 0] } }),
      ]),
    );
    expect(faults.map(({ place }) => place.split(' › ')[1])).toEqual(['sample', 'b', 'c', 'd']);
  });

  it('refuses a later version and says that the file was left alone', () => {
    const [fault] = faultsIn({ ...rackOf([]), version: 2, more: true });
    expect(fault?.place).toBe('version');
    expect(fault?.mend).toMatch(/left as it is/);
  });

  it('holds 10,000 finishes, and refuses more than 20,000 before looking at each', () => {
    const many = (count: number) =>
      rackOf(Array.from({ length: count }, (_, at) => finishWith({ id: `f${at}` })));
    expect(parseRack(JSON.stringify(many(10_000)), 'big.json').finishes).toHaveLength(10_000);
    const { finishes } = many(1);
    const crowd = { ...rackOf([]), finishes: new Array(20_001).fill(finishes[0]) };
    expect(faultsIn(crowd)).toHaveLength(1);
  });
});

describe('a spreadsheet', () => {
  const header = 'id,name,effect,colour,gloss60,provenance.how';
  const read = (text: string) => rackFromCsv(text, { id: 'shelf', name: 'Shelf' });

  it('gives its good rows and lists the bad ones by row and reason', () => {
    const { rack, problems } = read(
      [
        header,
        'a,Harbour grey,solid,lab 54 -2 -5,86,swatch',
        'b,Too bright,solid,lab 154 0 0,86,swatch',
        'a,Again,solid,#112233,86,swatch',
        'c,Comma,solid,#112233,8,6,swatch',
        'd,Plum,solid,#552244,80,measured',
      ].join('\n'),
    );
    expect(rack.finishes.map(({ id }) => id)).toEqual(['a', 'd']);
    expect(problems.map(({ place }) => place.split(' › ')[0])).toEqual(['row 3', 'row 4', 'row 5']);
  });

  it('is read with semicolons or tabs and with a byte order mark', () => {
    for (const separator of [';', '\t']) {
      const rows = [header, 'a,Plum,solid,#552244,80,guess'].map((row) =>
        row.replaceAll(',', separator),
      );
      expect(read(`\ufeff${rows.join('\r\n')}`).rack.finishes).toHaveLength(1);
    }
  });

  it('names unknown columns and those it misses', () => {
    const { problems } = read(`${header},shade\na,Plum,solid,#552244,80,guess,dark`);
    expect(problems.map(({ found }) => found)).toEqual(['“shade”']);
    expect(problemsOf(() => read('id,name\na,Plum'))[0]?.found).toContain('effect, colour');
  });

  it('keeps a row with hidden characters out', () => {
    const { rack, problems } = read(`${header}\na,Pl\u202eum,solid,#552244,80,guess`);
    expect(rack.finishes).toEqual([]);
    expect(problems[0]?.place).toBe('row 2 › name');
  });
});

describe('the racks of the house', () => {
  const folder = new URL('../../palettes/', import.meta.url);
  const racks = readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .map((file) => parseRack(readFileSync(new URL(file, folder), 'utf8'), file));
  const all = racks.flatMap((rack) => rack.finishes);

  it('are at least two, with at least 60 finishes', () => {
    expect(racks.length).toBeGreaterThanOrEqual(2);
    expect(all.length).toBeGreaterThanOrEqual(60);
  });

  it('cover every effect, material, sheen, provenance and paint chemistry', () => {
    const missing = <T>(wanted: readonly T[], have: readonly T[]) =>
      wanted.filter((one) => !have.includes(one));
    expect(
      missing(
        effects,
        all.map(({ effect }) => effect),
      ),
    ).toEqual([]);
    const sheens = all.map(({ gloss60 }) => sheenClassOf(gloss60));
    expect(missing(sheenClasses, sheens)).toEqual([]);
    const hows = all.map(({ provenance }) => provenance.how);
    expect(missing(['measured', 'photo', 'swatch', 'guess'] as const, hows)).toEqual([]);
    const films = all.flatMap(({ chemistry, clear }) => [chemistry, clear?.chemistry ?? 'none']);
    expect(missing(chemistries, films)).toEqual([]);
  });

  it('hold candy over silver and over gold, tinted and plain clear, spectra, shared bottles', () => {
    const bases = all
      .filter(({ effect }) => effect === 'candy')
      .map((f) => f.undercoats.at(-1)!.name);
    expect(new Set(bases)).toEqual(new Set(['Fine silver base', 'Fine gold base']));
    expect(all.some(({ clear }) => clear?.tint !== undefined)).toBe(true);
    expect(all.some(({ clear }) => clear !== undefined && clear.tint === undefined)).toBe(true);
    expect(all.filter(({ colour }) => 'spectrum' in colour).length).toBeGreaterThan(2);
    const bottles = all.flatMap(bottlesOf);
    expect(bottles.some(({ onHand }) => onHand)).toBe(true);
    expect(bottles.some(({ onHand, leadDays }) => !onHand && leadDays > 0)).toBe(true);
    expect(bottles.filter(({ id }) => id === 'gloss-clear').length).toBeGreaterThan(2);
  });

  it('put no film over one it would lift', () => {
    for (const finish of all) {
      const films = [...finish.undercoats, finish, ...(finish.clear ? [finish.clear] : [])];
      films.slice(1).forEach((film, under) => {
        const verdict = layeringOf(film.chemistry, films[under]!.chemistry).verdict;
        expect(`${finish.id}: ${verdict}`).not.toContain('avoid');
      });
    }
  });

  it('can all be seen under every light', () => {
    for (const finish of all) {
      for (const light of lightIds) {
        const { lab, face, flop } = appearanceOf(finish, light);
        for (const value of [...lab, ...face, ...flop]) expect(Number.isFinite(value)).toBe(true);
        expect(lab[0]).toBeGreaterThan(0);
      }
    }
  });

  it('say the same in the spreadsheet twin', () => {
    const twin = readFileSync(new URL('corner-shop.csv', folder), 'utf8');
    const { rack, problems } = rackFromCsv(twin, { id: 'corner-shop', name: 'Corner shop' });
    expect(problems).toEqual([]);
    expect(rack.finishes).toEqual(racks.find(({ id }) => id === 'corner-shop')!.finishes);
  });
});
