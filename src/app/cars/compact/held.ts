/**
 * Cars step aside for a panel along the edge, and nothing beneath them may move for that: the stage
 * keeps the height it had, CSS pixels in `--held`, for as long as the panel is there.
 */
import { type RefObject, useLayoutEffect } from 'react';

/** Notes the height of the stage while no panel is there. */
export function useHeld(stage: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const element = stage.current;
    if (element === null) return;
    const watching = new ResizeObserver(() => {
      if (element.dataset.size === 'compact') return;
      if (document.querySelector('.dialog-side[open]') !== null) return;
      element.style.setProperty('--held', `${element.getBoundingClientRect().height}px`);
    });
    watching.observe(element);
    return () => watching.disconnect();
  }, [stage]);
}
