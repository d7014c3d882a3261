/**
 * From how far off does a thing just fill the view? Exact in perspective: every point gives four
 * planes that must hold it, and the eye goes as near as the tightest pair of planes allows, then
 * sideways until the picture of the points lies in the middle.
 *
 * In: points of a mesh, full-size mm; a direction and a field, degrees; the aspect (width over
 * height) of the view. Out: a pose. Points less than 1 mm apart count as one.
 */
import type { Mesh } from '../../car/mesh.ts';
import { add, scale, type Vector3 } from '../../ground/vector.ts';
import { halfTangentOf, type Pose, viewFrame } from './pose.ts';

/** x, y, z in turn, mm. */
export type Points = Float32Array;

export interface Fitting {
  readonly azimuthDegrees: number;
  readonly elevationDegrees: number;
  readonly fieldDegrees: number;
  /** Width of the view over its height. */
  readonly aspect: number;
  /** Share of the width or the height that is filled, whichever is full first. */
  readonly fill: number;
  /** The nearest point stays at least this far from the eye, mm. */
  readonly nearestMm: number;
}

/** Whole millimetres of a point as one number; good for ±65 m. */
export const cellOf = (x: number, y: number, z: number): number =>
  (Math.round(x) * 131072 + Math.round(y)) * 131072 + Math.round(z);

/** The corners of the triangles that `isMeant` picks, each once. */
export function pointsOf(mesh: Mesh, isMeant: (triangle: number) => boolean): Points {
  const { positions } = mesh;
  const met = new Set<number>();
  const points: number[] = [];
  for (let triangle = 0; triangle < mesh.nodeOf.length; triangle++) {
    if (!isMeant(triangle)) continue;
    for (let at = triangle * 9; at < triangle * 9 + 9; at += 3) {
      const [x, y, z] = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
      const cell = cellOf(x, y, z);
      if (met.has(cell)) continue;
      met.add(cell);
      points.push(x, y, z);
    }
  }
  return Float32Array.from(points);
}

/** Ends of the picture of the points along the view's axes, as tangents from the view's middle. */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  /** Depth of the nearest point, mm; what lies behind the eye has no picture. */
  readonly nearest: number;
}

/** The points along the axes of a view from the origin: right, up, forward in turn. */
function along(points: Points, pose: Pose): Float64Array {
  const axes = viewFrame(pose);
  const turned = new Float64Array(points.length);
  for (let at = 0; at < points.length; at += 3) {
    const [x, y, z] = [points[at]!, points[at + 1]!, points[at + 2]!];
    turned[at] = axes.right[0] * x + axes.right[1] * y + axes.right[2] * z;
    turned[at + 1] = axes.up[0] * x + axes.up[1] * y + axes.up[2] * z;
    turned[at + 2] = axes.forward[0] * x + axes.forward[1] * y + axes.forward[2] * z;
  }
  return turned;
}

function extentFrom(turned: Float64Array, [x, y, z]: Vector3): Extent {
  let [left, right, bottom, top, nearest] = [Infinity, -Infinity, Infinity, -Infinity, Infinity];
  for (let at = 0; at < turned.length; at += 3) {
    const depth = turned[at + 2]! - z;
    const [h, v] = [(turned[at]! - x) / depth, (turned[at + 1]! - y) / depth];
    if (h < left) left = h;
    if (h > right) right = h;
    if (v < bottom) bottom = v;
    if (v > top) top = v;
    if (depth < nearest) nearest = depth;
  }
  return { left, right, bottom, top, nearest };
}

/** How the points lie in the view of a pose. */
export function extentOf(points: Points, pose: Pose): Extent {
  const { eye, right, up, forward } = viewFrame(pose);
  const place = (axis: Vector3): number => axis[0] * eye[0] + axis[1] * eye[1] + axis[2] * eye[2];
  return extentFrom(along(points, pose), [place(right), place(up), place(forward)]);
}

/** Enough rounds to centre any view to far below a pixel; each gains two digits or more. */
const rounds = 8;

/**
 * The pose from which the points fill their share of the view and lie in its middle; its target
 * lies half way between their nearest and farthest depth.
 * @throws RangeError where there are no points, or the aspect is no positive number.
 */
export function fitted(points: Points, fitting: Fitting): Pose {
  const { aspect, fill, nearestMm, ...direction } = fitting;
  if (points.length === 0) throw new RangeError('nothing to frame: the car has no such part');
  if (!(aspect > 0 && aspect < Infinity)) {
    throw new RangeError(`aspect ${aspect}: expected width over height of the view, above 0`);
  }
  const origin: Pose = { target: [0, 0, 0], distanceMm: 0, ...direction };
  const turned = along(points, origin);
  const tall = halfTangentOf(origin) * fill;
  const wide = tall * aspect;

  let [right, left, top, bottom] = [-Infinity, -Infinity, -Infinity, -Infinity];
  let [near, far] = [Infinity, -Infinity];
  for (let at = 0; at < turned.length; at += 3) {
    const [x, y, z] = [turned[at]!, turned[at + 1]!, turned[at + 2]!];
    right = Math.max(right, x - wide * z);
    left = Math.max(left, -x - wide * z);
    top = Math.max(top, y - tall * z);
    bottom = Math.max(bottom, -y - tall * z);
    near = Math.min(near, z);
    far = Math.max(far, z);
  }
  const z = Math.min(-(right + left) / (2 * wide), -(top + bottom) / (2 * tall), near - nearestMm);
  const middle = (near + far) / 2;
  let [x, y] = [(right - left) / 2, (top - bottom) / 2];
  for (let round = 0; round < rounds; round++) {
    const extent = extentFrom(turned, [x, y, z]);
    x += ((extent.left + extent.right) / 2) * (middle - z);
    y += ((extent.bottom + extent.top) / 2) * (middle - z);
  }
  const axes = viewFrame(origin);
  const target = add(add(scale(axes.right, x), scale(axes.up, y)), scale(axes.forward, middle));
  return { ...direction, target, distanceMm: middle - z };
}
