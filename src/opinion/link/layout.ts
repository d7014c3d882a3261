/**
 * How is a round written down before it is packed? As one JSON list without field names, in columns,
 * because like packs well beside like: what can be worked out of names is left out, finishes are
 * pointed at by place, and what a finish has beyond the usual stands at the end.
 *
 * In and out: a round and its text. One round has one text, and one text is at most one round:
 * reading throws `InputError` for anything that `textFrom` would not have written, whatever it
 * decodes to. Order and codes are frozen with version 1:
 *
 *     [name, story or 0, car, scale, distance mm, code of the light,
 *      [name, covers, …] of parts, [wears…], letters, [place of an asked part…],
 *      [name…] of finishes, [code…], [colour, gloss60 GU, …], [more…]]
 *     covers  ids of car parts with spaces between, or "" where the part's name gives the id
 *     wears   place of a finish, −1 − place where it is not painted yet, a list of places by letter,
 *             or null where the part is not on the model
 *     code    effect, origin, chemistry and coats as one number
 *     colour  L, a, b under D65; 50, L, a, b within a list under D50; "rrggbb"; or
 *             [[nm…], [reflectance…]], where evenly spaced nm are [first, step]
 *     more    place of the finish, field, then what the field holds
 */
import { type Build, isOpen, type Part, refOf } from '../../build/build.ts';
import type { Colour, Finish } from '../../finish/finish.ts';
import { idFrom } from '../../ground/id.ts';
import { lettersIn, type Round } from '../round.ts';
import { codeOfFilm, codeOfFinish } from './codes.ts';
import { readRound } from './reading.ts';
import { refuse } from './refuse.ts';
import { lightCodes, moreFields } from './words/first.ts';

type Json = null | string | number | readonly Json[];

/** The text of a round. */
export function textFrom({ build, asks }: Round): string {
  const places = new Map(build.finishes.map((finish, at) => [refOf(finish), at]));
  return JSON.stringify([
    build.name,
    build.story ?? 0,
    build.car,
    build.scale,
    build.viewing.distanceMm,
    lightCodes.indexOf(build.viewing.light),
    build.parts.flatMap((part) => [part.name, coversOf(part)]),
    build.parts.map((part) => wearsOf(part, build, places)),
    lettersIn({ build, asks }).join(''),
    asks.map((id) => build.parts.findIndex((part) => part.id === id)),
    build.finishes.map(({ name }) => name),
    build.finishes.map(codeOfFinish),
    build.finishes.flatMap(({ colour, gloss60 }) => [...colourAsJson(colour), gloss60]),
    build.finishes.flatMap((finish, at) => moreOf(finish, at)),
  ] satisfies Json);
}

/** The round in a text. */
export function roundIn(text: string): Round {
  const round = readRound(parsed(text));
  // Whatever else the text may have held, or held otherwise, is not what a builder has sent.
  if (textFrom(round) !== text) refuse('', text, 'a round as a builder’s page writes it');
  return round;
}

function parsed(text: string): readonly unknown[] {
  try {
    const value: unknown = JSON.parse(text);
    if (Array.isArray(value)) return value;
  } catch {
    // Told below, as any other text that is no round.
  }
  return refuse('', text, 'a round');
}

function coversOf({ name, covers }: Part): string {
  const written = covers.join(' ');
  return written === idFrom(name, 'part') ? '' : written;
}

function wearsOf(part: Part, build: Build, places: ReadonlyMap<string, number>): Json {
  const placeOf = (ref: string | undefined): number => places.get(ref ?? '') ?? -1;
  if (part.absent) return null;
  if (isOpen(part)) return build.alternatives.map(({ choices }) => placeOf(choices[part.id]));
  const at = placeOf(part.finish);
  return part.painted ? at : -1 - at;
}

function colourAsJson(colour: Colour): readonly Json[] {
  if ('srgb' in colour) return [colour.srgb.slice(1)];
  if ('lab' in colour) return colour.light === 'D50' ? [[50, ...colour.lab]] : colour.lab;
  const { nm, reflectance } = colour.spectrum;
  const [first = 0, second = 0] = nm;
  const step = second - first;
  const isEven = nm.every((one, at) => one === first + at * step);
  return [[isEven ? [first, step] : nm, reflectance]];
}

/** What a finish has beyond the usual, each with its place and field before it. */
function moreOf(finish: Finish, at: number): readonly Json[] {
  const [film] = finish.undercoats;
  const { face, flop, clear } = finish;
  const tint = clear?.tint;
  const held: { readonly [Field in (typeof moreFields)[number]]: readonly Json[] } = {
    deltaE: numberAsJson(finish.provenance.deltaE),
    sampleGloss60: numberAsJson(finish.sampleGloss60),
    face: face === undefined ? [] : colourAsJson(face),
    flop: flop === undefined ? [] : colourAsJson(flop),
    flopIndex: numberAsJson(finish.flopIndex),
    undercoat:
      film === undefined ? [] : [film.name, codeOfFilm(film), ...colourAsJson(film.colour)],
    clear:
      clear === undefined || tint === undefined
        ? []
        : [clear.name, codeOfFilm(clear), ...colourAsJson(tint)],
  };
  return moreFields.flatMap((field, code) =>
    held[field].length === 0 ? [] : [at, code, ...held[field]],
  );
}

const numberAsJson = (value: number | undefined): readonly Json[] =>
  value === undefined ? [] : [value];
