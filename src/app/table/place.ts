/**
 * Where the spoons open: under what was clicked, inside the window. On a phone they are a sheet at
 * the foot, and the page moves so that the car being changed stands above it.
 */
import { carElementId } from '../cars/element.ts';

const edge = 12;
const narrow = 640;
/** Of the window's height the spoons may take, so that the cars stay in sight above them. */
const mostOfWindow = 0.46;

/** Places the dialog beside the clicked rectangle; CSS pixels in the window. */
export function placeBeside(dialog: HTMLDialogElement, from: DOMRect): void {
  const { style } = dialog;
  for (const name of ['top', 'left', 'maxHeight'] as const) style[name] = '';
  if (window.innerWidth < narrow) return;
  const { width, height } = dialog.getBoundingClientRect();
  const below = window.innerHeight - from.bottom - 2 * edge;
  const tallest = Math.max(below, mostOfWindow * window.innerHeight);
  const top =
    height <= below
      ? from.bottom + edge / 2
      : window.innerHeight - Math.min(height, tallest) - edge;
  const right = window.innerWidth - width - edge;
  style.top = `${top}px`;
  style.left = `${Math.max(edge, Math.min(from.left, right))}px`;
  style.maxHeight = `${window.innerHeight - top - edge}px`;
}

/**
 * On a phone, brings the car of an alternative to the top of the window; the answer moves the page
 * back to where it was.
 */
export function bringIntoSight(alternative: string): () => void {
  if (window.innerWidth >= narrow) return () => {};
  const { scrollX, scrollY } = window;
  document
    .getElementById(carElementId(alternative))
    ?.scrollIntoView({ block: 'start', inline: 'start' });
  return () => window.scrollTo(scrollX, scrollY);
}
