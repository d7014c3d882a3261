/**
 * What can a builder do to the alternatives of a build? Add, copy, rename, reorder, delete. A build
 * in, a build out that `buildFrom` accepts. At most 100 alternatives, as the file format has it;
 * where there is no more room, nothing changes.
 */

import { freeId, freeName } from '../../ground/id.ts';
import { type Alternative, type Build, type FinishRef, isOpen, usualFinish } from '../build.ts';

/** Alternatives a build may hold. */
export const mostAlternatives = 100;

/**
 * Adds an alternative beside the one it is like, wearing the same; without `like` at the end,
 * wearing what is settled and every open part's first candidate.
 */
export function addAlternative(build: Build, name: string, like?: string): Build {
  if (build.alternatives.length >= mostAlternatives) return build;
  const at = build.alternatives.findIndex(({ id }) => id === like);
  const model = build.alternatives[at];
  const choices = Object.fromEntries(
    build.parts.filter(isOpen).map((part) => [part.id, usualFinish(part)]),
  );
  const names = build.alternatives.map((one) => one.name);
  const ids = build.alternatives.map(({ id }) => id);
  const added: Alternative = {
    id: freeId(name, ids, 'alternative'),
    name: freeName(name, names),
    choices: model === undefined ? choices : { ...choices, ...model.choices },
  };
  const place = at < 0 ? build.alternatives.length : at + 1;
  return { ...build, alternatives: build.alternatives.toSpliced(place, 0, added) };
}

/** Copies an alternative, note and all. */
export function copyAlternative(build: Build, id: string): Build {
  const model = build.alternatives.find((one) => one.id === id);
  if (model === undefined) return build;
  const copied = addAlternative(build, `Copy of ${model.name}`, id);
  const at = build.alternatives.indexOf(model) + 1;
  if (copied === build || model.note === undefined) return copied;
  const copy = { ...copied.alternatives[at]!, note: model.note };
  return { ...copied, alternatives: copied.alternatives.with(at, copy) };
}

/**
 * Adds an alternative for every candidate of an open part that none wears yet, like the first one
 * in all else. `nameOf` names it after its candidate.
 */
export function alternativePerCandidate(
  build: Build,
  part: string,
  nameOf: (ref: FinishRef) => string,
): Build {
  const found = build.parts.find(({ id }) => id === part);
  if (found === undefined || !isOpen(found)) return build;
  const worn = new Set(build.alternatives.map(({ choices }) => choices[part]));
  const model = build.alternatives[0]?.id;
  return found.candidates
    .filter((ref) => !worn.has(ref))
    .reduce((now, ref) => {
      const added = addAlternative(now, nameOf(ref), model);
      const fresh = added.alternatives.find((one) => !now.alternatives.includes(one));
      if (fresh === undefined) return now;
      const choices = { ...fresh.choices, [part]: ref };
      const alternatives = added.alternatives.map((one) =>
        one === fresh ? { ...one, choices } : one,
      );
      return moveAlternative({ ...added, alternatives }, fresh.id, alternatives.length - 1);
    }, build);
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
