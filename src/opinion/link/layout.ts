/**
 * How is a round written down before it is packed? As one JSON array without field names: what can
 * be worked out of names is left out, finishes are pointed at by place, and lists end with the last
 * thing that is not as usual. One round has one text, and one text is at most one round.
 *
 * In and out: a round and its text. Reading throws `InputError` for anything `textFrom` would not
 * have written, whatever it decodes to. The order of fields is frozen with version 1.
 *
 *     [name, story or 0, car, scale, distance mm, light, [finish…], [part…], letters, [place of asked part…]]
 *     finish  [name, effect, colour, gloss60, origin, chemistry, coats, delta E, gloss60 of the sample,
 *              face, flop, flop index, [name, role, effect, colour, chemistry, coats], [name, chemistry, coats, tint]]
 *     colour  "rrggbb", [L, a, b] under D65, [L, a, b, 50] under D50, or [[nm…], [reflectance…]],
 *             where evenly spaced nm are [first, step]
 *     part    [name, car parts or "" where its name tells, what it wears]
 *     wears   place of a finish, −1 − place where it is not painted yet, one place for each letter,
 *             or null where the part is not on the model
 */
import type { Build, EmbeddedFinish, Part } from '../../build/build.ts';
import { buildVersion, defaultWeights, isOpen, refOf } from '../../build/build.ts';
import { buildFrom } from '../../build/read/document.ts';
import type { Colour, Finish } from '../../finish/finish.ts';
import { idFrom, idGiver } from '../../ground/id.ts';
import { InputError, shown } from '../../ground/problem.ts';
import { lettersIn, type Round, roundOf, roundRack } from '../round.ts';
import {
  chemistryCodes,
  effectCodes,
  lightCodes,
  provenanceCodes,
  roleCodes,
} from './words/first.ts';

type Json = null | string | number | readonly Json[];

/** The text of a round. */
export function textFrom(round: Round): string {
  const { build, asks } = round;
  const places = new Map(build.finishes.map((finish, at) => [refOf(finish), at]));
  return JSON.stringify([
    build.name,
    build.story ?? 0,
    build.car,
    build.scale,
    build.viewing.distanceMm,
    codeOf(lightCodes, build.viewing.light),
    build.finishes.map(finishAsJson),
    build.parts.map((part) => partAsJson(part, build, places)),
    lettersIn(round).join(''),
    asks.map((id) => build.parts.findIndex((part) => part.id === id)),
  ]);
}

const codeOf = <Code extends string>(codes: readonly Code[], word: Code): number =>
  codes.indexOf(word);

/** A list without the nulls at its end. */
const trimmed = (list: readonly Json[]): Json[] =>
  list.slice(0, list.findLastIndex((one) => one !== null) + 1);

function finishAsJson(finish: EmbeddedFinish): Json {
  const [film] = finish.undercoats;
  const { clear } = finish;
  return trimmed([
    finish.name,
    codeOf(effectCodes, finish.effect),
    colourAsJson(finish.colour),
    finish.gloss60,
    codeOf(provenanceCodes, finish.provenance.how),
    codeOf(chemistryCodes, finish.chemistry),
    finish.coats,
    finish.provenance.deltaE ?? null,
    finish.sampleGloss60 ?? null,
    finish.face === undefined ? null : colourAsJson(finish.face),
    finish.flop === undefined ? null : colourAsJson(finish.flop),
    finish.flopIndex ?? null,
    film === undefined
      ? null
      : [
          film.name,
          codeOf(roleCodes, film.role),
          codeOf(effectCodes, film.effect),
          colourAsJson(film.colour),
          codeOf(chemistryCodes, film.chemistry),
          film.coats,
        ],
    clear?.tint === undefined
      ? null
      : [
          clear.name,
          codeOf(chemistryCodes, clear.chemistry),
          clear.coats,
          colourAsJson(clear.tint),
        ],
  ]);
}

function colourAsJson(colour: Colour): Json {
  if ('srgb' in colour) return colour.srgb.slice(1);
  if ('lab' in colour) return colour.light === 'D50' ? [...colour.lab, 50] : colour.lab;
  const { nm, reflectance } = colour.spectrum;
  const [first = 0, second = 0] = nm;
  const step = second - first;
  const isEven = nm.every((one, at) => one === first + at * step);
  return [isEven ? [first, step] : nm, reflectance];
}

function partAsJson(part: Part, build: Build, places: ReadonlyMap<string, number>): Json {
  const covers = part.covers.join(' ');
  const name = [part.name, covers === idFrom(part.name, 'part') ? '' : covers];
  if (part.absent) return [...name, null];
  if (isOpen(part)) {
    return [...name, build.alternatives.map(({ choices }) => places.get(choices[part.id]!)!)];
  }
  const at = places.get(part.finish)!;
  return [...name, part.painted ? at : -1 - at];
}

/** What stands at a place that should hold something else. */
function refuse(place: string, found: unknown, expected: string): never {
  const mend = 'Ask for the link again where it came from.';
  throw new InputError([{ place, found: shown(found), expected, mend }], 'the link');
}

const listAt = (value: unknown, place: string): readonly unknown[] =>
  Array.isArray(value) ? value : refuse(place, value, 'a list');
const wordAt = <Code extends string>(codes: readonly Code[], value: unknown, place: string): Code =>
  codes[typeof value === 'number' ? value : -1] ?? refuse(place, value, 'a code of this version');
const textAt = (value: unknown, place: string): string =>
  typeof value === 'string' ? value : refuse(place, value, 'a text');
const numberAt = (value: unknown, place: string): number =>
  typeof value === 'number' ? value : refuse(place, value, 'a number');
const has = (value: unknown): boolean => value !== undefined && value !== null;

/** The round in a text. */
export function roundIn(text: string): Round {
  const round = readRound(parsed(text));
  // Whatever else the text may have held, or held otherwise, is not what a builder has sent.
  if (textFrom(round) !== text) refuse('', text, 'a round as a builder’s page writes it');
  return round;
}

function parsed(text: string): readonly unknown[] {
  try {
    return listAt(JSON.parse(text), '');
  } catch (error) {
    if (error instanceof InputError) throw error;
    return refuse('', text, 'a round');
  }
}

function readRound(fields: readonly unknown[]): Round {
  const [name, story, car, scale, distanceMm, light, finishes, parts, letters, asks] = fields;
  const giveId = idGiver([]);
  const embedded = listAt(finishes, 'finishes').map((one, at) => finishIn(one, at, giveId));
  const refs = embedded.map((finish) => refOf(finish));
  const each = [...textAt(letters, 'letters')];
  if (each.length === 0 || !/^[A-Z]+$/.test(each.join('')) || each.length !== new Set(each).size) {
    refuse('letters', letters, 'different letters');
  }
  const givePart = idGiver([]);
  const read = listAt(parts, 'parts').map((one, at) =>
    partIn(one, at, refs, givePart, each.length),
  );
  const build = buildFrom(
    {
      format: 'testspoon-build',
      version: buildVersion,
      id: idFrom(textAt(name, 'name'), 'round'),
      name,
      ...(story !== 0 && { story: textAt(story, 'story') }),
      car,
      scale,
      viewing: { distanceMm, light: wordAt(lightCodes, light, 'light') },
      weights: { ...defaultWeights },
      tonal: false,
      mustRead: [],
      finishes: embedded,
      parts: read.map(({ part }) => part),
      rules: [],
      alternatives: each.map((letter, at) => ({
        id: letter.toLowerCase(),
        name: letter,
        choices: Object.fromEntries(
          read.flatMap(({ part, worn }) => {
            const ref = worn[at];
            return ref === undefined ? [] : [[part.id, ref]];
          }),
        ),
      })),
    },
    'the link',
  );
  const asked = listAt(asks, 'asks').map(
    (at) => build.parts[numberAt(at, 'asks')]?.id ?? refuse('asks', at, 'the place of a part'),
  );
  // Only what a round can be made of is one: nothing unworn, nothing asked that does not differ.
  return roundOf(build, { parts: asked, withStory: true });
}

type GiveId = ReturnType<typeof idGiver>;

function finishIn(value: unknown, at: number, giveId: GiveId): EmbeddedFinish {
  const place = `finishes › ${at + 1}`;
  const list = listAt(value, place);
  const [name, effect, colour, gloss60, how, chemistry, coats, deltaE, sample, ...flake] = list;
  const [face, flop, flopIndex, film, clear] = flake;
  const finish: { [Field in keyof Finish]: unknown } = {
    id: giveId(textAt(name, place), 'finish'),
    name,
    effect: wordAt(effectCodes, effect, place),
    colour: colourIn(colour, place),
    ...(has(face) && { face: colourIn(face, place) }),
    ...(has(flop) && { flop: colourIn(flop, place) }),
    ...(has(flopIndex) && { flopIndex }),
    gloss60,
    ...(has(sample) && { sampleGloss60: sample }),
    coats,
    chemistry: wordAt(chemistryCodes, chemistry, place),
    undercoats: has(film) ? [filmIn(listAt(film, place), place)] : [],
    ...(has(clear) && { clear: clearIn(listAt(clear, place), place) }),
    provenance: { how: wordAt(provenanceCodes, how, place), ...(has(deltaE) && { deltaE }) },
  };
  // Its fields are held against the schema with the whole build.
  return { rack: roundRack, ...finish } as EmbeddedFinish;
}

const filmIn = (
  [name, role, effect, colour, chemistry, coats]: readonly unknown[],
  place: string,
) => ({
  name,
  role: wordAt(roleCodes, role, place),
  effect: wordAt(effectCodes, effect, place),
  colour: colourIn(colour, place),
  chemistry: wordAt(chemistryCodes, chemistry, place),
  coats,
});
const clearIn = ([name, chemistry, coats, tint]: readonly unknown[], place: string) => ({
  name,
  chemistry: wordAt(chemistryCodes, chemistry, place),
  coats,
  tint: colourIn(tint, place),
});

function colourIn(value: unknown, place: string): unknown {
  if (typeof value === 'string') return { srgb: `#${value}` };
  const list = listAt(value, place);
  if (!Array.isArray(list[0])) {
    return { lab: list.slice(0, 3), light: list[3] === 50 ? 'D50' : 'D65' };
  }
  const [grid, reflectance] = [listAt(list[0], place), listAt(list[1], place)];
  const [first, step] = [numberAt(grid[0], place), numberAt(grid[1], place)];
  const nm = grid.length === 2 ? reflectance.map((_one, at) => first + at * step) : grid;
  return { spectrum: { nm, reflectance } };
}

interface ReadPart {
  readonly part: { readonly id: string };
  /** What it wears on each alternative; empty where it is alike on all. */
  readonly worn: readonly string[];
}

function partIn(
  value: unknown,
  at: number,
  refs: readonly string[],
  giveId: GiveId,
  count: number,
): ReadPart {
  const place = `parts › ${at + 1}`;
  const [name, cover, wears] = listAt(value, place);
  const covers = textAt(cover, place) || idFrom(textAt(name, place), 'part');
  const id = giveId(textAt(name, place), 'part');
  const base = { id, name, covers: covers.split(' '), absent: wears === null };
  const refAt = (one: unknown): string =>
    refs[numberAt(one, place)] ?? refuse(place, one, 'the place of a finish');
  if (wears === null) {
    return { part: { ...base, finish: refAt(0), painted: false } as ReadPart['part'], worn: [] };
  }
  if (Array.isArray(wears)) {
    if (wears.length !== count) refuse(place, wears, 'a finish for each letter');
    const worn = wears.map(refAt);
    return { part: { ...base, candidates: [...new Set(worn)] } as ReadPart['part'], worn };
  }
  const signed = numberAt(wears, place);
  const isPainted = signed >= 0;
  const finish = refAt(isPainted ? signed : -1 - signed);
  return { part: { ...base, finish, painted: isPainted } as ReadPart['part'], worn: [] };
}
