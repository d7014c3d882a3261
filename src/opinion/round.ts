/**
 * What are viewers asked? A round: the alternatives as everyone sees them, and the parts that are
 * asked about one by one. It holds what is needed to see and answer and nothing else, so that it
 * fits in a link: no stock, no notes, no rules, no names of alternatives that could sway.
 *
 * In: a build and what its builder asks. Out: a round in one form only, so that the same question
 * gives the same link, and the round of a round's build is that round again.
 */
import {
  type Alternative,
  assignmentOf,
  type Build,
  buildVersion,
  defaultWeights,
  type EmbeddedFinish,
  finishesByRef,
  isOpen,
  letterOf,
  type Part,
  refOf,
} from '../build/build.ts';
import { withoutHidden } from '../finish/parse.ts';
import { idFrom, idGiver } from '../ground/id.ts';
import { hundredths, nameIn, seenOf } from './seen.ts';

/** Alternatives one round can ask about; each has one letter. */
export const mostAsked = 26;

/** One question to viewers. */
export interface Round {
  /**
   * What is seen: parts on the model and absent ones, only finishes that are worn, alternatives
   * whose id and name are their letters, which are those of the builder's page.
   */
  readonly build: Build;
  /** Ids of parts of `build` that are asked about one by one, in the order of its parts. */
  readonly asks: readonly string[];
}

/** What a builder may leave out or in. */
export interface Asking {
  /** Ids of the alternatives asked about; all where absent. */
  readonly alternatives?: readonly string[];
  /** Ids of parts asked about one by one; none where absent. Parts that do not differ are left out. */
  readonly parts?: readonly string[];
  /** Whether the story of the build goes along. */
  readonly withStory?: boolean;
  /** False for spectra told as Lab, which is as they look by daylight. */
  readonly withSpectra?: boolean;
  /** False for finishes named by their effect only. */
  readonly withFinishNames?: boolean;
}

/** Rack that the finishes of a round come from. */
export const roundRack = 'from-a-link';

/** Letters of the alternatives of a round, in order. */
export const lettersIn = ({ build }: Round): readonly string[] =>
  build.alternatives.map(({ name }) => name);

/** Ids of parts, in order, that do not wear the same on all these alternatives. */
export function differingParts(build: Build): readonly string[] {
  const assignments = build.alternatives.map((one) => assignmentOf(build, one));
  return build.parts
    .filter(({ id, absent }) => !absent && new Set(assignments.map((one) => one.get(id))).size > 1)
    .map(({ id }) => id);
}

/** The round that asks about a build. Alternatives beyond the most that can be asked are left out. */
export function roundOf(build: Build, asking: Asking = {}): Round {
  const asked = lettered(build, asking.alternatives);
  const worn = wornIn(
    build,
    asked.map(({ alternative }) => alternative),
    asking,
  );
  const finishes = [...worn.finishes.values()];
  const giveId = idGiver([]);
  const partIds = new Map(build.parts.map(({ id, name }) => [id, giveId(nameIn(name), 'part')]));
  const parts = build.parts.map((part) => partIn(part, partIds.get(part.id)!, worn));
  const shown: Build = {
    format: 'testspoon-build',
    version: buildVersion,
    id: idFrom(nameIn(build.name), 'round'),
    name: nameIn(build.name),
    ...(asking.withStory && build.story !== undefined && { story: withoutHidden(build.story) }),
    car: build.car,
    scale: hundredths(build.scale),
    viewing: { ...build.viewing, distanceMm: hundredths(build.viewing.distanceMm) },
    weights: defaultWeights,
    tonal: false,
    mustRead: [],
    finishes,
    parts,
    rules: [],
    alternatives: asked.map(({ letter }, at) => ({
      id: letter.toLowerCase(),
      name: letter,
      choices: choicesIn(at, partIds, worn),
    })),
  };
  const differing = new Set(parts.filter(isOpen).map(({ id }) => id));
  const wanted = new Set((asking.parts ?? []).map((id) => partIds.get(id)));
  return {
    build: shown,
    asks: parts.map(({ id }) => id).filter((id) => wanted.has(id) && differing.has(id)),
  };
}

/**
 * The alternatives asked about, each with one letter. A round's own keep theirs; those of a bench
 * have those of their places, or where one of them would have two letters, of their order.
 */
function lettered({ finishes, alternatives }: Build, ids: Asking['alternatives']) {
  const isRound =
    finishes.every(({ rack }) => rack === roundRack) &&
    alternatives.every(({ id, name }) => /^[A-Z]$/.test(name) && id === name.toLowerCase());
  const asked = alternatives
    .map((alternative, at) => ({
      alternative,
      letter: isRound ? alternative.name : letterOf(at),
    }))
    .filter(({ alternative }) => ids?.includes(alternative.id) ?? true)
    .slice(0, mostAsked);
  const isShort = asked.every(({ letter }) => letter.length === 1);
  return isShort ? asked : asked.map((one, at) => ({ ...one, letter: letterOf(at) }));
}

/** What is worn on the alternatives asked about. */
interface Worn {
  /** Finishes as viewers get them, by their reference in the builder's build. */
  readonly finishes: ReadonlyMap<string, EmbeddedFinish>;
  /** References worn by each part, without repeats, in the order of the alternatives. */
  readonly byPart: ReadonlyMap<string, readonly string[]>;
  /** What each alternative wears, by part id of the builder's build. */
  readonly assignments: readonly ReadonlyMap<string, string>[];
}

function wornIn(build: Build, alternatives: readonly Alternative[], asking: Asking): Worn {
  const known = finishesByRef(build);
  // Of no alternative at all, parts wear what they usually do.
  const shown = alternatives.length > 0 ? alternatives : [{ id: 'a', name: 'A', choices: {} }];
  const assignments = shown.map((one) => assignmentOf(build, one));
  const byPart = new Map<string, readonly string[]>();
  const finishes = new Map<string, EmbeddedFinish>();
  const giveId = idGiver([]);
  for (const part of build.parts) {
    if (part.absent) continue;
    const refs = [...new Set(assignments.map((one) => one.get(part.id)!))];
    byPart.set(part.id, refs);
    for (const ref of refs) {
      const finish = known.get(ref);
      if (finish === undefined || finishes.has(ref)) continue;
      const { rack: _rack, ...own } = finish;
      const seen = seenOf(own, build.viewing.light, asking);
      finishes.set(ref, { rack: roundRack, ...seen, id: giveId(seen.name, 'finish') });
    }
  }
  return { finishes, byPart, assignments };
}

function partIn(part: Part, id: string, { finishes, byPart }: Worn): Part {
  const { covers } = part;
  const name = nameIn(part.name);
  const refs = (byPart.get(part.id) ?? []).map((ref) => refOf(finishes.get(ref)!));
  const [first] = refs;
  // An absent part wears nothing that is seen; its form asks for a finish all the same.
  const finish = first ?? refOf([...finishes.values()][0]!);
  const base = { id, name, covers: [...covers], absent: part.absent };
  return refs.length > 1
    ? { ...base, candidates: refs }
    : { ...base, finish, painted: !part.absent && 'painted' in part && part.painted };
}

function choicesIn(
  at: number,
  partIds: ReadonlyMap<string, string>,
  { finishes, byPart, assignments }: Worn,
): Record<string, string> {
  const assignment = assignments[at]!;
  return Object.fromEntries(
    [...byPart]
      .filter(([, refs]) => refs.length > 1)
      .map(([part]) => [partIds.get(part)!, refOf(finishes.get(assignment.get(part)!)!)]),
  );
}
