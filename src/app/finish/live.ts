/**
 * The finish being edited, live: every change that may stand goes into its rack at once, and into
 * the open build where that holds it, as one undo step. What may not stand is told and left out.
 */
import { useMemo } from 'react';
import {
  assignmentOf,
  type Build,
  type EmbeddedFinish,
  type FinishRef,
  finishesByRef,
} from '../../build/build.ts';
import { changedAlike } from '../../build/edit/alike.ts';
import { replaceFinish, withBottlesRetold } from '../../build/edit/finish.ts';
import { faultIn } from '../../finish/edit/admit.ts';
import type { Bottle, Finish } from '../../finish/finish.ts';
import { putFinish, withBottlesRetoldOn } from '../../finish/rack/edit.ts';
import type { Rack } from '../../finish/rack/rack.ts';
import { type Retold, shelfFrom } from '../../finish/shelf.ts';
import { editAll, endStep, useBench, useRacks, useWork } from '../store.ts';
import type { Edited } from './editing.ts';

/** What every section of the form gets. */
export interface Live {
  readonly finish: Finish;
  /** Changes the finish; answers what is wrong with the change, or nothing. */
  readonly take: (to: (now: Finish) => Finish) => string | undefined;
  /** As `take`, undone by itself. */
  readonly takeAlone: (to: (now: Finish) => Finish) => string | undefined;
}

/** The finish where it stands now: in a rack of the builder's, else in the build alone. */
export function finishAt({ rack, finish }: Edited): Finish | undefined {
  const { work, racks } = useBench.getState();
  const stored = racks?.find(({ id }) => id === rack)?.finishes.find(({ id }) => id === finish);
  return stored ?? (work && withoutRack(finishesByRef(work.build).get(`${rack}/${finish}`)));
}

/** The same finish with its rack, the same object each time it is asked for. */
const embedded = new WeakMap<Finish, EmbeddedFinish>();
export function embeddedOf(rack: string, finish: Finish): EmbeddedFinish {
  const known = embedded.get(finish);
  if (known?.rack === rack) return known;
  const made = { rack, ...finish };
  embedded.set(finish, made);
  plain.set(made, finish);
  return made;
}

const plain = new WeakMap<EmbeddedFinish, Finish>();
function withoutRack(finish: EmbeddedFinish | undefined): Finish | undefined {
  if (finish === undefined) return undefined;
  const known = plain.get(finish);
  if (known !== undefined) return known;
  const { rack: _rack, ...made } = finish;
  plain.set(finish, made);
  embedded.set(made, finish);
  return made;
}

const inRacks = (racks: readonly Rack[], rack: string, finish: Finish): readonly Rack[] =>
  racks.some(({ id, finishes }) => id === rack && finishes.some(({ id: own }) => own === finish.id))
    ? racks.map((one) => (one.id === rack ? putFinish(one, finish) : one))
    : racks;

/** Puts another finish in the place of the edited one in its rack; the build's copy follows. */
function put({ rack, finish: id }: Edited, before: Finish, after: Finish): void {
  const ref = `${rack}/${id}`;
  editAll(({ build, racks }) => {
    const copy = finishesByRef(build).get(ref);
    return {
      racks: inRacks(racks, rack, after),
      build: copy === undefined ? build : replaceFinish(build, ref, followed(copy, before, after)),
    };
  }, `finish/${ref}`);
}

/** Says otherwise of one bottle, in every rack and in the build, as part of editing the finish. */
export const retell = (
  { rack, finish: id }: Edited,
  bottle: string,
  anew: Partial<Omit<Bottle, 'id'>>,
): void => {
  const retold: Retold = new Map([[bottle, anew]]);
  editAll(
    ({ build, racks }) => ({
      racks: racks.map((one) => withBottlesRetoldOn(one, retold)),
      build: withBottlesRetold(build, retold),
    }),
    `finish/${rack}/${id}`,
  );
};

/** A bottle as all racks and the build know it: on hand anywhere is on hand. */
export function useShelved(bottle: Bottle | undefined): Bottle | undefined {
  const { build } = useWork();
  const racks = useRacks();
  return useMemo(
    () =>
      bottle &&
      shelfFrom([...(racks ?? []).flatMap(({ finishes }) => finishes), ...build.finishes]).get(
        bottle.id,
      ),
    [bottle, racks, build.finishes],
  );
}

/** The copy after the same change; where it said what the rack did, it stays one object with it. */
function followed(copy: EmbeddedFinish, before: Finish, after: Finish): EmbeddedFinish {
  const next = changedAlike(copy, before, after);
  const whole = embeddedOf(copy.rack, after);
  return JSON.stringify(sorted(next)) === JSON.stringify(sorted(whole)) ? whole : next;
}
const sorted = (finish: EmbeddedFinish) =>
  Object.entries(finish).sort(([one], [other]) => (one < other ? -1 : 1));

/** Reads the finish and changes it; undefined once it is gone. */
export function useLive({ rack, finish: id }: Edited): Live | undefined {
  const finish = useBench(() => finishAt({ rack, finish: id }));
  return useMemo(() => {
    if (finish === undefined) return undefined;
    const take: Live['take'] = (to) => {
      const now = finishAt({ rack, finish: id });
      if (now === undefined) return undefined;
      const next = to(now);
      if (next === now) return undefined;
      const fault = faultIn(next);
      if (fault === undefined) put({ rack, finish: id }, now, next);
      return fault;
    };
    const takeAlone: Live['take'] = (to) => {
      endStep();
      const fault = take(to);
      endStep();
      return fault;
    };
    return { finish, take, takeAlone };
  }, [finish, rack, id]);
}

/** Undoes everything since the bench was as remembered, where the history still holds it. */
export function takeBackTo(remembered: ReturnType<typeof useBench.getState>): void {
  const history = useBench.temporal.getState();
  const at = history.pastStates.findLastIndex(
    ({ work, racks }) => work === remembered.work && racks === remembered.racks,
  );
  if (at >= 0) history.undo(history.pastStates.length - at);
  endStep();
}

/** Parts of the build that wear the finish, with the positions of the alternatives they do so on. */
export function wearersOf(build: Build, ref: FinishRef): { name: string; on: number[] }[] {
  const worn = build.alternatives.map((alternative) => assignmentOf(build, alternative));
  return build.parts.flatMap(({ id, name }) => {
    const on = worn.flatMap((assignment, at) => (assignment.get(id) === ref ? [at] : []));
    return on.length === 0 ? [] : [{ name, on }];
  });
}
