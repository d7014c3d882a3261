/**
 * Tables that builders keep for themselves, and what becomes of them. Expected values are what the
 * cells say, converted by hand where a cell says it otherwise (rgb 121, 130, 138 is #79828a, since
 * 121 = 7·16 + 9, 130 = 8·16 + 2, 138 = 8·16 + 10); row numbers are those of the lines written here.
 */
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { Finish } from '../../src/finish/finish.ts';
import { csvFromRack, rackFromCsv } from '../../src/finish/rack/csv.ts';
import { type RackReading, rackFromText } from '../../src/finish/rack/paste.ts';
import { sheenClassOf } from '../../src/finish/sheen.ts';
import { classGloss } from '../../src/finish/text/words.ts';
import { InputError, type Problem } from '../../src/ground/problem.ts';
import { anyFinishes } from './arbitrary.ts';

const read = (text: string): RackReading => rackFromText(text, { id: 'shelf', name: 'Shelf' });
const readRows = (...rows: string[]): RackReading => read(rows.join('\n'));
const only = (reading: RackReading): Finish => {
  expect(reading.problems).toEqual([]);
  expect(reading.rack.finishes).toHaveLength(1);
  return reading.rack.finishes[0]!;
};
const refusal = (text: string): Problem => {
  try {
    read(text);
  } catch (error) {
    if (error instanceof InputError) return error.problems[0]!;
    throw error;
  }
  throw new Error('it was read');
};
const placesOf = ({ problems }: RackReading): string[] => problems.map(({ place }) => place);

describe('a spreadsheet in its owner’s words', () => {
  it('is read by what its columns are called', () => {
    const finish = only(
      readRows(
        'Colour name,HEX,Gloss (GU),Type,How,ΔE,Have it?,Delivery (days),Base,Coats,Notes',
        'Harbour grey,#79828A,86,Metallic,Measured,1.5,no,12,Lacquer,3,for the sills',
      ),
    );
    expect(finish).toMatchObject({
      id: 'harbour-grey',
      name: 'Harbour grey',
      effect: 'metallic',
      colour: { srgb: '#79828A' },
      gloss60: 86,
      chemistry: 'lacquer',
      coats: 3,
      provenance: { how: 'measured', deltaE: 1.5 },
      bottle: { id: 'harbour-grey', name: 'Harbour grey', onHand: false, leadDays: 12 },
      note: 'for the sills',
    });
  });

  it.each([
    ['Name,Hex\nA,#79828a', { srgb: '#79828a' }],
    ['Name,Hex code\nA,79828a', { srgb: '#79828a' }],
    ['Name,Color\nA,#abc', { srgb: '#aabbcc' }],
    ['Name,R,G,B\nA,121,130,138', { srgb: '#79828a' }],
    ['Name,RGB\nA,"121, 130, 138"', { srgb: '#79828a' }],
    ['Name,Colour\nA,"rgb(121, 130, 138)"', { srgb: '#79828a' }],
    ['Name,L*,a*,b*\nA,54.5,-2,-5', { lab: [54.5, -2, -5], light: 'D65' }],
    ['Name,L,a,b,Illuminant\nA,54.5,-2,\u22125,D50', { lab: [54.5, -2, -5], light: 'D50' }],
    ['Name,Lab\nA,54.5 -2 -5', { lab: [54.5, -2, -5], light: 'D65' }],
    ['Name,Colour\nA,lab-d50 54.5 -2 -5', { lab: [54.5, -2, -5], light: 'D50' }],
    ['Name\tLab\nA\t54,5 -2,0 -5', { lab: [54.5, -2, -5], light: 'D65' }],
  ])('takes a colour as it is written in %j', (text, colour) => {
    expect(only(read(text)).colour).toEqual(colour);
  });

  it.each([
    ['Matt metallic', 'metallic', 'matt'],
    ['dead flat', 'solid', 'dead matt'],
    ['Semi-gloss', 'solid', 'semi-gloss'],
    ['semi matt', 'solid', 'eggshell'],
    ['Satin pearl', 'pearl', 'satin'],
    ['High gloss candy', 'candy', 'high gloss'],
    ['Eggshell', 'solid', 'eggshell'],
    ['gloss', 'solid', 'gloss'],
  ] as const)('takes “%s” as %s, %s', (word, effect, sheen) => {
    const finish = only(readRows('Name,Hex,Finish', `A,#112233,${word}`));
    expect([finish.effect, sheenClassOf(finish.gloss60).name]).toEqual([effect, sheen]);
  });

  it('lets every class word stand for a gloss that lies in its class', () => {
    for (const [word, gloss60] of Object.entries(classGloss)) {
      expect(sheenClassOf(gloss60).name).toBe(word);
    }
  });

  it.each([
    ['x', true],
    ['✓', true],
    ['2', true],
    ['Yes', true],
    ['0', false],
    ['no', false],
    ['to buy', false],
    ['', undefined],
  ])('takes “%s” under Have as %s', (cell, onHand) => {
    const finish = only(readRows('Name;Hex;Have', `A;#112233;${cell}`));
    expect(finish.bottle?.onHand).toBe(onHand);
  });

  it('gives two finishes of one name ids of their own, and leaves stated ids alone', () => {
    const { rack } = readRows('Name,Hex', 'Blue,#111122', 'Blue,#222233', 'Blue,#333344');
    expect(rack.finishes.map(({ id }) => id)).toEqual(['blue', 'blue-2', 'blue-3']);
    const stated = readRows('id,Name,Hex', ',Blue,#111122', 'blue,Other,#222233').rack.finishes;
    expect(stated.map(({ id }) => id)).toEqual(['blue-2', 'blue']);
  });

  it('lets bottles of one name be one bottle', () => {
    const { rack } = readRows(
      'Name,Hex,Bottle,Have',
      'A,#111122,"Blue, 10 ml",x',
      'B,#222233,"Blue, 10 ml",x',
    );
    expect(new Set(rack.finishes.map(({ bottle }) => bottle?.id))).toEqual(new Set(['blue-10-ml']));
  });

  it('passes over blank rows and counts them', () => {
    const reading = readRows('Name,Hex', '', 'A,#112233', ' , ', 'B,reddish');
    expect(reading.rack.finishes).toHaveLength(1);
    expect(placesOf(reading)).toEqual(['row 5, “B” › Hex']);
  });

  it('takes a column of colour words for the names where nothing else is the name', () => {
    expect(only(readRows('Colour,Hex', 'Harbour grey,#79828a')).name).toBe('Harbour grey');
    const both = readRows('Name,Colour,Hex', 'No 5,Navy 5,#112233');
    expect(only(both).name).toBe('No 5');
    expect(both.granted.join()).toContain('“Colour”');
  });

  it('reads a list without headings by what is in it, and says so', () => {
    const reading = readRows('Plum\t#552244\tMatt', 'Sky\t#88aacc\tGloss metallic');
    expect(reading.rack.finishes.map(({ name, effect }) => [name, effect])).toEqual([
      ['Plum', 'solid'],
      ['Sky', 'metallic'],
    ]);
    expect(reading.granted[0]).toMatch(/names no columns/);
  });

  it('understands decimal commas beside tabs and semicolons, and only there', () => {
    for (const [separator, gloss60] of [
      ['\t', 45.5],
      [';', 45.5],
    ] as const) {
      const text = 'Name|Hex|Gloss\nA|#112233|45,5'.replaceAll('|', separator);
      expect(only(read(text)).gloss60).toBe(gloss60);
    }
    expect(placesOf(read('Name,Hex,Gloss\nA,#112233,"45,5"'))).toEqual(['row 2, “A” › Gloss']);
  });
});

describe('what is taken for granted', () => {
  it('is told with how often', () => {
    const { granted } = readRows(
      'Name,L,a,b,Gloss,Price,Have',
      'A,50,0,0,,3,x',
      'B,50,0,0,,3,no',
      'C,50,0,0,matt,3,',
    );
    const told = granted.join('\n');
    expect(told).toMatch(/2 finishes had no gloss; taken as semi-gloss, 45 GU/);
    expect(told).toMatch(/matt 7 GU/);
    expect(told).toMatch(/3 finishes had no effect; taken as solid/);
    expect(told).toMatch(/3 finishes did not say how .* guess/);
    expect(told).toMatch(/D65/);
    expect(told).toMatch(/1 finish to buy had no days/);
    expect(told).toMatch(/1 finish said nothing of a bottle/);
    expect(told).toMatch(/3 finishes did not say what paint/);
    expect(told).toMatch(/“Price”/);
  });

  it('is nothing where everything is said', () => {
    const { granted } = readRows(
      'Name,Hex,Gloss,Type,How,Have,Days,Base',
      'A,#112233,80,solid,swatch,no,3,enamel',
    );
    expect(granted).toEqual([]);
  });

  it('does not count the bad rows', () => {
    const { granted } = readRows('Name,Hex', 'A,#112233', 'B,reddish');
    expect(granted.join()).toContain('1 finish had no gloss');
  });

  it('leaves cloth and rubber dull', () => {
    const { rack } = readRows('Name,Hex,Type', 'Carpet,#333333,flock', 'Tyres,#222222,rubber');
    expect(rack.finishes.map(({ gloss60 }) => sheenClassOf(gloss60).name)).toEqual([
      'dead matt',
      'matt',
    ]);
  });
});

describe('a cell that nobody needs and that cannot be read', () => {
  const { rack, problems, granted } = readRows(
    'Name,Hex,Gloss,Type,Have,Days,Base,How',
    'Sky,#88aacc,shiny,solid,yes,3,enamel,guess',
    'Plum,#552244,80,Spray,no,3,enamel,guess',
    'Rust,#7a3b1d,80,solid,maybe,soon,oil,hearsay',
  );

  it('counts as empty: its row comes in, with what is usual', () => {
    expect(problems).toEqual([]);
    expect(rack.finishes.map(({ name, effect }) => [name, effect])).toEqual([
      ['Sky', 'solid'],
      ['Plum', 'solid'],
      ['Rust', 'solid'],
    ]);
    expect(rack.finishes[0]?.gloss60).toBe(classGloss['semi-gloss']);
    expect(rack.finishes[2]?.bottle).toBeUndefined();
    expect(rack.finishes[2]?.provenance.how).toBe('guess');
  });

  it('is told by what stands in it, its column, its paint and its row', () => {
    const told = granted.find((sentence) => sentence.includes('could not be read'));
    expect(told).toMatch(/^6 cells could not be read and count as empty/);
    for (const cell of [
      '“shiny” under Gloss (Sky, row 2)',
      '“Spray” under Type (Plum, row 3)',
      '“maybe” under Have (Rust, row 4)',
      '“hearsay” under How (Rust, row 4)',
    ]) {
      expect(told).toContain(cell);
    }
    expect(granted.join()).toContain('1 finish had no gloss; taken as semi-gloss');
  });

  it('takes water for what a water-based paint is', () => {
    const reading = readRows(
      'Name,Hex,Type,Base',
      'A,#112233,solid,water',
      'B,#112233,matt,enamel',
    );
    expect(reading.rack.finishes[0]?.chemistry).toBe('acrylic');
  });
});

describe('two paints of one name', () => {
  it('both come in, and are told with their rows', () => {
    const { rack, granted } = readRows(
      'Name,Hex',
      'Mill pond,#27596b',
      'Fog,#aaaaaa',
      'mill pond,#2a6070',
    );
    expect(rack.finishes).toHaveLength(3);
    expect(granted.filter((one) => /“mill pond” in rows 2, 4/.test(one))).toHaveLength(1);
    expect(readRows('Name,Hex', 'A,#112233', 'B,#112233').granted.join()).not.toMatch(/One name/);
  });
});

describe('a bad row', () => {
  it.each([
    ['no name', ',#112233,80,solid', 'Name', 'nothing'],
    ['no colour', 'A,,80,solid', 'Hex', 'nothing'],
    ['a colour in words', 'A,reddish,80,solid', 'Hex', '“reddish”'],
    ['five digits', 'A,#12345,80,solid', 'Hex', '“#12345”'],
    ['digits that a spreadsheet cut', 'A,1122,80,solid', 'Hex', '“1122”'],
    ['too much gloss', 'A,#112233,140,solid', 'Gloss', '140'],
    ['gloss in figures that are none', 'A,#112233,8O,solid', 'Gloss', '“8O”'],
    ['a formula', '=A1&B1,#112233,80,solid', 'Name', '“=A1&B1”'],
    ['a formula that failed', 'A,#REF!,80,solid', 'Hex', '“#REF!”'],
    ['a hidden turn of direction', 'Pl\u202eum,#112233,80,solid', 'Name', '“Pl\\u202eum”'],
    ['a control character', 'Pl\u0007um,#112233,80,solid', 'Name', '“Pl\\u0007um”'],
  ])('with %s stays out, told by row, name, column and reason', (_, row, heading, found) => {
    const reading = readRows('Name,Hex,Gloss,Type', 'Good,#445566,80,solid', row);
    expect(reading.rack.finishes.map(({ name }) => name)).toEqual(['Good']);
    expect(reading.problems).toHaveLength(1);
    // Where the name is what is wrong, nothing is called by it.
    const where = heading === 'Name' ? 'row 3' : 'row 3, “A”';
    expect(reading.problems[0]).toMatchObject({ place: `${where} › ${heading}`, found });
  });

  it('tells of Lab or RGB out of range by their columns together', () => {
    expect(placesOf(readRows('Name,L,a,b', 'A,120,0,0', 'B,50,,0'))).toEqual([
      'row 2, “A” › L, a, b',
      'row 3, “B” › L, a, b',
    ]);
    expect(placesOf(readRows('Name,R,G,B', 'A,1,2,300'))).toEqual([
      'row 2, “A” › red, green, blue',
    ]);
  });

  it('tells of a row longer than the first, and of a quotation mark left open', () => {
    expect(placesOf(readRows('Name,Hex', 'A,#112233,x'))).toEqual(['row 2, “A”']);
    const open = readRows('Name,Hex', 'A,#112233', 'B,"#112233', 'C,#112233');
    expect(open.problems[0]?.found).toContain('never closed');
    expect(open.rack.finishes.map(({ name }) => name)).toEqual(['A']);
  });
});

describe('what is no table of finishes', () => {
  it.each([
    ['', /nothing/],
    [' \r\n\t\n', /nothing/],
    ['Name,Hex\n', /nothing beneath/],
    ['Shelf,Price\n1,2', /“Shelf”/],
    ['PK\u0003\u0004\u0014\u0000\u0006', /workbook/],
    ['\u0000\u0001\u0002\u0003', /no text/],
    ['GIF89a\ufffd\ufffd', /no text/],
    [`Name,Hex\n${'A,#112233\n'.repeat(20_001)}`, /more than 20,000 rows/],
    [`Name,Hex${',x'.repeat(300)}`, /302 columns/],
    [`Name,Hex\n${'A,#112233\n'.repeat(6_500_000)}`, /MB/],
  ])('is refused whole with what it is (case %#)', (text, found) => {
    expect(refusal(text).found).toMatch(found);
  });

  it('still takes 20,000 rows, all of one name', () => {
    const { rack } = read(`Name,Hex\n${'Blue,#112233\n'.repeat(20_000)}`);
    expect(new Set(rack.finishes.map(({ id }) => id)).size).toBe(20_000);
  });

  it('never breaks, whatever the text', () => {
    const line = fc.array(
      fc.oneof(
        fc.string({ unit: 'binary', maxLength: 12 }),
        fc.constantFrom('Name', 'Hex', 'L', 'a', 'b', 'Finish', '#112233', '"', '=1', '12,5'),
      ),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 6 }),
        fc.constantFrom(',', ';', '\t'),
        (lines, separator) => {
          const text = lines.map((cells) => cells.join(separator)).join('\n');
          try {
            for (const { name } of read(text).rack.finishes) expect(name).toMatch(/\S/);
          } catch (error) {
            expect(error).toBeInstanceOf(InputError);
          }
        },
      ),
      { seed: 73, numRuns: 2000 },
    );
  });
});

describe('our own CSV', () => {
  it('reads the same through this door as through its own, and comes back as it went', () => {
    fc.assert(
      fc.property(anyFinishes, (finishes) => {
        const rack = { format: 'testspoon-rack' as const, version: 1 as const };
        const text = csvFromRack({ ...rack, id: 'shelf', name: 'Shelf', finishes });
        const reading = read(text);
        expect(reading.rack.finishes).toEqual(finishes);
        expect(reading).toEqual({
          ...rackFromCsv(text, { id: 'shelf', name: 'Shelf' }),
          granted: [],
        });
      }),
      { seed: 74, numRuns: 100 },
    );
  });

  it('keeps names, colours, gloss and notes through a table in other words, whatever the separator', () => {
    fc.assert(
      fc.property(anyFinishes, fc.constantFrom(',', ';', '\t'), (finishes, separator) => {
        const plain = finishes.filter(
          ({ name, note = '', colour }) =>
            'lab' in colour && [name, note].every((text) => /^[^\s=@'#][^\n]*$|^$/u.test(text)),
        );
        const decimal = (value: number): string => {
          const text = value.toFixed(6);
          return separator === ',' ? text : text.replace('.', ',');
        };
        const rows = plain.map(({ name, colour, gloss60, note = '' }) => {
          const { lab, light } = colour as { lab: number[]; light: string };
          return [name, ...lab.map(decimal), light, decimal(gloss60), note];
        });
        if (rows.length === 0) return;
        const header = ['Paint', 'L*', 'a*', 'b*', 'White', 'Gloss', 'Remarks'];
        const text = Papa.unparse([header, ...rows], { delimiter: separator });
        const reading = read(text);
        expect(reading.problems).toEqual([]);
        reading.rack.finishes.forEach((finish, at) => {
          const { name, colour, gloss60, note } = plain[at]!;
          const { lab, light } = colour as { lab: number[]; light: string };
          expect(finish.name).toBe(name.trim());
          expect(finish.note ?? '').toBe((note ?? '').trim());
          expect(finish.gloss60).toBeCloseTo(gloss60, 5);
          const back = finish.colour as { lab: number[]; light: string };
          expect(back.light).toBe(light);
          for (const [position, axis] of lab.entries()) {
            expect(back.lab[position]).toBeCloseTo(axis, 5);
          }
        });
      }),
      { seed: 75, numRuns: 200 },
    );
  });
});
