/** Which cell is being chosen in: one part of one alternative, and where on screen it was opened. */
import { create } from 'zustand';
import { hush } from '../pointing.ts';
import { endStep } from '../store.ts';

interface Choosing {
  readonly cell: { readonly alternative: string; readonly part: string } | undefined;
  /** Edges of what was clicked, CSS pixels in the window. */
  readonly from: DOMRect | undefined;
}

export const useChoosing = create<Choosing>()(() => ({ cell: undefined, from: undefined }));

/** Opens the spoons for a part of an alternative, beside the element that was clicked. */
export function startChoosing(alternative: string, part: string, beside: Element): void {
  endStep();
  hush(true);
  useChoosing.setState({ cell: { alternative, part }, from: beside.getBoundingClientRect() });
}

/**
 * Puts the spoons away; the next change is an undo step of its own. The focus goes back to the
 * cell, which may have moved to another part of the table or been folded away with its row.
 */
export function stopChoosing(): void {
  const { cell } = useChoosing.getState();
  endStep();
  useChoosing.setState({ cell: undefined });
  if (cell === undefined) return;
  const { alternative, part } = cell;
  requestAnimationFrame(() => {
    const button = document.querySelector<HTMLElement>(`[data-cell="${alternative}/${part}"]`);
    (button ?? document.querySelector<HTMLElement>('.part-table button'))?.focus();
    hush(false);
  });
}
