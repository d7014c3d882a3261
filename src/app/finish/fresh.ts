/**
 * How does a new finish come about? It goes onto a rack, the editor opens on it, and where it was
 * missed it is put on at once; a full rack takes none, and says so. One that nobody named and nobody
 * touched goes again with the editor, and leaves no step behind.
 */
import type { EmbeddedFinish } from '../../build/build.ts';
import { freshFinish, type Told } from '../../finish/edit/fresh.ts';
import type { Finish } from '../../finish/finish.ts';
import { emptyRack, putFinish } from '../../finish/rack/edit.ts';
import type { Rack } from '../../finish/rack/rack.ts';
import { freeId, freeName } from '../../ground/id.ts';
import { sayOnly } from '../pieces/said.ts';
import { editRacks, endStep, useBench } from '../store.ts';
import { type Edited, startEditing } from './editing.ts';

/** A rack without finishes, its name and id free among those of others. */
export function freshRack(racks: readonly Rack[]): Rack {
  const name = freeName(
    'My shelf',
    racks.map((one) => one.name),
  );
  const ids = racks.map((one) => one.id);
  return emptyRack(freeId(name, ids, 'rack'), name);
}

/**
 * Adds a finish to a rack, like another where one is given, and returns its id; open the editor on
 * it with `startEditing`. Undefined where the rack is full, which the builder is told. Throws where
 * the builder has no such rack.
 */
export function addFreshFinish(rackId: string, like?: Finish): string | undefined {
  const rack = useBench.getState().racks?.find(({ id }) => id === rackId);
  if (rack === undefined) throw new Error(`there is no rack ${rackId}`);
  const finish = freshFinish(rack.finishes, like);
  return put(rack, finish) ? finish.id : undefined;
}

/** Puts the finish on the rack, or says why not; a rack that is not there yet comes with it. */
function put(rack: Rack, finish: Finish): boolean {
  const next = putFinish(rack, finish);
  if (next === rack) {
    const count = rack.finishes.length.toLocaleString('en-GB');
    sayOnly(`${rack.name} is full with ${count} finishes. Take some out, or use another rack.`);
    return false;
  }
  endStep();
  editRacks((racks) =>
    racks.includes(rack) ? racks.map((one) => (one === rack ? next : one)) : [...racks, next],
  );
  endStep();
  return true;
}

/** What was made without a name, and how many steps that took. */
interface Begun extends Edited {
  readonly as: Finish;
  readonly steps: number;
  /** Steps that could be undone once the editor was open. */
  readonly past: number;
}
let begun: Begun | undefined;

/**
 * Makes a finish on the rack `into`, else on the first there is, else on a new one; hands it on, and
 * opens the editor on it. Before the racks have been fetched nothing happens.
 */
export function makeFinish(
  told: Told,
  into: string | undefined,
  onMade: (finish: EmbeddedFinish) => void,
): void {
  const { racks } = useBench.getState();
  if (racks === undefined) return;
  const rack = racks.find(({ id }) => id === into) ?? racks[0] ?? freshRack(racks);
  const finish = freshFinish(rack.finishes, undefined, told);
  if (!put(rack, finish)) return;
  const { work } = useBench.getState();
  onMade({ rack: rack.id, ...finish });
  const steps = useBench.getState().work === work ? 1 : 2;
  startEditing(rack.id, finish.id);
  const past = useBench.temporal.getState().pastStates.length;
  begun =
    told.name === undefined
      ? { rack: rack.id, finish: finish.id, as: finish, steps, past }
      : undefined;
}

/** Takes a new finish away that is as it began, as if it had never been. */
export function dropUntouched(edited: Edited): void {
  const made = begun;
  begun = undefined;
  if (made === undefined || made.rack !== edited.rack || made.finish !== edited.finish) return;
  const { racks } = useBench.getState();
  const now = racks
    ?.find(({ id }) => id === made.rack)
    ?.finishes.find(({ id }) => id === made.finish);
  const history = useBench.temporal.getState();
  const isUntouched = JSON.stringify(now) === JSON.stringify(made.as);
  if (!isUntouched || history.pastStates.length !== made.past) return;
  history.undo(made.steps);
  useBench.temporal.setState({ futureStates: [] });
  endStep();
}
