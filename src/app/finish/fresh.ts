/** Puts a new finish into a rack, as one step that can be undone. */

import { freshFinish } from '../../finish/edit/fresh.ts';
import type { Finish } from '../../finish/finish.ts';
import { putFinish } from '../../finish/rack/edit.ts';
import { editRacks, endStep, useBench } from '../store.ts';

/**
 * Adds a finish to a rack, like another where one is given, and returns its id; open the editor on
 * it with `startEditing`. Throws where the builder has no such rack.
 */
export function addFreshFinish(rackId: string, like?: Finish): string {
  const rack = useBench.getState().racks?.find(({ id }) => id === rackId);
  if (rack === undefined) throw new Error(`there is no rack ${rackId}`);
  const finish = freshFinish(rack.finishes, like);
  endStep();
  editRacks((racks) => racks.map((one) => (one.id === rackId ? putFinish(one, finish) : one)));
  endStep();
  return finish.id;
}
