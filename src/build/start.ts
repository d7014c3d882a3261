/**
 * What does a new build begin with? A sensible first document for any car with a sight table: its
 * painted parts grouped as a builder would spray them and a handful of plain finishes. Either with
 * one open part and three alternatives to compare at once, or with nothing decided: what a builder
 * chooses is primed, what kits give is plain. Everything in it is meant to be replaced.
 *
 * Groups follow common practice at the bench (one finish per trimming job); a car part that no
 * group knows becomes a part of its own.
 */
import type { SightPart, SightTable } from '../car/table.ts';
import { idFrom } from '../ground/id.ts';
import { type Build, buildVersion, isOpen } from './build.ts';
import { addAlternative } from './edit/alternative.ts';
import { ideaName } from './edit/naming.ts';
import { undecidedRef } from './edit/part.ts';
import { buildFrom } from './read/document.ts';

/** What the builder says of a new build. */
export interface Beginning {
  /** Car id, the one its sight table is for. */
  readonly car: string;
  readonly name: string;
  /** 24 for 1:24. */
  readonly scale: number;
}

const rack = 'first-shelf';
const ref = (id: string): string => `${rack}/${id}`;

/** Builder's part, the car parts it gathers, the finish it begins with. */
const groups: readonly (readonly [name: string, covers: readonly string[], finish: string])[] = [
  ['Body', ['body'], 'deep-green'],
  ['Stripes', ['stripe-left', 'stripe-right'], 'chalk'],
  ['Mirrors', ['mirrors'], 'deep-green'],
  ['Engine cover', ['engine-cover'], 'deep-green'],
  [
    'Sills and trim',
    [
      ...['sills', 'splitter', 'diffuser', 'side-vents', 'grille'],
      ...['windscreen-frame', 'mirror-stalks', 'wipers'],
    ],
    'satin-black',
  ],
  ['Seats', ['seat-bolsters'], 'saddle-hide'],
  ['Seat inserts', ['seat-inserts'], 'saddle-hide'],
  ['Seat piping', ['seat-piping'], 'chalk'],
  ['Belts', ['belts'], 'grey-ribbon'],
  ['Carpet', ['carpet'], 'dark-flock'],
  ['Tub', ['tub'], 'satin-black'],
  ['Dashboard', ['dashboard'], 'deep-green'],
  ['Dash top and steering wheel', ['dash-top', 'steering-wheel'], 'satin-black'],
  ['Hoops, lever, pedals and buckles', ['roll-hoops', 'gear-lever', 'pedals', 'buckles'], 'steel'],
  ['Wheels', ['wheel-spokes'], 'silver'],
  ['Rims, barrels and caps', ['wheel-rims', 'wheel-barrels', 'wheel-caps'], 'silver'],
  ['Calipers', ['calipers'], 'satin-black'],
  ['Caliper lettering', ['caliper-lettering'], 'chalk'],
  ['Badges', ['badges'], 'chalk'],
  [
    'Badge rims, handles, fuel cap and exhausts',
    ['badge-rims', 'door-handles', 'fuel-cap', 'exhausts'],
    'steel',
  ],
];

const openFirst = ['stripes', 'body'];
const alternatives = [
  ['chalk', 'Chalk'],
  ['silver', 'Silver'],
  ['satin-black', 'Satin black'],
] as const;

const guess = { how: 'guess' } as const;
const onHand = (id: string, name: string) => ({ id, name, onHand: true });
const surfacer = {
  name: 'Grey surfacer',
  role: 'primer',
  effect: 'solid',
  colour: { lab: [62, 0, 0] },
  chemistry: 'lacquer',
  bottle: onHand('grey-surfacer', 'Grey surfacer'),
};
const gloss = {
  name: 'Gloss clear',
  chemistry: 'lacquer',
  bottle: onHand('gloss-clear', 'Gloss clear'),
};

/** A painted finish of the first shelf; the bottle carries the finish's own id. */
const paint = (id: string, name: string, lab: number[], gloss60: number, more = {}) => ({
  rack,
  id,
  name,
  effect: 'solid',
  colour: { lab },
  gloss60,
  coats: 2,
  chemistry: 'lacquer',
  undercoats: [surfacer],
  provenance: guess,
  bottle: onHand(id, name),
  ...more,
});
/** A material: no films, no drying. */
const material = (id: string, name: string, effect: string, lab: number[], gloss60: number) => ({
  rack,
  id,
  name,
  effect,
  colour: { lab },
  gloss60,
  provenance: guess,
});

const primed = paint('primed', 'Grey primer', [62, 0, 0], 6, {
  undercoats: [],
  bottle: surfacer.bottle,
});

const firstShelf = [
  paint('deep-green', 'Deep green', [29, -20, 8], 88, { clear: gloss }),
  paint('chalk', 'Chalk', [90, 0, 6], 88, { clear: gloss }),
  paint('silver', 'Silver', [76, 0, 0], 86, { effect: 'metallic', flopIndex: 8, clear: gloss }),
  paint('satin-black', 'Satin black', [17, 0, 0], 25),
  paint('saddle-hide', 'Saddle hide', [46, 20, 32], 20, { effect: 'leather' }),
  material('grey-ribbon', 'Grey ribbon', 'ribbon', [45, 0, 0], 3),
  material('dark-flock', 'Dark flock', 'flock', [18, 0, 0], 1),
  material('steel', 'Bare steel', 'bare-metal', [76, 0, 1], 80),
];

/**
 * A first build for the car of `sight`. Throws `InputError` where the name or scale is unusable
 * (name 1–120 characters, scale 1–200).
 */
export function startingBuild({ car, name, scale }: Beginning, sight: SightTable): Build {
  const parts = firstParts(sight);
  const open =
    openFirst.map((id) => parts.find((part) => part.id === id)).find(Boolean) ?? parts[0];
  const candidates = alternatives.map(([finish]) => ref(finish));
  return buildFrom({
    format: 'testspoon-build',
    version: buildVersion,
    id: idFrom(name, 'build'),
    name,
    car,
    scale,
    viewing: { distanceMm: 400, light: 'D65' },
    finishes: firstShelf,
    parts: parts.map(({ finish, ...part }) =>
      part.id === open?.id ? { ...part, candidates } : { ...part, finish },
    ),
    alternatives: alternatives.map(([finish, label]) => ({
      id: finish,
      name: `${label} ${open?.name.toLowerCase() ?? ''}`.trim(),
      choices: open === undefined ? {} : { [open.id]: ref(finish) },
    })),
  });
}

/**
 * A first build with nothing decided: every part settled on something plain, what a builder chooses
 * in grey primer, and one alternative, so that there is a car to look at. Throws like `startingBuild`.
 */
export function blankBuild({ car, name, scale }: Beginning, sight: SightTable): Build {
  const undecided = new Set([ref('deep-green'), ref('chalk'), ref('saddle-hide')]);
  return buildFrom({
    format: 'testspoon-build',
    version: buildVersion,
    id: idFrom(name, 'build'),
    name,
    car,
    scale,
    viewing: { distanceMm: 400, light: 'D65' },
    finishes: [primed, ...firstShelf],
    parts: firstParts(sight).map((part) => ({
      ...part,
      finish: undecided.has(part.finish) ? undecidedRef : part.finish,
    })),
    alternatives: [{ id: 'first-idea', name: ideaName(0, []), choices: {} }],
  });
}

/**
 * A new build in the shape of another: its car, parts, candidates, rules and finishes, with nothing
 * painted, no story and no date, and one alternative that wears what is settled and every first
 * candidate. Throws like `startingBuild`.
 */
export function sameShape(like: Build, { name, scale }: Omit<Beginning, 'car'>): Build {
  const { story: _, wantedBy: __, ...rest } = like;
  const shape: Build = {
    ...rest,
    id: idFrom(name, 'build'),
    name,
    scale,
    parts: like.parts.map((part) => (isOpen(part) ? part : { ...part, painted: false })),
    alternatives: [],
  };
  return buildFrom(addAlternative(shape));
}

function firstParts(sight: SightTable): FirstPart[] {
  const painted = sight.parts.filter(({ role }) => role === 'feature' || role === 'ground');
  const gathering = gathered(painted);
  return [...gathering, ...ungathered(painted, gathering)];
}

interface FirstPart {
  readonly id: string;
  readonly name: string;
  readonly covers: readonly string[];
  readonly finish: string;
}

/** The groups of which this car has at least one part. */
function gathered(painted: readonly SightPart[]): FirstPart[] {
  const present = new Set(painted.map(({ id }) => id));
  return groups.flatMap(([name, wanted, finish]) => {
    const covers = wanted.filter((id) => present.has(id));
    return covers.length === 0
      ? []
      : [{ id: idFrom(name, 'build'), name, covers, finish: ref(finish) }];
  });
}

/** Car parts that no group knows, each a part of its own. */
function ungathered(painted: readonly SightPart[], others: readonly FirstPart[]): FirstPart[] {
  const taken = new Set(others.map(({ id }) => id));
  const known = new Set(groups.flatMap(([, covers]) => covers));
  return painted
    .filter(({ id }) => !known.has(id))
    .map(({ id, name, role, group }) => ({
      id: taken.has(id) ? `${id}-alone` : id,
      name,
      covers: [id],
      finish: ref(role === 'feature' && group === 'skin' ? 'deep-green' : 'satin-black'),
    }));
}
