/**
 * A finish that no part wears, how would it look on the car? While it is edited the cars can wear it
 * on one part, for the eye only: the build, its scores and its file stay as they are.
 */
import { useMemo } from 'react';
import { create } from 'zustand';
import { type Build, type EmbeddedFinish, type FinishRef, refOf } from '../../build/build.ts';
import { embed } from '../../build/edit/finish.ts';
import { previewed, usePreviewing } from '../sheet/mend/previewing.ts';
import { useWork } from '../store.ts';

export interface Trying {
  readonly part: string;
  readonly finish: EmbeddedFinish;
}

interface Tried {
  readonly trying: Trying | undefined;
  /** For which part a finish was last tried, or meant; it is offered there first. */
  readonly onto: { readonly finish: FinishRef; readonly part: string } | undefined;
}
export const useTrying = create<Tried>()(() => ({ trying: undefined, onto: undefined }));

/** Remembers for which part a finish is meant; for none, where it is tried nowhere. */
export const meanFor = (finish: FinishRef, part: string | undefined): void =>
  useTrying.setState({ onto: part === undefined ? undefined : { finish, part } });

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
