/**
 * How much of the window do the cars keep while one works beneath them? Whole at the top of the
 * page; once the page has been scrolled so far that a small stage covers no more than what has left
 * the window anyway, small and held at the window's upper edge.
 *
 * The stage keeps its place in the flow, whatever its size: what it is shorter, its margin is
 * longer. So nothing beneath it moves, and its size can never change the scrolling it depends on.
 * It is whole again, over the page, while a key's focus is in it or its switches are asked for.
 */
import { type RefObject, useLayoutEffect } from 'react';

/** `grown`: whole, over the page, though the page has been scrolled. */
type Size = 'whole' | 'grown' | 'compact';

/** Where a small stage is worth having: windows that show the cars side by side. */
const isRoomy = matchMedia('(min-width: 60.01em) and (min-height: 34em)');
/** The switches asked for go again once the page has been scrolled by so much, CSS pixels. */
const scrolledAway = 60;
/** Marks the button that asks for the whole stage. */
export const asksForWhole = 'data-asks-for-whole';

/** Sizes the stage, which is the first thing in its parent; `isAlways` keeps it small. */
export function useCompact(stage: RefObject<HTMLElement | null>, isAlways: boolean): void {
  useLayoutEffect(() => {
    const element = stage.current;
    const frame = element?.parentElement;
    if (!element || !frame) return;
    const root = document.documentElement.style;
    const tall = { whole: 0, compact: 0 };
    let wide = -1;
    let askedAt: number | undefined;

    const heightOf = (): number => element.getBoundingClientRect().height;
    const show = (size: Size): void => {
      if (element.dataset.size !== size) element.dataset.size = size;
    };
    const tell = (): void => {
      const shorter = isAlways ? 0 : Math.max(0, tall.whole - tall.compact);
      element.style.setProperty('--shorter', `${shorter}px`);
      root.setProperty('--stage-compact', `${isRoomy.matches ? tall.compact : 0}px`);
    };
    const settle = (): void => {
      const scrolled = -frame.getBoundingClientRect().top;
      if (askedAt !== undefined && Math.abs(scrolled - askedAt) > scrolledAway) askedAt = undefined;
      if (!isRoomy.matches || element.dataset.filling !== undefined) {
        show(isAlways && element.dataset.filling === undefined ? 'compact' : 'whole');
        return;
      }
      const isBeyond = isAlways || scrolled >= Math.max(1, tall.whole - tall.compact);
      const isWanted =
        askedAt !== undefined ||
        element.querySelector(`:focus-visible:not([${asksForWhole}])`) !== null;
      if (isWanted && (isBeyond || scrolled > 0)) show('grown');
      else show(isBeyond ? 'compact' : 'whole');
    };
    const measure = (): void => {
      if (element.dataset.filling !== undefined) return;
      if (element.offsetWidth !== wide) {
        wide = element.offsetWidth;
        show('whole');
        tall.whole = heightOf();
        show('compact');
        tall.compact = heightOf();
      } else {
        tall[element.dataset.size === 'compact' ? 'compact' : 'whole'] = heightOf();
      }
      tell();
      settle();
    };
    measure();
    const listening = new AbortController();
    const { signal } = listening;
    const watching = new ResizeObserver(measure);
    watching.observe(element);
    window.addEventListener('scroll', settle, { passive: true, signal });
    isRoomy.addEventListener('change', measure, { signal });
    element.addEventListener('focusin', settle, { signal });
    // Where the focus goes next is known only afterwards.
    element.addEventListener('focusout', () => requestAnimationFrame(settle), { signal });
    element.addEventListener(
      'click',
      ({ target }) => {
        if (!(target as Element).closest(`[${asksForWhole}]`)) return;
        askedAt = -frame.getBoundingClientRect().top;
        settle();
      },
      { signal },
    );
    const putAway = ({ target }: Event): void => {
      if (askedAt === undefined || element.contains(target as Node)) return;
      askedAt = undefined;
      settle();
    };
    document.addEventListener('pointerdown', putAway, { signal });
    return () => {
      listening.abort();
      watching.disconnect();
    };
  }, [stage, isAlways]);
}
