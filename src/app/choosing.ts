/** Which cell is being chosen in: one part of one alternative, and where on screen it was opened. */
import { create } from 'zustand';
import { endStep } from './store.ts';

interface Choosing {
  readonly cell: { readonly alternative: string; readonly part: string } | undefined;
  /** Edges of what was clicked, CSS pixels in the window. */
  readonly from: DOMRect | undefined;
}

export const useChoosing = create<Choosing>()(() => ({ cell: undefined, from: undefined }));

/** Opens the spoons for a part of an alternative, beside the element that was clicked. */
export function startChoosing(alternative: string, part: string, beside: Element): void {
  endStep();
  useChoosing.setState({ cell: { alternative, part }, from: beside.getBoundingClientRect() });
}

/** Puts the spoons away; the next change is an undo step of its own. */
export function stopChoosing(): void {
  endStep();
  useChoosing.setState({ cell: undefined });
}
