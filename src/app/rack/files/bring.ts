/**
 * Racks on their way in: what was read, and the dialog over it. For whoever has read files or a paste
 * that is no build, anywhere on the page: `showReadings(readings)` lays the dialog over the page, which
 * tells what is wrong as well. Import this file when it is needed, since reading tables is no part of
 * the first page.
 */
import { create } from 'zustand';
import { type Build, finishesByRef, refOf } from '../../../build/build.ts';
import { changedAlike } from '../../../build/edit/alike.ts';
import { replaceFinish } from '../../../build/edit/finish.ts';
import { besideOthers, type Merged, mergedInto, type SameId } from '../../../finish/rack/merge.ts';
import type { Rack } from '../../../finish/rack/rack.ts';
import { idFrom } from '../../../ground/id.ts';
import { clear, lay, useOverlay } from '../../overlay/overlay.ts';
import { editAll, endStep } from '../../store.ts';
import type { Reading } from './reading.ts';

/** What has been read and waits to be brought in. */
export const useBringing = create<{ readonly readings: readonly Reading[] }>()(() => ({
  readings: [],
}));

/** Lays the dialog over the page, with what was read; onto the rack `into` unless told otherwise. */
export function layBringing(readings: readonly Reading[] = [], into?: string): void {
  useBringing.setState({ readings });
  lay({ kind: 'bring', ...(into !== undefined && { into }) });
}

/** Lays what was read over the page; where the dialog is open already, beside what waits there. */
export const showReadings = (readings: readonly Reading[]): void =>
  useOverlay.getState().overlay?.kind === 'bring' ? addReadings(readings) : layBringing(readings);

/** Takes the dialog away, and lets what was read go. */
export function putAway(): void {
  useBringing.setState({ readings: [] });
  clear();
}

/** Puts what was read beside what waits already; the same source again takes the place of itself. */
export const addReadings = (readings: readonly Reading[]): void =>
  useBringing.setState((now) => ({
    readings: [
      ...now.readings.filter(({ source }) => readings.every((one) => one.source !== source)),
      ...readings,
    ],
  }));

/** Lets what was read from a source go. */
export const dropReading = (source: string): void =>
  useBringing.setState((now) => ({
    readings: now.readings.filter((reading) => reading.source !== source),
  }));

/** Where finishes go: racks of their own, the first under this name, or a rack that is there. */
export type Whereto =
  | { readonly kind: 'new'; readonly name: string }
  | { readonly kind: 'into'; readonly rack: string; readonly sameId: SameId };

/** What bringing the racks in comes to; nothing is changed yet. */
export interface Outcome {
  readonly racks: readonly Rack[];
  /** The racks that are new or changed. */
  readonly touched: readonly Rack[];
  /** Counts, where the finishes go into a rack that is there. */
  readonly merged: Merged | undefined;
  /** Finishes the open build wears that change with their rack. */
  readonly worn: number;
}

/** The racks as they would be. */
export function outcomeOf(
  racks: readonly Rack[],
  incoming: readonly Rack[],
  to: Whereto,
  build: Build,
): Outcome {
  if (to.kind === 'new') {
    const touched: Rack[] = [];
    for (const rack of incoming) {
      const named = touched.length === 0 ? called(rack, to.name) : rack;
      touched.push(besideOthers([...racks, ...touched], named));
    }
    return { racks: [...racks, ...touched], touched, merged: undefined, worn: 0 };
  }
  const before = racks.find(({ id }) => id === to.rack);
  if (before === undefined) return { racks, touched: [], merged: undefined, worn: 0 };
  const finishes = incoming.flatMap((rack) => rack.finishes);
  const merged = mergedInto(before, finishes, to.sameId);
  return {
    racks: racks.map((rack) => (rack === before ? merged.rack : rack)),
    touched: [merged.rack],
    merged,
    worn: changedIn(build, before, merged.rack).length,
  };
}

/** The rack under another name; an id that was made from its name follows. */
const called = (rack: Rack, name: string): Rack => ({
  ...rack,
  name,
  id: rack.id === idFrom(rack.name, 'rack') ? idFrom(name, 'rack') : rack.id,
});

/** Brings them in, and what the open build wears of them with them, as one step. */
export function bringIn(outcome: Outcome): void {
  endStep();
  editAll(({ build, racks }) => ({
    racks: outcome.racks,
    build: outcome.touched.reduce((now, rack) => {
      const before = racks.find(({ id }) => id === rack.id);
      return before === undefined
        ? now
        : changedIn(now, before, rack).reduce((with_, { ref, was, is }) => {
            const copy = finishesByRef(with_).get(ref)!;
            const next = was === undefined ? { rack: rack.id, ...is } : changedAlike(copy, was, is);
            return replaceFinish(with_, ref, next);
          }, now);
    }, build),
  }));
  endStep();
}

/** The finishes of a rack that the build holds and that are no longer as the rack had them. */
function changedIn(build: Build, before: Rack, after: Rack) {
  const were = new Map(before.finishes.map((finish) => [finish.id, finish]));
  const isHeld = new Set(build.finishes.map(refOf));
  return after.finishes
    .filter(({ id }) => isHeld.has(`${after.id}/${id}`))
    .filter((finish) => were.get(finish.id) !== finish)
    .map((finish) => ({
      ref: `${after.id}/${finish.id}`,
      was: were.get(finish.id),
      is: finish,
    }));
}
