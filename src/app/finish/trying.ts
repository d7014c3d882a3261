/**
 * A finish that no part wears, how would it look on the car? While it is edited the cars can wear it
 * on one part, for the eye only: the build, its scores and its file stay as they are.
 */
import { useMemo } from 'react';
import { create } from 'zustand';
import { type Build, type EmbeddedFinish, refOf } from '../../build/build.ts';
import { embed } from '../../build/edit/finish.ts';
import { previewed, usePreviewing } from '../sheet/mend/previewing.ts';
import { useWork } from '../store.ts';

export interface Trying {
  readonly part: string;
  readonly finish: EmbeddedFinish;
}

export const useTrying = create<{ readonly trying: Trying | undefined }>()(() => ({
  trying: undefined,
}));

/** The build as the cars show it: every alternative wears what is tried. */
export function shownBuild(build: Build, trying: Trying | undefined): Build {
  if (trying === undefined) return build;
  const { part, finish } = trying;
  const embedded = embed(build, finish);
  return {
    ...embedded,
    alternatives: embedded.alternatives.map((alternative) => ({
      ...alternative,
      choices: { ...alternative.choices, [part]: refOf(finish) },
    })),
  };
}

/** The open build as the cars show it. */
export function useShownBuild(): Build {
  const { build } = useWork();
  const trying = useTrying((now) => now.trying);
  const preview = usePreviewing((now) => now.preview);
  return useMemo(() => previewed(shownBuild(build, trying), preview), [build, trying, preview]);
}
