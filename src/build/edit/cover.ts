/**
 * Which parts of the car are sprayed in one go? Several parts of a build become one, one is taken
 * apart, parts of the car that nobody described yet are added. A build in, a build out that
 * `buildFrom` accepts: alternatives and rules follow. An unknown part changes nothing, and so does
 * what a build file has no room for.
 */
import { freeId, freeName } from '../../ground/id.ts';
import type { Build, FinishRef, Part, Rule } from '../build.ts';
import { holdsFinish, partIn, withChoices, without } from './part.ts';

/** Parts a build may hold, and car parts that one may cover, as files have it. */
const mostParts = 200;
const mostCovered = 40;

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
  if (!holdsFinish(build, finish)) return build;
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
