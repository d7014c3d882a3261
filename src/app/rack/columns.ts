/** How many spoons stand beside each other in a box of this width? At least one. */
import { type RefObject, useLayoutEffect, useState } from 'react';

interface Columns {
  readonly columns: number;
  /** Height of a line of small text as the reader has it, CSS pixels to a rem. */
  readonly remPx: number;
}

/** Columns of at least `narrowestRem` in the box, followed as it changes. */
export function useColumns(box: RefObject<HTMLElement | null>, narrowestRem: number): Columns {
  const [found, setFound] = useState<Columns>({ columns: 1, remPx: 16 });
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = (): void => {
      const remPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
      const columns = Math.max(1, Math.floor(element.clientWidth / (narrowestRem * remPx)));
      setFound((before) =>
        before.columns === columns && before.remPx === remPx ? before : { columns, remPx },
      );
    };
    measure();
    const watching = new ResizeObserver(measure);
    watching.observe(element);
    return () => watching.disconnect();
  }, [box, narrowestRem]);
  return found;
}
