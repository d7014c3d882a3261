/**
 * What can a builder do to the parts of a build? Settle them, open them, leave them off the model,
 * spray two in one go or one by one. A build in, a build out that `buildFrom` accepts: alternatives
 * and rules follow the parts, so that nothing is left pointing nowhere. An unknown part changes
 * nothing, and so does what a build file has no room for.
 */

import { freeId, freeName } from '../../ground/id.ts';
import type { Alternative, Build, FinishRef, OpenPart, Part, Rule } from '../build.ts';
import { isOpen, usualFinish } from '../build.ts';

/** Parts a build may hold, car parts that one may cover and candidates it may have, as files have it. */
const mostParts = 200;
const mostCovered = 40;
const mostCandidates = 500;

const withPart = (build: Build, id: string, to: (part: Part) => Part): Build => ({
  ...build,
  parts: build.parts.map((part) => (part.id === id ? to(part) : part)),
});
const partIn = (build: Build, id: string): Part | undefined =>
  build.parts.find((part) => part.id === id);
const bare = ({ id, name, covers, absent }: Part) => ({ id, name, covers, absent });

const withChoices = (
  build: Build,
  to: (choices: Alternative['choices'], alternative: Alternative) => Alternative['choices'],
): Build => ({
  ...build,
  alternatives: build.alternatives.map((one) => ({ ...one, choices: to(one.choices, one) })),
});
const without = (choices: Alternative['choices'], ids: readonly string[]) =>
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
  if (part === undefined) return build;
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
  if (isTicked && part.candidates.length >= mostCandidates) return build;
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
 * Gathers parts into one that is sprayed in one go. It keeps id, standing and place of the first
 * named and covers what all covered; rules on the others speak of it from then on.
 */
export function joinParts(build: Build, ids: readonly string[], name?: string): Build {
  const members = [...new Set(ids)].flatMap((id) => partIn(build, id) ?? []);
  const [first, ...others] = members;
  if (first === undefined || others.length === 0) return build;
  const gone = others.map(({ id }) => id);
  const standing = (id: string): string => (gone.includes(id) ? first.id : id);
  const covers = members.flatMap((member) => member.covers);
  if (covers.length > mostCovered) return build;
  const absent = members.every((member) => member.absent);
  const joined: Build = {
    ...build,
    parts: build.parts.flatMap((part) =>
      part.id === first.id
        ? [{ ...part, name: name ?? part.name, covers, absent }]
        : gone.includes(part.id)
          ? []
          : [part],
    ),
    mustRead: [...new Set(build.mustRead.map(standing))],
    rules: build.rules.flatMap((rule) => ruleFor(rule, standing) ?? []),
  };
  return withChoices(joined, (choices) => without(choices, gone));
}

/** A rule with its parts called otherwise; undefined where it no longer says anything. */
function ruleFor(rule: Rule, called: (id: string) => string): Rule | undefined {
  switch (rule.kind) {
    case 'same': {
      const parts = [...new Set(rule.parts.map(called))];
      return parts.length < 2 ? undefined : { ...rule, parts };
    }
    case 'if-then': {
      const when = { ...rule.when, part: called(rule.when.part) };
      const wants = { ...rule.wants, part: called(rule.wants.part) };
      return when.part === wants.part ? undefined : { ...rule, when, wants };
    }
    case 'never-together': {
      const first = { ...rule.first, part: called(rule.first.part) };
      const second = { ...rule.second, part: called(rule.second.part) };
      return first.part === second.part ? undefined : { ...rule, first, second };
    }
    case 'must-echo':
    case 'most-share':
      return { ...rule, part: called(rule.part) };
    case 'most-new-bottles':
    case 'most-finishes':
    case 'ready-by':
      return rule;
  }
}

/**
 * Takes a part apart into one for each part of the car it covers, each with the same standing and
 * choices. `nameOf` gives a car part's name; the first piece keeps the id, and the rules with it.
 */
export function splitPart(build: Build, id: string, nameOf: (carPart: string) => string): Build {
  const part = partIn(build, id);
  if (part === undefined || part.covers.length < 2) return build;
  if (build.parts.length + part.covers.length - 1 > mostParts) return build;
  const ids = new Set(build.parts.map((one) => one.id));
  const names = new Set(build.parts.filter((one) => one.id !== id).map((one) => one.name));
  const pieces = part.covers.map((carPart, at): Part => {
    const pieceId = at === 0 ? id : freeId(carPart, ids, 'part');
    const name = freeName(nameOf(carPart), names);
    ids.add(pieceId);
    names.add(name);
    return { ...part, id: pieceId, name, covers: [carPart] };
  });
  const split: Build = {
    ...build,
    parts: build.parts.flatMap((one) => (one.id === id ? pieces : [one])),
  };
  return withChoices(split, (choices) => {
    const chosen = choices[id];
    if (chosen === undefined) return choices;
    return { ...choices, ...Object.fromEntries(pieces.map((piece) => [piece.id, chosen])) };
  });
}

/** Adds a settled part for car parts that no part covers yet. */
export function addPart(
  build: Build,
  name: string,
  covers: readonly string[],
  finish: FinishRef,
): Build {
  if (build.parts.length >= mostParts || covers.length > mostCovered) return build;
  const taken = build.parts.map((part) => part.id);
  const id = freeId(name, taken, 'part');
  const part: Part = {
    ...{
      id,
      name: freeName(
        name,
        build.parts.map((one) => one.name),
      ),
    },
    ...{ covers: [...covers], absent: false, finish, painted: false },
  };
  return { ...build, parts: [...build.parts, part] };
}

/**
 * Puts a finish of the build on a part of one alternative. On an open part a finish that was no
 * candidate becomes one; on a settled part the alternative departs from what was settled.
 */
export function wearOn(build: Build, alternativeId: string, id: string, ref: FinishRef): Build {
  const part = partIn(build, id);
  if (part === undefined) return build;
  const allowing = isOpen(part) ? setCandidate(build, id, ref, true) : build;
  const isUsual = !isOpen(part) && part.finish === ref;
  return withChoices(allowing, (choices, { id: own }) => {
    if (own !== alternativeId) return choices;
    return isUsual ? without(choices, [id]) : { ...choices, [id]: ref };
  });
}
