/**
 * How large will the model really look? At true size the model in the view spans the same angle as
 * the built model would, seen from where the builder stands.
 *
 * In: a pose; the build's scale (24 for 1:24), the distance the model is looked at from (mm at
 * model size), the size of the view in CSS pixels. Out: a pose, or a factor. Rests on the reference
 * pixel [CSSValues2024]: 1/96 inch seen from 28 inches, about 0.0213°. A screen set up otherwise,
 * or looked at from elsewhere, is out by as much; the page cannot know.
 */
import type { Mesh } from '../../car/mesh.ts';
import { extentOf } from './fit.ts';
import { pointsOfFrame } from './frame.ts';
import { halfTangentOf, type Pose } from './pose.ts';

export interface Viewing {
  /** 24 for a model at 1:24. */
  readonly scale: number;
  /** From the eye to the model, mm. */
  readonly viewingMm: number;
  /** Height of the view, CSS pixels. */
  readonly viewHeightPx: number;
}

/** Distance of the reference pixel from the eye, in reference pixels: 28 inches of 96 each. */
const pixelsAway = 28 * 96;

/**
 * The same look at true size: the eye `viewingMm` from the target at model size, and a field in
 * which one CSS pixel spans the reference pixel's angle in the middle of the view.
 * @throws RangeError where scale, distance or height is no positive number.
 */
export function trueSizePose(pose: Pose, viewing: Viewing): Pose {
  for (const [name, value] of Object.entries(viewing)) {
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(`${name} ${value}: expected a number above 0`);
    }
  }
  const { scale, viewingMm, viewHeightPx } = viewing;
  const halfField = Math.atan(viewHeightPx / 2 / pixelsAway);
  return { ...pose, distanceMm: viewingMm * scale, fieldDegrees: (halfField * 360) / Math.PI };
}

/**
 * How many times larger than the view of this aspect (width over height) the picture of the car is
 * from a pose; up to 1 it fits, once in the view's middle. Infinite where the eye is inside the car.
 */
export function overflowOf(mesh: Mesh, pose: Pose, aspect: number): number {
  const points = pointsOfFrame(mesh, 'car');
  if (points === undefined) return 0;
  const { left, right, bottom, top, nearest } = extentOf(points, pose);
  if (nearest <= 0) return Infinity;
  const tall = 2 * halfTangentOf(pose);
  return Math.max((right - left) / (tall * aspect), (top - bottom) / tall);
}
