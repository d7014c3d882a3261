/**
 * What the page says after something was done that asked nothing first: one line at the foot, with
 * a way to take it back for as long as nothing else has changed.
 */
import { create } from 'zustand';
import { undo, useBench } from '../store.ts';

interface Saying {
  readonly words: string | undefined;
}

export const useSaying = create<Saying>()(() => ({ words: undefined }));

/** Says what the last change did and offers to take it back; call it right after the change. */
export const sayDone = (words: string): void => useSaying.setState({ words });

export const hushUp = (): void => useSaying.setState({ words: undefined });

/** Takes back what was said to be done. */
export function takeBack(): void {
  hushUp();
  undo();
}

useBench.subscribe((now, before) => {
  // Once something else has changed, undo would take that back instead.
  if (now.work?.build !== before.work?.build || now.racks !== before.racks) hushUp();
});
