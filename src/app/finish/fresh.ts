/** Puts a new finish into a rack, as one step that can be undone; a full rack takes none, and says so. */

import { freshFinish } from '../../finish/edit/fresh.ts';
import type { Finish } from '../../finish/finish.ts';
import { putFinish } from '../../finish/rack/edit.ts';
import { sayOnly } from '../pieces/said.ts';
import { editRacks, endStep, useBench } from '../store.ts';

/**
 * Adds a finish to a rack, like another where one is given, and returns its id; open the editor on
 * it with `startEditing`. Undefined where the rack is full, which the builder is told. Throws where
 * the builder has no such rack.
 */
export function addFreshFinish(rackId: string, like?: Finish): string | undefined {
  const rack = useBench.getState().racks?.find(({ id }) => id === rackId);
  if (rack === undefined) throw new Error(`there is no rack ${rackId}`);
  const finish = freshFinish(rack.finishes, like);
  const next = putFinish(rack, finish);
  if (next === rack) {
    const count = rack.finishes.length.toLocaleString('en-GB');
    sayOnly(`${rack.name} is full with ${count} finishes. Take some out, or use another rack.`);
    return undefined;
  }
  endStep();
  editRacks((racks) => racks.map((one) => (one === rack ? next : one)));
  endStep();
  return finish.id;
}
