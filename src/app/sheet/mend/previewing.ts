/**
 * How would the car look with this remedy? While one is pointed at or has the focus, its alternative
 * wears it, for the eye only: the build, its scores and its file stay as they are.
 */
import { create } from 'zustand';
import type { Build } from '../../../build/build.ts';
import { type Change, withChanges } from '../../../score/remedy/remedy.ts';

export interface Preview {
  readonly alternative: string;
  readonly changes: readonly Change[];
  /** What is being tried, in words. */
  readonly label: string;
}

interface Previewing {
  readonly preview: Preview | undefined;
}

export const usePreviewing = create<Previewing>()(() => ({ preview: undefined }));

/** Shows a remedy on its car; none shows the car as it is. */
export const previewOf = (preview: Preview | undefined): void => {
  if (usePreviewing.getState().preview !== preview) usePreviewing.setState({ preview });
};

/** The build as its cars show it while a remedy is looked at. */
export const previewed = (build: Build, preview: Preview | undefined): Build =>
  preview === undefined ? build : withChanges(build, preview.alternative, preview.changes);
