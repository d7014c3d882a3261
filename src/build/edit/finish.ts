/**
 * How do finishes come into a build, change in it and leave it? A build embeds what it wears, so
 * that one file is enough; a bottle shared by several finishes is told the same way in all of them.
 * A finish that comes in never turns what is on hand into something to buy; one that is there
 * already and says otherwise of its bottle than before is believed (`finish/shelf`).
 * A build in, a build out that `buildFrom` accepts.
 */
import { type Retold, shelfFrom, withRetold, withShelved } from '../../finish/shelf.ts';
import type { Alternative, Build, EmbeddedFinish, FinishRef, Part, Rule } from '../build.ts';
import { isOpen, refOf } from '../build.ts';

/** Finishes a build may hold, as files have it. */
const mostFinishes = 10_000;

/** Takes a finish into the build, if it is not there yet; a full build stays as it is. */
export function embed(build: Build, finish: EmbeddedFinish): Build {
  if (build.finishes.length >= mostFinishes) return build;
  if (build.finishes.some((one) => refOf(one) === refOf(finish))) return build;
  const finishes = [...build.finishes, finish];
  return { ...build, finishes: withShelved(finishes, shelfFrom(build.finishes), finish) };
}

/**
 * Puts another finish in the place of one; whatever wore the one wears the other. Where the build
 * holds one of that rack and id besides, it gives way too.
 */
export function replaceFinish(build: Build, ref: FinishRef, finish: EmbeddedFinish): Build {
  const before = build.finishes.find((one) => refOf(one) === ref);
  if (before === undefined) return build;
  const now = refOf(finish);
  const isSame = now === ref;
  const finishes = build.finishes
    .filter((one) => one === before || refOf(one) !== now)
    .map((one) => (one === before ? finish : one));
  const shelf = shelfFrom(build.finishes);
  const replaced: Build = {
    ...build,
    finishes: withShelved(finishes, shelf, finish, isSame ? before : undefined),
  };
  const called = (one: FinishRef): FinishRef => (one === ref ? now : one);
  return isSame ? replaced : renamedRefs(replaced, called);
}

/** The build after somebody said otherwise of bottles; the same build where none is of it. */
export function withBottlesRetold(build: Build, retold: Retold): Build {
  const finishes = build.finishes.map((one) => withRetold(one, retold));
  return finishes.every((one, at) => one === build.finishes[at]) ? build : { ...build, finishes };
}

function renamedRefs(build: Build, called: (ref: FinishRef) => FinishRef): Build {
  const unique = (refs: readonly FinishRef[]): FinishRef[] => [...new Set(refs.map(called))];
  return {
    ...build,
    parts: build.parts.map(
      (part): Part =>
        isOpen(part)
          ? { ...part, candidates: unique(part.candidates) }
          : { ...part, finish: called(part.finish) },
    ),
    rules: build.rules.map((rule): Rule => {
      if (rule.kind === 'if-then') {
        const when = { ...rule.when, finish: called(rule.when.finish) };
        return { ...rule, when, wants: { ...rule.wants, oneOf: unique(rule.wants.oneOf) } };
      }
      if (rule.kind !== 'never-together') return rule;
      const first = { ...rule.first, finish: called(rule.first.finish) };
      return { ...rule, first, second: { ...rule.second, finish: called(rule.second.finish) } };
    }),
    alternatives: build.alternatives.map(
      (one): Alternative => ({
        ...one,
        choices: Object.fromEntries(
          Object.entries(one.choices).map(([part, ref]) => [part, called(ref)]),
        ),
      }),
    ),
  };
}

/** Every finish that a part, an alternative or a rule of the build names. */
export function usedRefs(build: Build): ReadonlySet<FinishRef> {
  return new Set([
    ...build.parts.flatMap((part) => (isOpen(part) ? part.candidates : [part.finish])),
    ...build.alternatives.flatMap(({ choices }) => Object.values(choices)),
    ...build.rules.flatMap((rule) => {
      if (rule.kind === 'if-then') return [rule.when.finish, ...rule.wants.oneOf];
      return rule.kind === 'never-together' ? [rule.first.finish, rule.second.finish] : [];
    }),
  ]);
}

/** The build without finishes that nothing names. */
export function withoutUnused(build: Build): Build {
  const used = usedRefs(build);
  return { ...build, finishes: build.finishes.filter((finish) => used.has(refOf(finish))) };
}
