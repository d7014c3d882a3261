/**
 * What lies on the bench: the open work (one build and its car) and the builder's racks, with every
 * change undoable. What is pointed at and which view is shown live elsewhere (`pointing.ts`), so
 * that undo never moves the eye.
 *
 * Changes with one step name made one after the other count as one step: trying five spoons on the
 * mirrors, or typing a name, is undone in one go.
 */
import { temporal } from 'zundo';
import { create, useStore } from 'zustand';
import { type Build, type EmbeddedFinish, refOf } from '../build/build.ts';
import { embed } from '../build/edit/finish.ts';
import { withNamesFollowing } from '../build/edit/naming.ts';
import { wearOn } from '../build/edit/part.ts';
import type { Rack } from '../finish/rack/rack.ts';
import type { Car } from './opening/garage.ts';

export interface Work {
  readonly build: Build;
  readonly car: Car;
  /** Under which this browser keeps it; a copy gets a key of its own. */
  readonly key: string;
}
export interface Bench {
  /** Undefined only before the first file is opened. */
  readonly work: Work | undefined;
  /** The builder's racks; undefined until they have been fetched. */
  readonly racks: readonly Rack[] | undefined;
}
/** What an edit changes. */
export interface Editable {
  readonly build: Build;
  readonly racks: readonly Rack[];
}

const mostSteps = 300;

export const useBench = create<Bench>()(
  temporal((): Bench => ({ work: undefined, racks: undefined }), {
    limit: mostSteps,
    equality: (one, other) => one.work === other.work && one.racks === other.racks,
  }),
);

/** The open work; only for components below `App`, which waits for it. */
export const useWork = (): Work => useBench((bench) => bench.work!);

/** The builder's racks; undefined until they have been fetched. */
export const useRacks = (): readonly Rack[] | undefined => useBench(({ racks }) => racks);

/** Reads a value of the undo history, for example how many steps can be undone. */
export const useHistory = <T>(
  select: (history: ReturnType<typeof useBench.temporal.getState>) => T,
): T => useStore(useBench.temporal, select);

/** Name of the step that took the last change; the next change of that name joins it. */
let lastStep: string | undefined;

/** Ends the current undo step: the next change can be undone by itself. */
export const endStep = (): void => {
  lastStep = undefined;
};

function change(next: Partial<Bench>, step: string | undefined): void {
  const history = useBench.temporal.getState();
  const joins = step !== undefined && step === lastStep;
  if (joins) history.pause();
  useBench.setState(next);
  if (joins) history.resume();
  lastStep = step;
}

/**
 * Changes build and racks together, as one step; a change that returns what it was given is none.
 * Changes in a row with the same `step` name are undone together. Racks that have not been fetched
 * yet cannot be changed. Names of alternatives that nobody typed follow what is worn.
 */
export function editAll(to: (now: Editable) => Partial<Editable>, step?: string): void {
  const { work, racks } = useBench.getState();
  if (work === undefined) return;
  const next = to({ build: work.build, racks: racks ?? [] });
  const build = withNamesFollowing(work.build, next.build ?? work.build);
  const kept = racks === undefined ? undefined : (next.racks ?? racks);
  if (build === work.build && kept === racks) return;
  change({ work: build === work.build ? work : { ...work, build }, racks: kept }, step);
}

/** Changes the build. */
export const edit = (to: (build: Build) => Build, step?: string): void =>
  editAll(({ build }) => ({ build: to(build) }), step);

/** Changes the racks. */
export const editRacks = (to: (racks: readonly Rack[]) => readonly Rack[], step?: string): void =>
  editAll(({ racks }) => ({ racks: to(racks) }), step);

/** Opens other work; the work that was open can be had back by undo. */
export function open(work: Omit<Work, 'key'> & { readonly key?: string }): void {
  const isFirst = useBench.getState().work === undefined;
  useBench.setState({ work: { ...work, key: work.key ?? newKey() } });
  if (isFirst) useBench.temporal.getState().clear();
  endStep();
}

/**
 * Changes what lies on the bench and every state that undo can bring back, as one that has always
 * been so: racks that were fetched, what another tab has kept. Nothing to undo.
 */
export function amend(to: (bench: Bench) => Bench): void {
  const history = useBench.temporal.getState();
  history.pause();
  useBench.setState(to(useBench.getState()));
  history.resume();
  const amended = (state: Partial<Bench>): Partial<Bench> =>
    to({ work: state.work, racks: state.racks });
  useBench.temporal.setState(({ pastStates, futureStates }) => ({
    pastStates: pastStates.map(amended),
    futureStates: futureStates.map(amended),
  }));
}

/** Lays out racks that were fetched. */
export const layOutRacks = (racks: readonly Rack[]): void =>
  amend((bench) => (bench.racks === undefined ? { ...bench, racks } : bench));

/** Lays the open work out as another tab has left it; earlier states stay as they were. */
export function follow(work: Work): void {
  const history = useBench.temporal.getState();
  history.pause();
  useBench.setState({ work });
  history.resume();
  endStep();
}

/** A key that no other work of this browser has. */
export const newKey = (): string =>
  `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 10)}`;

export function undo(): void {
  useBench.temporal.getState().undo();
  endStep();
}

export function redo(): void {
  useBench.temporal.getState().redo();
  endStep();
}

/** Changes light or distance, or both. */
export const view = (viewing: Partial<Build['viewing']>): void =>
  edit((build) => ({ ...build, viewing: { ...build.viewing, ...viewing } }), 'viewing');

/** Puts a finish on a part of one alternative, and into the build where it was not there yet. */
export const chooseFrom = (alternativeId: string, partId: string, finish: EmbeddedFinish): void =>
  edit(
    (build) => wearOn(embed(build, finish), alternativeId, partId, refOf(finish)),
    `${alternativeId}/${partId}`,
  );
