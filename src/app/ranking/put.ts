/** A combination becomes an alternative: on the stage beside the others, under the next letter. */
import {
  type Alternative,
  assignmentOf,
  type Build,
  type FinishRef,
  isOpen,
  letterOf,
} from '../../build/build.ts';
import { addAlternative, mostAlternatives } from '../../build/edit/alternative.ts';
import { sayDone, sayOnly } from '../pieces/said.ts';
import { edit, endStep, useBench } from '../store.ts';

type Choices = Readonly<Record<string, FinishRef>>;

/** The build with one more alternative that wears these choices; as it was where it is full. */
export function withCombination(build: Build, choices: Choices): Build {
  const added = addAlternative(build);
  const fresh = added.alternatives.at(-1);
  if (added === build || fresh === undefined) return build;
  const worn: Alternative = { ...fresh, choices: { ...fresh.choices, ...choices } };
  return { ...added, alternatives: added.alternatives.with(-1, worn) };
}

/** Whether every choice is still a candidate of an open part. */
export const canWear = (build: Build, choices: Choices): boolean =>
  Object.entries(choices).every(([id, ref]) => {
    const part = build.parts.find((one) => one.id === id);
    return part !== undefined && isOpen(part) && part.candidates.includes(ref);
  });

const signOf = (worn: ReadonlyMap<string, FinishRef>): string => JSON.stringify([...worn]);

/** What a combination wears throughout, as a word that is the same for the same look. */
export const signOfChoices = (build: Build, choices: Choices): string =>
  signOf(assignmentOf(build, { id: '', name: '', choices }));

/** Place of the first alternative that wears each look, counted from 0. */
export function placesBySign(build: Build): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  for (const [at, alternative] of build.alternatives.entries()) {
    const sign = signOf(assignmentOf(build, alternative));
    if (!places.has(sign)) places.set(sign, at);
  }
  return places;
}

/** Puts a combination on the stage and says which letter it became. */
export function putOnStage(choices: Choices, number: number): void {
  const before = useBench.getState().work?.build;
  endStep();
  edit((build) => withCombination(build, choices));
  endStep();
  const after = useBench.getState().work?.build;
  if (before === undefined || after === undefined) return;
  if (after.alternatives.length === before.alternatives.length) {
    sayOnly(`A build holds ${mostAlternatives} alternatives; take one out first.`);
    return;
  }
  sayDone(`Number ${number} stands on the stage as ${letterOf(after.alternatives.length - 1)}.`);
}
