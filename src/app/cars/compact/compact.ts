/**
 * How much of the window do the cars keep while one works beneath them? The stage is held at the
 * window's upper edge. At first the page slides over what is said beneath the cars; once it would
 * slide over the cars themselves they become small, and the page slides on over the bare floor
 * before them; once that is gone too it passes beneath.
 *
 * The stage keeps its place in the flow, whatever its size: what it is shorter, its floor or its
 * margin is longer. So nothing beneath it moves, and its size can never change the scrolling it
 * depends on. It is whole, over the page, while a key's focus is in it or its switches are asked
 * for.
 */
import { type RefObject, useLayoutEffect } from 'react';

/** `grown`: whole, over the page, though the page has been scrolled. */
type Size = 'whole' | 'grown' | 'compact';

/** Where a small stage is worth having: windows that show the cars side by side. */
const isRoomy = matchMedia('(min-width: 60.01em) and (min-height: 34em)');
/** The switches asked for go again once the page has been scrolled by so much, CSS pixels. */
const scrolledAway = 60;
/** By so much the cars are taller, rem, while there is room for it; the style sheet says the same. */
const taller = 4.75;
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
    /** How far the page may slide over the whole stage before it reaches the cars. */
    let spare = 0;
    let wide = -1;
    /** What the page keeps clear at the window's upper edge where it scrolls to something. */
    let clear = 0;
    let askedAt: number | undefined;

    const heightOf = (): number => element.getBoundingClientRect().height;
    const standsEnd = (): number => {
      const stand = element.querySelector('.picture-frame')?.getBoundingClientRect();
      return (stand?.bottom ?? 0) - element.getBoundingClientRect().top;
    };
    const show = (size: Size): void => {
      if (element.dataset.size !== size) element.dataset.size = size;
    };
    /** Fills what is bare, CSS pixels, between small cars and what the page has reached. */
    const stretch = (bare: number): void => {
      const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      if (bare <= 0) element.removeAttribute('data-floor');
      else element.dataset.floor = bare < taller * rem ? 'low' : 'high';
    };
    const tell = (): void => {
      const shorter = isAlways ? 0 : Math.max(0, tall.whole - tall.compact);
      element.style.setProperty('--shorter', `${shorter}px`);
      // Each new value restyles the whole page. On the bench only scrolling goes by it, and a line
      // more or less there is worth none.
      clear = isAlways ? tall.compact : Math.max(clear, tall.compact);
      root.setProperty('--stage-compact', `${isRoomy.matches ? clear : 0}px`);
    };
    const settle = (): void => {
      const scrolled = -frame.getBoundingClientRect().top;
      if (askedAt !== undefined && Math.abs(scrolled - askedAt) > scrolledAway) askedAt = undefined;
      if (!isRoomy.matches || element.dataset.filling !== undefined) {
        show(isAlways && element.dataset.filling === undefined ? 'compact' : 'whole');
        return;
      }
      const isBeyond = isAlways || scrolled >= Math.max(1, spare);
      stretch(isAlways ? 0 : tall.whole - scrolled - tall.compact);
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
        clear = 0;
        show('whole');
        tall.whole = heightOf();
        spare = tall.whole - standsEnd();
        element.removeAttribute('data-floor');
        show('compact');
        tall.compact = heightOf();
      } else if (element.dataset.size !== 'compact') {
        tall.whole = heightOf();
        spare = tall.whole - standsEnd();
      } else if (element.dataset.floor === undefined) {
        tall.compact = heightOf();
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
