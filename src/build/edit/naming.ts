/**
 * What is an alternative called that its builder has not named? By what it wears, as long as that is
 * true: the finish it is all in, or the one part it was made for; else first, second, third idea.
 *
 * Nothing is stored for it: a name is ours where it is just what we would have said. So a name that
 * a builder typed stays, and no two alternatives are given one name.
 */
import { cutText } from '../../ground/id.ts';
import {
  type Alternative,
  type Build,
  type FinishRef,
  finishesByRef,
  isOpen,
  type OpenPart,
} from '../build.ts';
import { fittedBuild } from '../fitted.ts';
import { isAllIn, sharedFinishes } from './shared.ts';

const ordinals = 'First Second Third Fourth Fifth Sixth Seventh Eighth Ninth Tenth'.split(' ');
const saysNothing = new RegExp(`^(?:(?:${ordinals.join('|')}) idea|Idea \\d+)$`);

const ideaAt = (at: number): string =>
  ordinals[at] === undefined ? `Idea ${at + 1}` : `${ordinals[at]} idea`;

/** A name that says nothing for the alternative at a place, counted from 0, and is not taken. */
export function ideaName(at: number, taken: Iterable<string>): string {
  const used = new Set(taken);
  let free = at;
  while (used.has(ideaAt(free))) free++;
  return ideaAt(free);
}

/** A name of ours for an alternative: by what it wears, or by the part that it is made for. */
export function madeName(build: Build, alternative: Alternative, part?: string): string {
  const at = build.alternatives.findIndex(({ id }) => id === alternative.id);
  const place = at < 0 ? build.alternatives.length : at;
  const taken = new Set(
    build.alternatives.flatMap(({ id, name }) => (id === alternative.id ? [] : [name])),
  );
  const open = build.parts.find((one): one is OpenPart => one.id === part && isOpen(one));
  const worn = wornName(build, alternative);
  const ofPart = open === undefined ? undefined : partName(build, alternative, open);
  const isWhole = open === undefined || worn === nameOf(build, alternative.choices[open.id]);
  const told = isWhole ? [worn, ofPart] : [ofPart, worn];
  const free = told.find((name) => name !== undefined && !taken.has(name));
  return free ?? ideaName(place, taken);
}

/** Whether the name of an alternative is one of ours: it says nothing, or just what it wears. */
export const isMade = (build: Build, alternative: Alternative): boolean =>
  saysNothing.test(alternative.name) ||
  alternative.name === wornName(build, alternative) ||
  partNamed(build, alternative) !== undefined;

/**
 * The build after an edit, with names of ours that follow what is worn now. `before` is the build as
 * it was; alternatives renamed by the edit itself, and new ones, keep the names they come with.
 */
export function withNamesFollowing(before: Build, after: Build): Build {
  const isSame =
    before.alternatives === after.alternatives &&
    before.parts === after.parts &&
    before.rules === after.rules &&
    before.finishes === after.finishes;
  if (isSame) return after;
  const old = new Map(before.alternatives.map((one) => [one.id, one]));
  let build = after;
  for (const [at, one] of after.alternatives.entries()) {
    const was = old.get(one.id);
    if (was === undefined || was.name !== one.name || !isMade(before, was)) continue;
    const name = followed(before, was, build, one);
    if (name === one.name) continue;
    build = { ...build, alternatives: build.alternatives.with(at, { ...one, name }) };
  }
  return build;
}

function followed(before: Build, was: Alternative, build: Build, one: Alternative): string {
  const worn = wornName(build, one);
  const hasNews = worn !== undefined && worn !== wornName(before, was);
  const part = partNamed(before, was);
  if (hasNews || part !== undefined) {
    const isStill = part !== undefined && one.choices[part] === was.choices[part];
    return madeName(build, one, isStill ? part : undefined);
  }
  return saysNothing.test(one.name) || one.name === worn ? one.name : madeName(build, one);
}

/** The finish that every part with a choice wears, or each part that may; undefined where none is. */
function wornName(build: Build, { choices }: Alternative): string | undefined {
  const undecided = fittedBuild(build).parts.filter(
    (part) => isOpen(part) && part.candidates.length > 1,
  );
  const worn = new Set(undecided.map(({ id }) => choices[id]));
  const refs =
    worn.size === 1
      ? [...worn]
      : sharedFinishes(build).flatMap((group) =>
          group.filter((shared) => isAllIn(choices, shared)).map(({ finish }) => finish),
        );
  const names = refs.flatMap((ref) => nameOf(build, ref) ?? []);
  // More than two would say less than the car itself.
  return names.length === 0 || names.length > 2 ? undefined : cutText(names.join(' and '));
}

/** `Copper mirrors`; undefined where the part wears nothing. */
function partName(build: Build, { choices }: Alternative, part: OpenPart): string | undefined {
  const finish = nameOf(build, choices[part.id]);
  return finish && cutText(`${finish} ${part.name.toLowerCase()}`);
}

const known = new WeakMap<Build['finishes'], ReadonlyMap<FinishRef, { readonly name: string }>>();

function nameOf(build: Build, ref: FinishRef | undefined): string | undefined {
  const finishes = known.get(build.finishes) ?? finishesByRef(build);
  known.set(build.finishes, finishes);
  return finishes.get(ref ?? '')?.name;
}

/** The part that an alternative is named after, while it wears what its name says. */
const partNamed = (build: Build, alternative: Alternative): string | undefined =>
  build.parts.find(
    (part): part is OpenPart =>
      isOpen(part) && partName(build, alternative, part) === alternative.name,
  )?.id;
