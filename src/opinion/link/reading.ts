/**
 * Which round stands in the columns of a link? Everything is read in order and held against the
 * schema of builds; what does not fit is refused, and `layout` refuses besides whatever would not be
 * written the same way again.
 *
 * In: the parsed text of a link. Out: a round. Throws `InputError` that says where.
 */
import { buildVersion, defaultWeights, refOf } from '../../build/build.ts';
import { buildFrom } from '../../build/read/document.ts';
import { idFrom, idGiver } from '../../ground/id.ts';
import { mostAsked, type Round, roundOf, roundRack } from '../round.ts';
import { filmOfCode, finishOfCode } from './codes.ts';
import { refuse } from './refuse.ts';
import { lightCodes, moreFields } from './words/first.ts';

const listAt = (value: unknown, place: string): readonly unknown[] =>
  Array.isArray(value) ? value : refuse(place, value, 'a list');
const listUpTo = (most: number, value: unknown, place: string): readonly unknown[] => {
  const list = listAt(value, place);
  return list.length <= most ? list : refuse(place, list, `at most ${most}`);
};
const textAt = (value: unknown, place: string): string =>
  typeof value === 'string' ? value : refuse(place, value, 'a text');
const numberAt = (value: unknown, place: string): number =>
  typeof value === 'number' ? value : refuse(place, value, 'a number');

/** A column read from its beginning. */
class Column {
  private readonly list: readonly unknown[];
  private readonly place: string;
  private at = 0;

  constructor(value: unknown, place: string) {
    this.list = listAt(value, place);
    this.place = place;
  }

  hasMore(): boolean {
    return this.at < this.list.length;
  }
  take(): unknown {
    return this.hasMore() ? this.list[this.at++] : refuse(this.place, undefined, 'more');
  }
  number(): number {
    return numberAt(this.take(), this.place);
  }
  text(): string {
    return textAt(this.take(), this.place);
  }
  private numbers(list: readonly unknown[]): readonly number[] {
    return list.map((one) => numberAt(one, this.place));
  }
  /** A colour as the schema has it. */
  colour(): unknown {
    const first = this.take();
    if (typeof first === 'string') return { srgb: `#${first}` };
    if (typeof first === 'number') {
      return { lab: [first, this.number(), this.number()], light: 'D65' };
    }
    const [grid, ...rest] = listAt(first, this.place);
    if (!Array.isArray(grid)) return { lab: this.numbers(rest), light: 'D50' };
    const reflectance = this.numbers(listAt(rest[0], this.place));
    const nm = grid.length === 2 ? bandsIn(this.numbers(grid), reflectance.length) : grid;
    return { spectrum: { nm: this.numbers(nm), reflectance } };
  }
}

const bandsIn = ([first = 0, step = 0]: readonly number[], count: number): readonly number[] =>
  Array.from({ length: count }, (_, at) => first + at * step);

/** Parts of a build at most, as its schema has it. */
const mostParts = 200;

/** The round in these fields. */
export function readRound(fields: readonly unknown[]): Round {
  const [name, story, car, scale, distanceMm, light, parts, wears, letters, asks, ...finishes] =
    fields;
  const embedded = finishesIn(finishes);
  const refs = embedded.map(refOf);
  const each = [...textAt(letters, 'letters')];
  if (!/^[A-Z]+$/.test(each.join('')) || each.length > mostAsked) {
    refuse('letters', letters, 'letters');
  }
  const read = partsIn(
    new Column(parts, 'parts'),
    listUpTo(mostParts, wears, 'wears'),
    refs,
    each.length,
  );
  const build = buildFrom(
    {
      format: 'testspoon-build',
      version: buildVersion,
      id: idFrom(textAt(name, 'name'), 'round'),
      name,
      ...(story !== 0 && { story: textAt(story, 'story') }),
      car: textAt(car, 'car'),
      scale: numberAt(scale, 'scale'),
      viewing: {
        distanceMm: numberAt(distanceMm, 'distance'),
        light: lightCodes[numberAt(light, 'light')] ?? refuse('light', light, 'a light'),
      },
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
  const asked = listUpTo(mostParts, asks, 'asks').map(
    (at) => build.parts[numberAt(at, 'asks')]?.id ?? refuse('asks', at, 'the place of a part'),
  );
  // Only what a round can be made of is one: nothing unworn, nothing asked that does not differ.
  return roundOf(build, { parts: asked, withStory: true });
}

type ReadFinish = { rack: string; id: string } & Record<string, unknown>;

function finishesIn([names, codes, looks, more]: readonly unknown[]) {
  const giveId = idGiver([]);
  const code = new Column(codes, 'codes');
  const look = new Column(looks, 'colours');
  const embedded = listUpTo(mostParts * mostAsked, names, 'finishes').map((name): ReadFinish => {
    const { how, ...words } = finishOfCode(code.number());
    return {
      rack: roundRack,
      id: giveId(textAt(name, 'finishes'), 'finish'),
      name,
      ...words,
      colour: look.colour(),
      gloss60: look.number(),
      undercoats: [],
      provenance: { how },
    };
  });
  addMore(embedded, new Column(more, 'more'));
  // Its fields are held against the schema with the whole build.
  return embedded as unknown as readonly Parameters<typeof refOf>[0][];
}

function addMore(embedded: readonly ReadFinish[], column: Column): void {
  while (column.hasMore()) {
    const at = column.number();
    const finish = embedded[at] ?? refuse('more', at, 'the place of a finish');
    const field = moreFields[column.number()];
    switch (field) {
      case 'deltaE':
        finish.provenance = { ...(finish.provenance as object), deltaE: column.number() };
        break;
      case 'sampleGloss60':
      case 'flopIndex':
        finish[field] = column.number();
        break;
      case 'face':
      case 'flop':
        finish[field] = column.colour();
        break;
      case 'undercoat': {
        const name = column.text();
        const words = filmOfCode(column.number());
        finish.undercoats = [{ name, ...words, colour: column.colour() }];
        break;
      }
      case 'clear': {
        const name = column.text();
        const { coats, chemistry } = filmOfCode(column.number());
        finish.clear = { name, chemistry, coats, tint: column.colour() };
        break;
      }
      default:
        refuse('more', field, 'a field of this version');
    }
  }
}

interface ReadPart {
  readonly part: { readonly id: string };
  /** What it wears on each alternative; empty where it is alike on all. */
  readonly worn: readonly string[];
}

function partsIn(
  names: Column,
  wears: readonly unknown[],
  refs: readonly string[],
  count: number,
): ReadPart[] {
  const giveId = idGiver([]);
  return wears.map((worn) => {
    const name = names.text();
    const covers = names.text() || idFrom(name, 'part');
    const base = {
      id: giveId(name, 'part'),
      name,
      covers: covers.split(' '),
      absent: worn === null,
    };
    return { ...partIn(base, worn, refs, count) };
  });
}

function partIn(base: { id: string }, worn: unknown, refs: readonly string[], count: number) {
  const refAt = (place: unknown): string =>
    refs[numberAt(place, 'wears')] ?? refuse('wears', place, 'the place of a finish');
  if (worn === null) return { part: { ...base, finish: refAt(0), painted: false }, worn: [] };
  if (Array.isArray(worn)) {
    if (worn.length !== count) refuse('wears', worn, 'a finish for each letter');
    const each = worn.map(refAt);
    return { part: { ...base, candidates: [...new Set(each)] }, worn: each };
  }
  const signed = numberAt(worn, 'wears');
  const painted = signed >= 0;
  return { part: { ...base, finish: refAt(painted ? signed : -1 - signed), painted }, worn: [] };
}
