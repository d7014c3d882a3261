/**
 * What is a ranking asked about, and does one that was found still answer it? The build with some
 * parts held at one finish, how many rows, and today. What alternatives wear, how anything is
 * called and what the story says play no part in it.
 */
import { type Build, isOpen } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { type Held, heldIn, partsWithChoice } from '../../ranking/held.ts';
import type { Wanted } from '../../ranking/ranking.ts';

export interface Question {
  readonly build: Build;
  readonly sight: SightTable;
  readonly wanted: Wanted;
  readonly held: Held;
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
