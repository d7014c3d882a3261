/**
 * The open work: one build and its car, with every change undoable. What is pointed at and which
 * view is shown live elsewhere (`pointing.ts`), so that undo never moves the eye.
 *
 * Changes made one after the other in the same cell count as one step: trying five spoons on the
 * mirrors is undone in one go.
 */
import { temporal } from 'zundo';
import { create, useStore } from 'zustand';
import { type Build, type FinishRef, isOpen, type Part } from '../build/build.ts';
import type { Car } from './opening/garage.ts';

export interface Work {
  readonly build: Build;
  readonly car: Car;
}
interface Bench {
  /** Undefined only before the first file is opened. */
  readonly work: Work | undefined;
}

const mostSteps = 300;

export const useBench = create<Bench>()(
  temporal((): Bench => ({ work: undefined }), {
    limit: mostSteps,
    equality: (one, other) => one.work === other.work,
  }),
);

/** The open work; only for components below `App`, which waits for it. */
export const useWork = (): Work => useBench((bench) => bench.work!);

/** Reads a value of the undo history, for example how many steps can be undone. */
export const useHistory = <T>(
  select: (history: ReturnType<typeof useBench.temporal.getState>) => T,
): T => useStore(useBench.temporal, select);

/** The cell that took the last change; the next one in it joins the same undo step. */
let lastTouched: string | undefined;

/** Ends the current undo step: the next change can be undone by itself. */
export const endStep = (): void => {
  lastTouched = undefined;
};

function change(to: (work: Work) => Work, cell?: string): void {
  const { work } = useBench.getState();
  if (work === undefined) return;
  const history = useBench.temporal.getState();
  const joins = cell !== undefined && cell === lastTouched;
  if (joins) history.pause();
  useBench.setState({ work: to(work) });
  if (joins) history.resume();
  lastTouched = cell;
}

const changeBuild = (to: (build: Build) => Build, cell?: string): void =>
  change((work) => ({ ...work, build: to(work.build) }), cell);

/** Opens other work; the work that was open can be had back by undo. */
export function open(work: Work): void {
  const isFirst = useBench.getState().work === undefined;
  useBench.setState({ work });
  if (isFirst) useBench.temporal.getState().clear();
  endStep();
}

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
  changeBuild((build) => ({ ...build, viewing: { ...build.viewing, ...viewing } }));

/**
 * Puts a finish on a part of one alternative. On an open part a finish that was no candidate
 * becomes one; on a settled part the alternative departs from what was settled.
 */
export const choose = (alternativeId: string, partId: string, ref: FinishRef): void =>
  changeBuild(
    (build) => ({
      ...build,
      parts: build.parts.map((part) => (part.id === partId ? allowing(part, ref) : part)),
      alternatives: build.alternatives.map((alternative) =>
        alternative.id === alternativeId
          ? { ...alternative, choices: chosen(build, alternative.choices, partId, ref) }
          : alternative,
      ),
    }),
    `${alternativeId}/${partId}`,
  );

const allowing = (part: Part, ref: FinishRef): Part =>
  isOpen(part) && !part.candidates.includes(ref)
    ? { ...part, candidates: [...part.candidates, ref] }
    : part;

type Choices = Build['alternatives'][number]['choices'];

/** Choices with `ref` on the part; a settled part that keeps its finish is not named at all. */
function chosen(build: Build, choices: Choices, partId: string, ref: FinishRef): Choices {
  const part = build.parts.find(({ id }) => id === partId);
  if (part === undefined || isOpen(part) || part.finish !== ref) {
    return { ...choices, [partId]: ref };
  }
  const { [partId]: _, ...others } = choices;
  return others;
}
