/**
 * Which build is it that gets painted? The build without the parts that are not on this model:
 * kits come without mirrors, belts are left off. What names them only falls away with them, so
 * that nothing has to be taken back by hand when a part turns up again.
 *
 * A build in, the same object out where nothing is absent; else a build whose parts are all there,
 * with rules, choices and wishes for the absent ones left out.
 */
import type { Alternative, Build, Rule } from './build.ts';

const known = new WeakMap<Build, Build>();

/** The build with only the parts that are on the model. */
export function fittedBuild(build: Build): Build {
  if (!build.parts.some(({ absent }) => absent)) return build;
  const before = known.get(build);
  if (before !== undefined) return before;
  const isFitted = fittedIn(build);
  const fitted: Build = {
    ...build,
    parts: build.parts.filter(({ id }) => isFitted(id)),
    mustRead: build.mustRead.filter(isFitted),
    rules: build.rules.flatMap((rule) => fittedRule(rule, isFitted) ?? []),
    alternatives: build.alternatives.map(
      (one): Alternative => ({
        ...one,
        choices: Object.fromEntries(Object.entries(one.choices).filter(([id]) => isFitted(id))),
      }),
    ),
  };
  known.set(build, fitted);
  return fitted;
}

/** Whether a part of the build, by its id, is on the model. */
export function fittedIn(build: Build): (part: string) => boolean {
  const absent = new Set(build.parts.filter((part) => part.absent).map(({ id }) => id));
  return (part) => !absent.has(part);
}

/**
 * Ids of the parts of the car that this model does not have: those that absent parts of the build
 * cover, and what goes with them, as stalk and glass go with a mirror.
 */
export function absentCarParts(
  build: Build,
  carParts: readonly { readonly id: string; readonly goesWith?: string | undefined }[],
): ReadonlySet<string> {
  const gone = new Set(build.parts.flatMap((part) => (part.absent ? part.covers : [])));
  if (gone.size === 0) return gone;
  for (let before = -1; before < gone.size; ) {
    before = gone.size;
    for (const { id, goesWith } of carParts) if (gone.has(goesWith ?? '')) gone.add(id);
  }
  return gone;
}

/** What is left of a rule once absent parts are gone; undefined where nothing is. */
export function fittedRule(rule: Rule, isFitted: (part: string) => boolean): Rule | undefined {
  switch (rule.kind) {
    case 'same': {
      const parts = rule.parts.filter(isFitted);
      return parts.length === rule.parts.length
        ? rule
        : parts.length < 2
          ? undefined
          : { ...rule, parts };
    }
    case 'if-then':
      return isFitted(rule.when.part) && isFitted(rule.wants.part) ? rule : undefined;
    case 'never-together':
      return isFitted(rule.first.part) && isFitted(rule.second.part) ? rule : undefined;
    case 'must-echo':
    case 'most-share':
      return isFitted(rule.part) ? rule : undefined;
    case 'most-new-bottles':
    case 'most-finishes':
    case 'ready-by':
      return rule;
  }
}
