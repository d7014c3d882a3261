/**
 * A traced view as a living drawing: parsed once, cloned per alternative, its parts found by
 * `data-part`. Lighting parts dims the car, draws the lit parts again on top, shaded as before, and rings them dark
 * and light, so that they stand out of any paint.
 */
import type { View } from '../opening/garage.ts';

const svgSpace = 'http://www.w3.org/2000/svg';
const parsed = new WeakMap<View, SVGSVGElement>();

/** A fresh copy of the view's drawing, with empty layers for marks and light on top. */
export function drawingOf(view: View): SVGSVGElement {
  const known = parsed.get(view) ?? drawingFrom(view.svg);
  parsed.set(view, known);
  return known.cloneNode(true) as SVGSVGElement;
}

function drawingFrom(text: string): SVGSVGElement {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  const drawing = document.importNode(root, true) as unknown as SVGSVGElement;
  drawing.removeAttribute('width');
  drawing.removeAttribute('height');
  drawing.setAttribute('aria-hidden', 'true');
  drawing.setAttribute('focusable', 'false');
  for (const name of ['marks', 'light']) {
    const layer = document.createElementNS(svgSpace, 'g');
    layer.setAttribute('class', name);
    drawing.append(layer);
  }
  return drawing;
}

/** Car part id of the traced path under an event. */
export const partUnder = (target: EventTarget | null): string | undefined =>
  (target as Element | null)?.closest('[data-part]')?.getAttribute('data-part') ?? undefined;

const pathsOf = (drawing: SVGSVGElement): SVGPathElement[] => [
  ...drawing.querySelectorAll<SVGPathElement>('path[data-part]'),
];

/** Car part id drawn at a point of the window, CSS pixels; glass is looked through. */
export function drawnPartAt(drawing: SVGSVGElement, x: number, y: number): string | undefined {
  const met = pathsOf(drawing).findLast((path) => {
    const toPath = path.getScreenCTM()?.inverse();
    if (toPath === undefined || path.closest('.glass') !== null) return false;
    return path.isPointInFill(new DOMPoint(x, y).matrixTransform(toPath));
  });
  return met?.getAttribute('data-part') ?? undefined;
}

/** The variable a path is filled with, and nothing else: `var(--paint-mirrors, #868c92)`. */
const filledWith = /^var\((--[\w-]+)/;

/**
 * Fills the drawing with these CSS variables. Each is set on the paths that use it: set on the whole
 * drawing, it would cost a look at every path.
 */
export function paintIn(drawing: SVGSVGElement, paint: ReadonlyMap<string, string>): void {
  if (paint.size === 0) return;
  for (const path of drawing.querySelectorAll<SVGPathElement>('path[fill]')) {
    const name = filledWith.exec(path.getAttribute('fill') ?? '')?.[1];
    const value = name === undefined ? undefined : paint.get(name);
    if (name !== undefined && value !== undefined) path.style.setProperty(name, value);
  }
}

/** Leaves the parts with these car ids undrawn; what they hid was never traced, so a gap stays. */
export function leaveOutIn(drawing: SVGSVGElement, carParts: ReadonlySet<string>): void {
  for (const path of pathsOf(drawing)) {
    path.style.display = carParts.has(path.dataset.part ?? '') ? 'none' : '';
  }
}

/** Draws a dashed line round the parts with these car ids, and takes away any other. */
export function markIn(drawing: SVGSVGElement, carParts: ReadonlySet<string>): void {
  const marked = pathsOf(drawing).filter((path) => carParts.has(path.dataset.part ?? ''));
  drawing
    .querySelector('g.marks')
    ?.replaceChildren(...outlines(marked, 'mark-dark'), ...outlines(marked, 'mark-light'));
}

/** Copies of paths for another layer, which nobody points at. */
const outlines = (paths: readonly Element[], className: string): Element[] =>
  paths.map((path) => {
    const copy = path.cloneNode(true) as Element;
    copy.removeAttribute('data-part');
    copy.setAttribute('class', className);
    return copy;
  });

/** Lights the parts with these car ids in the drawing, and puts out any other. */
export function lightIn(
  drawing: SVGSVGElement,
  carParts: ReadonlySet<string>,
  isGentle: boolean,
): void {
  const layer = drawing.querySelector('g.light');
  if (layer === null) return;
  layer.replaceChildren();
  drawing.classList.toggle('is-dimmed', carParts.size > 0 && !isGentle);
  if (carParts.size === 0) return;
  const lit = pathsOf(drawing).filter((path) => carParts.has(path.dataset.part ?? ''));
  if (lit.length === 0) return;
  const rings = [...outlines(lit, 'ring-dark'), ...outlines(lit, 'ring-light')];
  layer.append(...rings, ...undimmed(drawing, lit));
}

let clips = 0;

/** The drawing again, shade and lamp included, cut out along the lit parts. */
function undimmed(drawing: SVGSVGElement, lit: readonly Element[]): Element[] {
  const clip = document.createElementNS(svgSpace, 'clipPath');
  clips += 1;
  clip.id = `lit-${clips}`;
  for (const path of lit) {
    const copy = document.createElementNS(svgSpace, 'path');
    copy.setAttribute('d', path.getAttribute('d') ?? '');
    copy.setAttribute('clip-rule', 'evenodd');
    clip.append(copy);
  }
  const again = document.createElementNS(svgSpace, 'g');
  again.setAttribute('clip-path', `url(#${clip.id})`);
  again.setAttribute('pointer-events', 'none');
  for (const child of drawing.children) {
    if (child.matches('.shadow, .marks, .light')) continue;
    const copy = child.cloneNode(true) as Element;
    copy.removeAttribute('data-part');
    again.append(copy);
  }
  return [clip, again];
}
