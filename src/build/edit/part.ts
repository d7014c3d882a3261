/**
 * What can a builder do to a part of a build? Settle it, open it, leave it off the model, put a
 * finish on it. A build in, a build out that `buildFrom` accepts: alternatives follow the part, so
 * that nothing is left pointing nowhere. An unknown part or finish changes nothing, and so does what
 * a build file has no room for.
 */

import type { Alternative, Build, FinishRef, OpenPart, Part } from '../build.ts';
import { isOpen, refOf, usualFinish } from '../build.ts';

/** Candidates a part may have, as files have it. */
export const mostCandidates = 500;

const withPart = (build: Build, id: string, to: (part: Part) => Part): Build => ({
  ...build,
  parts: build.parts.map((part) => (part.id === id ? to(part) : part)),
});
/** A part of a build by its id. */
export const partIn = (build: Build, id: string): Part | undefined =>
  build.parts.find((part) => part.id === id);
/** Whether the build holds this finish. */
export const holdsFinish = (build: Build, ref: FinishRef): boolean =>
  build.finishes.some((finish) => refOf(finish) === ref);
const bare = ({ id, name, covers, absent }: Part) => ({ id, name, covers, absent });

/** The build with the choices of every alternative changed. */
export const withChoices = (
  build: Build,
  to: (choices: Alternative['choices'], alternative: Alternative) => Alternative['choices'],
): Build => ({
  ...build,
  alternatives: build.alternatives.map((one) => {
    const choices = to(one.choices, one);
    return choices === one.choices ? one : { ...one, choices };
  }),
});
/** Choices without those for some parts. */
export const without = (choices: Alternative['choices'], ids: readonly string[]) =>
  Object.fromEntries(Object.entries(choices).filter(([id]) => !ids.includes(id)));

/** Gives a part another name; its id stays, so rules and choices hold. */
export const renamePart = (build: Build, id: string, name: string): Build =>
  withPart(build, id, (part) => ({ ...part, name }));

/** Says that a part is not on this model, or is after all; the last one that is there stays. */
export function setAbsent(build: Build, id: string, absent: boolean): Build {
  const isLast = absent && build.parts.every((part) => part.absent || part.id === id);
  return isLast ? build : withPart(build, id, (part) => ({ ...part, absent }));
}

/**
 * Settles a part on a finish of the build, painted already or not; every alternative wears it from
 * then on. Without `ref` an open part settles on what the first alternative wears, and of a settled
 * one only `painted` changes.
 */
export function settlePart(build: Build, id: string, painted: boolean, ref?: FinishRef): Build {
  const part = partIn(build, id);
  if (part === undefined || (ref !== undefined && !holdsFinish(build, ref))) return build;
  if (!isOpen(part) && ref === undefined)
    return withPart(build, id, (one) => ({ ...one, painted }));
  const worn = build.alternatives[0]?.choices[id] ?? usualFinish(part);
  const settled = withPart(build, id, (one) => ({ ...bare(one), finish: ref ?? worn, painted }));
  return withChoices(settled, (choices) => without(choices, [id]));
}

/** The grey primer of a blank build: it stands for a finish that nobody has chosen yet. */
export const undecidedRef: FinishRef = 'first-shelf/primed';

/**
 * Gives a part a finish of the build: a settled part wears it everywhere, an open one may wear it.
 * On an open part it takes the place of a primer that only stood for a choice to come.
 */
export function giveFinish(build: Build, id: string, ref: FinishRef): Build {
  const part = partIn(build, id);
  if (part === undefined) return build;
  if (!isOpen(part)) return settlePart(build, id, part.painted, ref);
  const offered = setCandidate(build, id, ref, true);
  const [only, ...others] = part.candidates;
  const isUndecided = only === undecidedRef && others.length === 0 && ref !== only;
  return isUndecided ? setCandidate(offered, id, undecidedRef, false) : offered;
}

/** Opens a settled part: what it wears anywhere becomes its candidates, and each keeps what it wears. */
export function openPart(build: Build, id: string): Build {
  const part = partIn(build, id);
  if (part === undefined || isOpen(part)) return build;
  const named = build.alternatives.flatMap(({ choices }) => choices[id] ?? []);
  const candidates = [...new Set([part.finish, ...named])];
  const opened = withPart(build, id, (one) => ({ ...bare(one), candidates }));
  return withChoices(opened, (choices) => ({ ...choices, [id]: choices[id] ?? part.finish }));
}

/**
 * Ticks or unticks a candidate of an open part. Alternatives that wore one now unticked take the
 * first that is left; the last candidate stays.
 */
export function setCandidate(build: Build, id: string, ref: FinishRef, isTicked: boolean): Build {
  const part = partIn(build, id);
  if (part === undefined || !isOpen(part) || part.candidates.includes(ref) === isTicked) {
    return build;
  }
  if (isTicked && (part.candidates.length >= mostCandidates || !holdsFinish(build, ref))) {
    return build;
  }
  const candidates = isTicked
    ? [...part.candidates, ref]
    : part.candidates.filter((candidate) => candidate !== ref);
  const [first] = candidates;
  if (first === undefined) return build;
  const ticked = withPart(build, id, (one) => ({ ...one, candidates }) as OpenPart);
  return withChoices(ticked, (choices) =>
    choices[id] === ref && !isTicked ? { ...choices, [id]: first } : choices,
  );
}

/**
 * Puts a finish of the build on a part of one alternative. On an open part a finish that was no
 * candidate becomes one; on a settled part the alternative departs from what was settled.
 */
export function wearOn(build: Build, alternativeId: string, id: string, ref: FinishRef): Build {
  const part = partIn(build, id);
  if (part === undefined) return build;
  const allowing = isOpen(part) ? setCandidate(build, id, ref, true) : build;
  const worn = partIn(allowing, id)!;
  const mayWear = isOpen(worn) ? worn.candidates.includes(ref) : holdsFinish(build, ref);
  if (!mayWear) return build;
  const isUsual = !isOpen(part) && part.finish === ref;
  return withChoices(allowing, (choices, { id: own }) => {
    if (own !== alternativeId) return choices;
    return isUsual ? without(choices, [id]) : { ...choices, [id]: ref };
  });
}

/**
 * Puts a finish of the build on a part of every alternative. A settled part is settled on it from
 * then on; a painted one stays what it is painted in, and every alternative departs from that.
 */
export function wearOnAll(build: Build, id: string, ref: FinishRef): Build {
  const part = partIn(build, id);
  if (part === undefined) return build;
  if (!isOpen(part) && !part.painted) return settlePart(build, id, false, ref);
  return build.alternatives.reduce((now, one) => wearOn(now, one.id, id, ref), build);
}
