/**
 * A finish put on a part: of one alternative or of all, and what that comes to in words. A settled
 * part that changes on one alternative alone departs from what was settled; that is never left
 * unsaid, and all of them are one press away.
 */
import {
  assignmentOf,
  type Build,
  type EmbeddedFinish,
  isOpen,
  letterOf,
  type Part,
  refOf,
} from '../../build/build.ts';
import { embed } from '../../build/edit/finish.ts';
import { wearOnAll } from '../../build/edit/part.ts';
import { sayDone } from '../pieces/said.ts';
import { chooseFrom, edit, endStep, useBench } from '../store.ts';

/** Puts it on one alternative, as an undo step of its own, and says so. */
export function putOnOne(finish: EmbeddedFinish, part: Part, alternativeId: string): void {
  endStep();
  chooseFrom(alternativeId, part.id, finish);
  endStep();
  const alternatives = useBench.getState().work?.build.alternatives ?? [];
  const letter = letterOf(alternatives.findIndex(({ id }) => id === alternativeId));
  const where = `${finish.name} is on ${part.name} of ${letter}`;
  if (isOpen(part) || alternatives.length < 2) sayDone(`${where}.`);
  else sayDone(`${where} only.`, { name: 'On all of them', go: () => putOnAll(finish, part) });
}

/** Puts it on every alternative, as an undo step of its own, and says so. */
export function putOnAll(finish: EmbeddedFinish, part: Part): void {
  endStep();
  edit((build) => wearOnAll(embed(build, finish), part.id, refOf(finish)));
  endStep();
  const where =
    isOpen(part) || part.painted ? `${part.name} of all` : `${part.name}, settled so on all`;
  sayDone(`${finish.name} is on ${where}.`);
}

/** Whether every alternative wears it already, and a settled part is settled on it. */
export function isOnAll(build: Build, part: Part, finish: EmbeddedFinish): boolean {
  const ref = refOf(finish);
  const isSettled = isOpen(part) || part.painted || part.finish === ref;
  return (
    isSettled && build.alternatives.every((one) => assignmentOf(build, one).get(part.id) === ref)
  );
}
