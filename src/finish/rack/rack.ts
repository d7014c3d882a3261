/**
 * Is this rack file usable, and if not, what is wrong with each finish? A rack is a named set of
 * finishes: what stands in the drawer, or what a shop could send.
 *
 * In: JSON text. Out: a rack, or an `InputError` that lists every fault: those the schema finds,
 * and those between fields (an id used twice, a spectrum whose lists differ, one bottle described
 * in two ways, face and flop on a paint without flake). At most 20,000 finishes, our judgement.
 */
import * as v from 'valibot';
import { reflectanceFromTable } from '../../colour/spectrum.ts';
import { InputError, type Problem, shown } from '../../ground/problem.ts';
import {
  type Bottle,
  bottlesOf,
  type Colour,
  type Finish,
  finishSchema,
  idSchema,
  longestNote,
  nameSchema,
} from '../finish.ts';
import { checkedAgainst, mostEntries, parseJson } from '../parse.ts';

export const rackVersion = 1;

export const rackSchema = v.strictObject({
  $schema: v.optional(v.pipe(v.string(), v.maxLength(300))),
  format: v.literal('testspoon-rack'),
  version: v.literal(rackVersion),
  id: idSchema,
  name: nameSchema,
  note: v.optional(v.pipe(v.string(), v.maxLength(longestNote))),
  finishes: v.pipe(v.array(finishSchema), v.maxLength(mostEntries)),
});
/** A named set of finishes. */
export type Rack = v.InferOutput<typeof rackSchema>;

/** The rack in a JSON text; throws `InputError` with every fault and its place. */
export function parseRack(text: string, source: string): Rack {
  const value = parseJson(text, source);
  refuseNewer(value, source);
  const rack = checkedAgainst(rackSchema, value, source);
  const problems = rackFaults(rack.finishes);
  if (problems.length > 0) throw new InputError(problems, source);
  return rack;
}

/** A rack as JSON text, one field a line, ready to be kept under version control. */
export const textOfRack = (rack: Rack): string => `${JSON.stringify(rack, null, 2)}\n`;

/** Faults between the finishes of one set, and inside each beyond what its schema says. */
export function rackFaults(finishes: readonly Finish[]): Problem[] {
  const faultsBeside = rackCheck();
  return finishes.flatMap((finish) => faultsBeside(finish, `finishes › ${finish.id}`));
}

/**
 * A check that takes one finish after another and tells what is wrong with it, alone and beside
 * those that passed before it.
 */
export function rackCheck(): (finish: Finish, place: string) => Problem[] {
  const ids = new Set<string>();
  const bottles = new Map<string, Bottle>();
  return (finish, place) => {
    const problems = finishFaults(finish, place);
    if (ids.has(finish.id)) problems.push(duplicate(finish, place));
    const own = bottlesOf(finish);
    for (const bottle of own) {
      const first = bottles.get(bottle.id) ?? bottle;
      if (!isSameBottle(first, bottle)) problems.push(bottleClash(first, bottle, place));
    }
    if (problems.length === 0) {
      ids.add(finish.id);
      for (const bottle of own) bottles.set(bottle.id, bottle);
    }
    return problems;
  };
}

/** Faults inside one finish that its schema cannot see. */
export function finishFaults(finish: Finish, place: string): Problem[] {
  const problems = coloursOf(finish).flatMap(([field, colour]) =>
    spectrumFaults(colour, `${place} › ${field}`),
  );
  const hasFlake = finish.effect === 'metallic' || finish.effect === 'pearl';
  for (const field of ['face', 'flop', 'flopIndex'] as const) {
    if (finish[field] === undefined || hasFlake) continue;
    problems.push({
      place: `${place} › ${field}`,
      found: `${field} on a finish of effect ${finish.effect}`,
      expected: `${field} on metallic and pearl only`,
      mend: 'Take it out, or change the effect.',
    });
  }
  return problems;
}

const duplicate = (finish: Finish, place: string): Problem => ({
  place,
  found: `the id ${shown(finish.id)} a second time`,
  expected: 'an id of its own for every finish',
  mend: `Give ${shown(finish.name)} another id.`,
});

const isSameBottle = (a: Bottle, b: Bottle): boolean =>
  a.name === b.name && a.onHand === b.onHand && a.leadDays === b.leadDays;

const bottleClash = (first: Bottle, second: Bottle, place: string): Problem => ({
  place: `${place} › bottle ${first.id}`,
  found: `${shown(second.name)}, ${stockOf(second)}`,
  expected: `${shown(first.name)}, ${stockOf(first)}, as told before`,
  mend: 'A bottle shared by several finishes is told the same way everywhere.',
});
const stockOf = ({ onHand, leadDays }: Bottle): string =>
  onHand ? 'on hand' : `${leadDays} days to come`;

const coloursOf = (finish: Finish): [field: string, colour: Colour][] =>
  [
    ['colour', finish.colour] as const,
    ['face', finish.face] as const,
    ['flop', finish.flop] as const,
    ['clear › tint', finish.clear?.tint] as const,
    ...finish.undercoats.map(
      (film, position) => [`undercoats › ${position + 1} › colour`, film.colour] as const,
    ),
  ].flatMap(([field, colour]) => (colour === undefined ? [] : [[field, colour]]));

function spectrumFaults(colour: Colour, place: string): Problem[] {
  if (!('spectrum' in colour)) return [];
  try {
    reflectanceFromTable(colour.spectrum.nm, colour.spectrum.reflectance);
    return [];
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.problems.map((problem) => ({
      ...problem,
      place: [place, problem.place].filter((step) => step !== '').join(' › '),
    }));
  }
}

/** A file of a later version is refused whole, so that nothing in it is lost by rewriting. */
function refuseNewer(value: unknown, source: string): void {
  const version = (value as { version?: unknown } | null)?.version;
  if (typeof version !== 'number' || version <= rackVersion) return;
  throw new InputError(
    [
      {
        place: 'version',
        found: shown(version),
        expected: `${rackVersion} at most`,
        mend: 'It was written by a newer Testspoon; the file was left as it is. Update, then open it.',
      },
    ],
    source,
  );
}
