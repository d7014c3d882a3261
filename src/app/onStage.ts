/**
 * Which alternatives are being compared? Of more than two any may be left off the stage: cars, part
 * table and score sheets then show the others, each under its own letter. Kept out of the undo
 * history, and forgotten once other work is opened.
 */
import { useMemo } from 'react';
import { create } from 'zustand';
import { type Alternative, type Build, letterOf } from '../build/build.ts';
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
  if (now.work?.key !== before.work?.key) useOff.setState({ off: [] });
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
export const setOnStage = (id: string, isOn: boolean): void =>
  useOff.setState(({ off }) => ({
    off: isOn ? off.filter((one) => one !== id) : [...new Set([...off, id])],
  }));
