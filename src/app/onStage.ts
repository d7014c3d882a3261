/**
 * Which alternatives are being compared? Of more than two any may be left off the stage: cars, part
 * table and score sheets then show the others, each under its own letter. Kept out of the undo
 * history, and remembered for each build for as long as its tab lives.
 */
import { useMemo } from 'react';
import { create } from 'zustand';
import { type Alternative, type Build, letterOf } from '../build/build.ts';
import { offOf, rememberOff } from './leftOff.ts';
import { useBench, useWork } from './store.ts';

export interface Staged {
  readonly alternative: Alternative;
  /** Counted over all alternatives, so that a letter keeps its meaning. */
  readonly letter: string;
  /** Position among all alternatives, from 0. */
  readonly at: number;
}

interface Off {
  /** Ids of the alternatives that are left off. */
  readonly off: readonly string[];
}

const useOff = create<Off>()(() => ({ off: [] }));

useBench.subscribe((now, before) => {
  const key = now.work?.key;
  if (key !== before.work?.key) useOff.setState({ off: key === undefined ? [] : offOf(key) });
});

/** The alternatives on the stage; all of them where there are no more than two to choose from. */
export function stagedOf(alternatives: readonly Alternative[], off: readonly string[]): Staged[] {
  const all = alternatives.map((alternative, at) => ({ alternative, letter: letterOf(at), at }));
  const on = all.filter(({ alternative }) => !off.includes(alternative.id));
  return all.length < 3 || on.length === 0 ? all : on;
}

/** The alternatives on the stage, in order. */
export function useStaged(): readonly Staged[] {
  const { alternatives } = useWork().build;
  const off = useOff((now) => now.off);
  return useMemo(() => stagedOf(alternatives, off), [alternatives, off]);
}

/** How many alternatives are on the stage. */
export function useStagedCount(): number {
  const off = useOff((now) => now.off);
  return useBench(({ work }) =>
    work === undefined ? 0 : stagedOf(work.build.alternatives, off).length,
  );
}

/** The open build as if it had only the alternatives on the stage. */
export function useStagedBuild(): Build {
  const { build } = useWork();
  const staged = useStaged();
  return useMemo(
    () =>
      staged.length === build.alternatives.length
        ? build
        : { ...build, alternatives: staged.map(({ alternative }) => alternative) },
    [build, staged],
  );
}

/** Puts an alternative on the stage or leaves it off. */
export function setOnStage(id: string, isOn: boolean): void {
  const others = useOff.getState().off.filter((one) => one !== id);
  const off = isOn ? others : [...others, id];
  useOff.setState({ off });
  const key = useBench.getState().work?.key;
  if (key !== undefined) rememberOff(key, off);
}
