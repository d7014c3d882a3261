/**
 * What does the builder want to ask, and what can be asked? Choices by ids of the bench's build; a
 * round has ids of its own.
 */
import type { Build, Part } from '../../build/build.ts';
import { type Asking, differingParts } from '../../opinion/round.ts';

/** What goes along. */
export interface Wanted extends Asking {
  /** Ids of alternatives of the bench's build. */
  readonly alternatives: readonly string[];
  /** Ids of parts of the bench's build that are asked about one by one. */
  readonly parts: readonly string[];
  readonly withStory: boolean;
}

/** Parts of the build that do not wear the same on all wanted alternatives, in order. */
export function partsToAsk(build: Build, alternatives: readonly string[]): readonly Part[] {
  const shown = build.alternatives.filter(({ id }) => alternatives.includes(id));
  const differing = differingParts({ ...build, alternatives: shown });
  return build.parts.filter(({ id }) => differing.includes(id));
}

/** A list with an entry put in or taken out, without repeats. */
export const toggled = (
  list: readonly string[],
  entry: string,
  isIn: boolean,
): readonly string[] => {
  const others = list.filter((one) => one !== entry);
  return isIn ? [...others, entry] : others;
};
