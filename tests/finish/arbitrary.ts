/** Random finishes for property tests: everything the schema allows, within one rack. */
import fc from 'fast-check';
import * as v from 'valibot';
import { chemistries, effects, type Finish, finishSchema } from '../../src/finish/finish.ts';
import { hasHidden } from '../../src/finish/parse.ts';

const some = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(value, { nil: undefined });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Any text a file may hold, hostile ones for spreadsheets among them. */
const text = (max: number) =>
  fc
    .oneof(
      fc.string({ unit: 'grapheme', maxLength: max }),
      fc.constantFrom(
        '=1+1',
        '@sum',
        '-3',
        "'",
        "'=x",
        '+4,5',
        'a,"b";c',
        ' lead',
        'x\ty',
        'a\nb',
        '',
      ),
    )
    .filter((one) => !hasHidden(one) && !one.includes('\r'));
const name = text(40).filter((one) => /^[^\t\n]*\S[^\t\n]*$/.test(one) && one.length <= 120);
const id = fc.stringMatching(/^[a-z0-9]{1,6}(-[a-z0-9]{1,6}){0,2}$/);
const colour = fc.oneof(
  fc.stringMatching(/^#[0-9a-fA-F]{6}$/).map((srgb) => ({ srgb })),
  fc.record({
    lab: fc.tuple(number(0, 100), number(-160, 160), number(-160, 160)),
    light: fc.constantFrom('D65', 'D50'),
  }),
  fc.array(number(0, 1.5), { minLength: 31, maxLength: 31 }).map((reflectance) => ({
    spectrum: { nm: reflectance.map((_, band) => 400 + 10 * band), reflectance },
  })),
);
const chemistry = fc.constantFrom(...chemistries);
const coats = fc.integer({ min: 1, max: 20 });
/** Bottles carry their own number, so that no two are told in different ways. */
const bottle = fc
  .record({ name, onHand: fc.boolean(), leadDays: number(0, 365) })
  .chain((rest) => fc.uuid().map((key) => ({ id: `b-${key}`, ...rest })));
const undercoat = fc.record({
  name,
  role: fc.constantFrom('primer', 'base'),
  effect: fc.constantFrom('solid', 'metallic'),
  colour,
  chemistry,
  coats,
  bottle: some(bottle),
});

const written = fc.record({
  name,
  effect: fc.constantFrom(...effects),
  colour,
  face: some(colour),
  flop: some(colour),
  flopIndex: some(number(0, 30)),
  gloss60: number(0, 100),
  sampleGloss60: some(number(0, 100)),
  coats,
  chemistry,
  undercoats: fc.array(undercoat, { maxLength: 3 }),
  clear: some(fc.record({ name, chemistry, coats, tint: some(colour), bottle: some(bottle) })),
  provenance: fc.record({
    how: fc.constantFrom('measured', 'photo', 'swatch', 'guess'),
    deltaE: some(number(0, 30)),
    note: some(text(60)),
  }),
  bottle: some(bottle),
  note: some(text(200)),
});

/** Drops fields that are there but undefined, as no file holds them. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** Up to six finishes with ids of their own. */
export const anyFinishes: fc.Arbitrary<Finish[]> = fc
  .uniqueArray(fc.tuple(id, written), { selector: ([key]) => key, maxLength: 6 })
  .map((entries) =>
    entries.map(([key, finish]) => {
      const hasFlake = finish.effect === 'metallic' || finish.effect === 'pearl';
      const { face, flop, flopIndex, ...rest } = finish;
      const flake = hasFlake ? { face, flop, flopIndex } : {};
      return v.parse(finishSchema, plain({ id: key, ...rest, ...flake }));
    }),
  );
