/**
 * Which part of which car lies under a point of the window? Answered by the live cars where they
 * are, else by the drawings; by geometry alone, so that it also holds while a dialog keeps the
 * page from being touched. In: CSS pixels of the window.
 */
import { drawnPartAt } from '../cars/trace.ts';
import { useViewing } from './viewing.ts';

export interface Met {
  /** The alternative on whose stand the point lies. */
  readonly alternative: string;
  /** Id of the part in the car's sight table; undefined beside the car. */
  readonly carPart: string | undefined;
  /** The stand itself, CSS pixels of the window. */
  readonly box: DOMRect;
}

/** Part of the car at a point of any stand, −1…1 across it and upward. */
type PartAt = (x: number, y: number) => string | undefined;
let liveParts: PartAt | undefined;

/** Lets the live cars answer; what it returns stops that. */
export function serveParts(partAt: PartAt): () => void {
  liveParts = partAt;
  return () => {
    if (liveParts === partAt) liveParts = undefined;
  };
}

const holds = ({ left, right, top, bottom }: DOMRect, x: number, y: number): boolean =>
  x >= left && x < right && y >= top && y < bottom;

/** What lies under a point of the window; undefined away from every stand. */
export function metAt(x: number, y: number): Met | undefined {
  const covers = document.querySelectorAll('dialog[open]');
  if ([...covers].some((cover) => holds(cover.getBoundingClientRect(), x, y))) return undefined;
  for (const stand of document.querySelectorAll<HTMLElement>('[data-stand]')) {
    const box = stand.getBoundingClientRect();
    const strip = stand.closest('.cars')?.getBoundingClientRect() ?? box;
    if (!holds(box, x, y) || !holds(strip, x, y)) continue;
    return { alternative: stand.dataset.stand ?? '', carPart: carPartIn(stand, box, x, y), box };
  }
  return undefined;
}

function carPartIn(stand: HTMLElement, box: DOMRect, x: number, y: number): string | undefined {
  if (useViewing.getState().liveness === 'live' && liveParts !== undefined) {
    const { left, top, width, height } = box;
    return liveParts((2 * (x - left)) / width - 1, 1 - (2 * (y - top)) / height);
  }
  const drawing = stand.parentElement?.querySelector<SVGSVGElement>('.picture svg');
  return drawing == null ? undefined : drawnPartAt(drawing, x, y);
}
