/**
 * How do finishes come into a build, change in it and leave it? A build embeds what it wears, so
 * that one file is enough; a bottle shared by several finishes is told the same way in all of them.
 * A build in, a build out that `buildFrom` accepts.
 */
import { type Bottle, bottlesOf, withBottles } from '../../finish/finish.ts';
import type { Alternative, Build, EmbeddedFinish, FinishRef, Part, Rule } from '../build.ts';
import { isOpen, refOf } from '../build.ts';

/** Takes a finish into the build, if it is not there yet. */
export const embed = (build: Build, finish: EmbeddedFinish): Build =>
  build.finishes.some((one) => refOf(one) === refOf(finish))
    ? build
    : withShelfOf({ ...build, finishes: [...build.finishes, finish] }, finish);

/** Puts another finish in the place of one; whatever wore the one wears the other. */
export function replaceFinish(build: Build, ref: FinishRef, finish: EmbeddedFinish): Build {
  if (!build.finishes.some((one) => refOf(one) === ref)) return build;
  const replaced: Build = {
    ...build,
    finishes: build.finishes.map((one) => (refOf(one) === ref ? finish : one)),
  };
  const now = refOf(finish);
  const called = (one: FinishRef): FinishRef => (one === ref ? now : one);
  return withShelfOf(now === ref ? replaced : renamedRefs(replaced, called), finish);
}

/** Every finish of the build, with the bottles of this one told as it tells them. */
function withShelfOf(build: Build, finish: EmbeddedFinish): Build {
  const told = new Map(bottlesOf(finish).map((bottle) => [bottle.id, bottle]));
  return withBottlesIn(build, told);
}

/** Every finish of the build with these bottles told like this. */
export const withBottlesIn = (build: Build, told: ReadonlyMap<string, Bottle>): Build => ({
  ...build,
  finishes: build.finishes.map((one) => withBottles(one, told)),
});

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
