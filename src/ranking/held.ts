/**
 * Parts held at one finish for a ranking, though they are open: which can be, and the build as it is
 * ranked then.
 */
import { type Build, type FinishRef, isOpen, type OpenPart } from '../build/build.ts';
import { fittedBuild } from '../build/fitted.ts';

/** Finish at which a part is held, by part id. */
export type Held = Readonly<Record<string, FinishRef>>;

/** Open parts on the model with something to choose from, in the order of the build. */
export const partsWithChoice = (build: Build): OpenPart[] =>
  fittedBuild(build).parts.filter(
    (part): part is OpenPart => isOpen(part) && part.candidates.length > 1,
  );

/** What of `held` still holds: parts with a choice, at one of their candidates. */
export function heldIn(build: Build, held: Held): Held {
  const parts = partsWithChoice(build).filter(({ id, candidates }) =>
    candidates.includes(held[id] ?? ''),
  );
  return Object.fromEntries(parts.map(({ id }) => [id, held[id]!]));
}

/**
 * The build with the held parts at their one finish. What they might have worn stays known through
 * alternatives, so that families, and with them every score, are those of the sheet.
 */
export function withHeld(build: Build, held: Held): Build {
  const here = heldIn(build, held);
  if (Object.keys(here).length === 0) return build;
  const [first] = build.alternatives;
  const others = build.parts.flatMap((part) => {
    const kept = here[part.id];
    if (kept === undefined || !isOpen(part)) return [];
    return part.candidates
      .filter((ref) => ref !== kept)
      .map((ref, at) => ({
        id: `held-${part.id}-${at}`,
        name: part.name,
        choices: { ...first?.choices, [part.id]: ref },
      }));
  });
  return {
    ...build,
    parts: build.parts.map((part) => {
      const kept = here[part.id];
      return kept === undefined || !isOpen(part) ? part : { ...part, candidates: [kept] };
    }),
    alternatives: [...build.alternatives, ...others],
  };
}
