/**
 * What the page says after something was done that asked nothing first: one line at the foot, with
 * a way to take it back for as long as nothing else has changed.
 */
import { create } from 'zustand';
import { undo, useBench } from '../store.ts';

interface Saying {
  readonly words: string | undefined;
  /** Whether undo takes back what is spoken of. */
  readonly canUndo: boolean;
}

export const useSaying = create<Saying>()(() => ({ words: undefined, canUndo: false }));

/** Says something that needs no answer. */
export const say = (words: string): void => useSaying.setState({ words, canUndo: false });

/** Says what the last change did and offers to take it back; call it right after the change. */
export const sayDone = (words: string): void => useSaying.setState({ words, canUndo: true });

export const hushUp = (): void => useSaying.setState({ words: undefined, canUndo: false });

/** Takes back what was said to be done. */
export function takeBack(): void {
  hushUp();
  undo();
}

useBench.subscribe(() => {
  // Once something else has changed, undo would take that back instead.
  if (useSaying.getState().canUndo) hushUp();
});
