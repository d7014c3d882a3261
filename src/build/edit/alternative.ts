/**
 * What can a builder do to the alternatives of a build? Add, copy, rename, reorder, delete. A build
 * in, a build out that `buildFrom` accepts. At most 100 alternatives, as the file format has it;
 * where there is no more room, nothing changes.
 */

import { freeId, freeName } from '../../ground/id.ts';
import { type Alternative, type Build, isOpen, usualFinish } from '../build.ts';
import { ideaName, isMade, madeName } from './naming.ts';
import { isAllIn, type Shared, sharedFinishes } from './shared.ts';

/** Alternatives a build may hold. */
export const mostAlternatives = 100;

/**
 * Adds an alternative beside the one it is like, wearing the same; without `like` at the end,
 * wearing what is settled and every open part's first candidate. Without a name it gets one of ours.
 */
export function addAlternative(build: Build, name?: string, like?: string): Build {
  if (build.alternatives.length >= mostAlternatives) return build;
  const at = build.alternatives.findIndex(({ id }) => id === like);
  const model = build.alternatives[at];
  const choices = Object.fromEntries(
    build.parts.filter(isOpen).map((part) => [part.id, usualFinish(part)]),
  );
  const names = build.alternatives.map((one) => one.name);
  const ids = build.alternatives.map(({ id }) => id);
  const called = freeName(name ?? ideaName(names.length, names), names);
  const added: Alternative = {
    id: freeId(called, ids, 'alternative'),
    name: called,
    choices: model === undefined ? choices : { ...choices, ...model.choices },
  };
  const place = at < 0 ? build.alternatives.length : at + 1;
  return { ...build, alternatives: build.alternatives.toSpliced(place, 0, added) };
}

/** Copies an alternative, note and all; `Copy of` what its builder has named. */
export function copyAlternative(build: Build, id: string): Build {
  const model = build.alternatives.find((one) => one.id === id);
  if (model === undefined) return build;
  const name = isMade(build, model) ? undefined : `Copy of ${model.name}`;
  const copied = addAlternative(build, name, id);
  const at = build.alternatives.indexOf(model) + 1;
  if (copied === build || model.note === undefined) return copied;
  const copy = { ...copied.alternatives[at]!, note: model.note };
  return { ...copied, alternatives: copied.alternatives.with(at, copy) };
}

/**
 * Adds an alternative for every candidate of an open part that none wears yet, like the first one
 * in all else, named after what it wears.
 */
export function alternativePerCandidate(build: Build, part: string): Build {
  const found = build.parts.find(({ id }) => id === part);
  if (found === undefined || !isOpen(found)) return build;
  const worn = new Set(build.alternatives.map(({ choices }) => choices[part]));
  return found.candidates
    .filter((ref) => !worn.has(ref))
    .reduce((now, ref) => withOneIn(now, { finish: ref, parts: [part] }), build);
}

/** Finishes that several open parts share and no alternative is all in yet, and those one is. */
export interface ToCompare {
  readonly missing: readonly Shared[];
  readonly there: readonly Shared[];
}

/**
 * The shared finishes that are to be compared next: those on most parts first, and only where there
 * are at least two. Undefined where nothing is shared, or an alternative is all in each already.
 */
export function toCompare(build: Build): ToCompare | undefined {
  for (const group of sharedFinishes(build)) {
    const isThere = (one: Shared): boolean =>
      build.alternatives.some(({ choices }) => isAllIn(choices, one));
    const missing = group.filter((one) => !isThere(one));
    if (missing.length > 0) return { missing, there: group.filter(isThere) };
  }
  return undefined;
}

/**
 * Adds an alternative all in each finish that is to be compared next, like the first one in all
 * else. A single one that nobody has named or changed yet becomes the first of them.
 */
export function alternativePerShared(build: Build): Build {
  const { missing, there } = toCompare(build) ?? { missing: [], there: [] };
  const [only] = build.alternatives;
  if (only === undefined || !isUntouched(build)) return missing.reduce(withOneIn, build);
  const [own, ...others] = [...there, ...missing];
  if (own === undefined) return build;
  return others.reduce(withOneIn, { ...build, alternatives: [allIn(build, only, own)] });
}

/** Whether there is but one alternative, as it came: our name, no note, every first candidate. */
function isUntouched(build: Build): boolean {
  const [only, ...others] = build.alternatives;
  if (only === undefined || others.length > 0) return false;
  const isPlain = build.parts.every(
    (part) => !isOpen(part) || part.absent || only.choices[part.id] === usualFinish(part),
  );
  return isPlain && only.note === undefined && isMade(build, only);
}

/** The alternative with a finish on some parts, and with a name of ours. */
function allIn(build: Build, one: Alternative, { finish, parts }: Shared): Alternative {
  const worn = Object.fromEntries(parts.map((part) => [part, finish]));
  const changed = { ...one, choices: { ...one.choices, ...worn } };
  return { ...changed, name: madeName(build, changed, parts.length === 1 ? parts[0] : undefined) };
}

/** One more at the end, like the first but for a finish on some parts. */
function withOneIn(build: Build, shared: Shared): Build {
  const added = addAlternative(build, undefined, build.alternatives[0]?.id);
  const fresh = added.alternatives.find((one) => !build.alternatives.includes(one));
  if (fresh === undefined) return build;
  const { name, choices } = allIn(added, fresh, shared);
  const ids = build.alternatives.map(({ id }) => id);
  const worn = { id: freeId(name, ids, 'alternative'), name, choices };
  return { ...build, alternatives: [...build.alternatives, worn] };
}

/** Gives an alternative another name. */
export const renameAlternative = (build: Build, id: string, name: string): Build => ({
  ...build,
  alternatives: build.alternatives.map((one) => (one.id === id ? { ...one, name } : one)),
});

/** Writes a note to an alternative; an empty one is taken away. */
export const noteAlternative = (build: Build, id: string, note: string): Build => ({
  ...build,
  alternatives: build.alternatives.map((one) => {
    if (one.id !== id) return one;
    const { note: _, ...rest } = one;
    return note.trim() === '' ? rest : { ...rest, note };
  }),
});

/** Moves an alternative to a place, counted from 0; the letters follow the order. */
export function moveAlternative(build: Build, id: string, to: number): Build {
  const at = build.alternatives.findIndex((one) => one.id === id);
  const place = Math.max(0, Math.min(build.alternatives.length - 1, to));
  if (at < 0 || at === place) return build;
  const rest = build.alternatives.toSpliced(at, 1);
  return { ...build, alternatives: rest.toSpliced(place, 0, build.alternatives[at]!) };
}

/** Takes an alternative out. */
export const removeAlternative = (build: Build, id: string): Build => ({
  ...build,
  alternatives: build.alternatives.filter((one) => one.id !== id),
});
