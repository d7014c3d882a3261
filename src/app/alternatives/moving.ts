/** Adding an alternative and taking one out, from wherever that is offered. */
import {
  addAlternative,
  moveAlternative,
  removeAlternative,
} from '../../build/edit/alternative.ts';
import { lay } from '../overlay/overlay.ts';
import { sayDone } from '../pieces/said.ts';
import { edit, endStep, useBench } from '../store.ts';

/** Adds an alternative at the end, wearing what `like` wears, and opens its card to be named. */
export function add(like?: string): void {
  const before = useBench.getState().work?.build.alternatives ?? [];
  endStep();
  edit((build) => {
    const added = addAlternative(build, undefined, like);
    const fresh = added.alternatives.find(({ id }) => !before.some((one) => one.id === id));
    return fresh === undefined ? added : moveAlternative(added, fresh.id, before.length);
  });
  const fresh = useBench.getState().work?.build.alternatives.at(-1);
  if (fresh === undefined || before.some(({ id }) => id === fresh.id)) return;
  if (before.length > 0) lay({ kind: 'alternative', alternative: fresh.id });
}

/** Moves an alternative to a place, counted from 0. */
export function moveTo(id: string, to: number): void {
  endStep();
  edit((build) => moveAlternative(build, id, to));
}

/** Takes an alternative out and offers to take that back. */
export function takeOut(id: string): void {
  const name = useBench.getState().work?.build.alternatives.find((one) => one.id === id)?.name;
  if (name === undefined) return;
  endStep();
  edit((build) => removeAlternative(build, id));
  sayDone(`${name} was taken out.`);
}
