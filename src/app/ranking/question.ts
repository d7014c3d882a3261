/**
 * What is a ranking asked about, and does one that was found still answer it? The build with some
 * parts held at one finish, how many rows, and today. What alternatives wear, how anything is
 * called and what the story says play no part in it.
 */
import { type Build, type FinishRef, isOpen, type OpenPart } from '../../build/build.ts';
import { fittedBuild } from '../../build/fitted.ts';
import type { SightTable } from '../../car/table.ts';
import type { Wanted } from '../../ranking/ranking.ts';

/** Finish at which a part is held, by part id. */
export type Held = Readonly<Record<string, FinishRef>>;

export interface Question {
  readonly build: Build;
  readonly sight: SightTable;
  readonly wanted: Wanted;
  readonly held: Held;
}

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

/** Fields of a build that decide a ranking. */
const deciding = [
  'parts',
  'rules',
  'finishes',
  'weights',
  'viewing',
  'scale',
  'tonal',
  'mustRead',
  'wantedBy',
] as const;

/** Whether the answer to one question is the answer to the other. */
export const isSameQuestion = (one: Question, other: Question): boolean =>
  one.sight === other.sight &&
  deciding.every((field) => one.build[field] === other.build[field]) &&
  strangersIn(one.build) === strangersIn(other.build) &&
  one.wanted.today === other.wanted.today &&
  one.wanted.count === other.wanted.count &&
  one.wanted.isDifferent === other.wanted.isDifferent &&
  told(one) === told(other);

const told = ({ build, held }: Question): string => JSON.stringify(heldIn(build, held));

/** What alternatives wear that is no candidate: it takes part in finding families. */
const strangersIn = (build: Build): string =>
  build.parts
    .flatMap((part) => {
      const usual = isOpen(part) ? part.candidates : [part.finish];
      const worn = build.alternatives.flatMap(({ choices }) => choices[part.id] ?? []);
      return worn.filter((ref) => !usual.includes(ref)).map((ref) => `${part.id} ${ref}`);
    })
    .sort()
    .join();

/** How many combinations there are, rules aside. */
export const combinationsOf = (build: Build, held: Held): bigint =>
  partsWithChoice(build)
    .filter(({ id }) => heldIn(build, held)[id] === undefined)
    .reduce((product, { candidates }) => product * BigInt(candidates.length), 1n);

/** Combinations up to which a search is over in a blink (our judgement). */
const mostAtOnce = 200_000n;

/** Whether ranking takes no time. */
export const isSmall = (build: Build, held: Held): boolean =>
  combinationsOf(build, held) <= mostAtOnce;
