/**
 * Keeps a place as high as it was when all was told, while something in it is being worked out anew.
 * Heights are noted when they change, never asked for: a change need not lay the page out twice.
 * The style sheet of the place makes `--room` its least height.
 */
import { type RefObject, useLayoutEffect, useRef } from 'react';

/** To be put on something in the place; the place is the nearest `data-mends` around it. */
export function useRoom(isThere: boolean, isKept: boolean): RefObject<HTMLDivElement | null> {
  const inside = useRef<HTMLDivElement>(null);
  const height = useRef(0);
  useLayoutEffect(() => {
    const place = inside.current?.closest<HTMLElement>('[data-mends]');
    if (!isThere || !place) return;
    if (isKept) {
      place.style.setProperty('--room', `${height.current}px`);
      return () => place.style.removeProperty('--room');
    }
    const watch = new ResizeObserver(([entry]) => {
      height.current = entry?.borderBoxSize[0]?.blockSize ?? 0;
    });
    watch.observe(place);
    return () => watch.disconnect();
  }, [isThere, isKept]);
  return inside;
}
