/**
 * What the page says after something was done that asked nothing first: one line at the foot, with
 * a way to take it back for as long as nothing else has changed. What could not be done is told in
 * the same place.
 */
import { create } from 'zustand';
import { undo, useBench } from '../store.ts';

interface Saying {
  readonly words: string | undefined;
  /** Whether something was done that can be taken back. */
  readonly isDone: boolean;
  /** What may have been meant instead, or besides. */
  readonly way?: Way | undefined;
}
interface Way {
  readonly name: string;
  readonly go: () => void;
}

export const useSaying = create<Saying>()(() => ({ words: undefined, isDone: false }));

/** Says what the last change did and offers to take it back; call it right after the change. */
export const sayDone = (words: string, way?: Way): void =>
  useSaying.setState({ words, isDone: true, way });

/** Says why nothing was done. */
export const sayOnly = (words: string): void =>
  useSaying.setState({ words, isDone: false, way: undefined });

export const hushUp = (): void => useSaying.setState({ words: undefined });

/** Takes back what was said to be done. */
export function takeBack(): void {
  hushUp();
  undo();
}

useBench.subscribe((now, before) => {
  // Once something else has changed, undo would take that back instead; racks that come are no change.
  const isOther = now.work?.build !== before.work?.build;
  if (isOther || (before.racks !== undefined && now.racks !== before.racks)) hushUp();
});
