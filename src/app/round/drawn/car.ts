/**
 * The car of one alternative as a drawing: painted for it, without parts it does not have, and with
 * no more around it than it needs, since a phone is narrow.
 */
import type { Alternative, Build } from '../../../build/build.ts';
import { absentCarParts } from '../../../build/fitted.ts';
import { paintOf } from '../../cars/paint.ts';
import { leaveOutIn } from '../../cars/trace.ts';
import type { Car, View } from '../../opening/garage.ts';

/** Paints a drawing of a view as an alternative. */
export function paintCar(
  drawing: SVGSVGElement,
  build: Build,
  alternative: Alternative,
  { sight }: Pick<Car, 'sight'>,
): void {
  for (const [name, value] of paintOf(build, alternative, sight)) {
    drawing.style.setProperty(name, value);
  }
  leaveOutIn(drawing, absentCarParts(build, sight.parts));
}

/** Air around the car, as a share of its width. */
const air = 0.015;
const frames = new WeakMap<View, string>();

/** Takes away what lies around the car; the drawing must be in the page. */
export function frameCar(drawing: SVGSVGElement, view: View): void {
  const frame = frames.get(view) ?? frameOf(drawing);
  if (frame === undefined) return;
  frames.set(view, frame);
  drawing.setAttribute('viewBox', frame);
}

function frameOf(drawing: SVGSVGElement): string | undefined {
  const boxes = [...drawing.querySelectorAll<SVGPathElement>('path[data-part]')].map((path) =>
    path.getBBox(),
  );
  const left = Math.min(...boxes.map(({ x }) => x));
  const top = Math.min(...boxes.map(({ y }) => y));
  const width = Math.max(...boxes.map((box) => box.x + box.width)) - left;
  const height = Math.max(...boxes.map((box) => box.y + box.height)) - top;
  const around = width * air;
  if (!(width > 0 && height > 0)) return undefined;
  return [left - around, top - around, width + 2 * around, height + 2 * around]
    .map((value) => Math.round(value))
    .join(' ');
}
