/**
 * What tells the cars apart, in words? For each alternative the parts that do not look the same on
 * all of them, with the finish each wears: asked parts first, then in the order of the build.
 */
import { assignmentOf, type EmbeddedFinish, finishesByRef } from '../../build/build.ts';
import { differingParts, type Round } from '../../opinion/round.ts';

/** A part and what it wears on one alternative. */
export interface Worn {
  readonly part: string;
  readonly name: string;
  readonly finish: EmbeddedFinish;
}

/** What differs, by letter. */
export function wornByLetter({ build, asks }: Round): ReadonlyMap<string, readonly Worn[]> {
  const differing = differingParts(build);
  const first = [...asks, ...differing.filter((id) => !asks.includes(id))];
  const finishes = finishesByRef(build);
  const names = new Map(build.parts.map(({ id, name }) => [id, name]));
  return new Map(
    build.alternatives.map((alternative) => {
      const assignment = assignmentOf(build, alternative);
      const worn = first.flatMap((part): Worn[] => {
        const finish = finishes.get(assignment.get(part) ?? '');
        return finish === undefined ? [] : [{ part, name: names.get(part) ?? part, finish }];
      });
      return [alternative.name, worn];
    }),
  );
}

/** One finish that a part may wear, with the letters of the cars that wear it. */
export interface Wearing {
  readonly finish: EmbeddedFinish;
  /** In the order of the alphabet. */
  readonly letters: readonly string[];
}

/** The finishes of a part, in the order in which the cars are shown. */
export function wearingsOf(
  part: string,
  letters: readonly string[],
  worn: ReadonlyMap<string, readonly Worn[]>,
): readonly Wearing[] {
  const byFinish = new Map<EmbeddedFinish, string[]>();
  for (const letter of letters) {
    const finish = worn.get(letter)?.find((one) => one.part === part)?.finish;
    if (finish !== undefined) byFinish.set(finish, [...(byFinish.get(finish) ?? []), letter]);
  }
  return [...byFinish].map(([finish, wearers]) => ({ finish, letters: wearers.sort() }));
}
