/**
 * Which part lies under the pointer? The nearest opaque triangle along the line of sight; glass is
 * looked through. In: a mesh (full-size mm), the camera's frame and field, a point of the view
 * −1…1 with y up [MollerTrumbore1997]. Out: an index into the mesh's parts and the place that was met,
 * or undefined beside the car.
 */
import { type Mesh, partOf } from '../../car/mesh.ts';
import { add, cross, dot, scale, subtract, type Vector3 } from '../../ground/vector.ts';

export interface Sightline {
  readonly eye: Vector3;
  readonly toward: Vector3;
}

/** The line of sight through a point of the view. */
export function sightlineThrough(
  frame: {
    readonly eye: Vector3;
    readonly right: Vector3;
    readonly up: Vector3;
    readonly forward: Vector3;
  },
  fieldDegrees: number,
  aspect: number,
  x: number,
  y: number,
): Sightline {
  const half = Math.tan((fieldDegrees * Math.PI) / 360);
  const aside = add(scale(frame.right, x * half * aspect), scale(frame.up, y * half));
  return { eye: frame.eye, toward: add(frame.forward, aside) };
}

export interface Met {
  /** Index into the mesh's parts. */
  readonly part: number;
  /** Where, full-size mm. */
  readonly place: Vector3;
}

/** What a line of sight meets first. */
export function metAlong(mesh: Mesh, { eye, toward }: Sightline): Met | undefined {
  let nearest = Number.POSITIVE_INFINITY;
  let met: number | undefined;
  const { positions, nodeOf } = mesh;
  for (let triangle = 0; triangle < nodeOf.length; triangle++) {
    const at = triangle * 9;
    const distance = distanceTo(positions, at, eye, toward);
    if (distance === undefined || distance >= nearest) continue;
    const part = partOf(mesh, triangle);
    if (mesh.parts[part]!.isGlass) continue;
    nearest = distance;
    met = part;
  }
  return met === undefined ? undefined : { part: met, place: add(eye, scale(toward, nearest)) };
}

/** Distance to a triangle in units of `toward`. */
function distanceTo(
  positions: Float32Array,
  at: number,
  eye: Vector3,
  toward: Vector3,
): number | undefined {
  const a: Vector3 = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
  const ab: Vector3 = [
    positions[at + 3]! - a[0],
    positions[at + 4]! - a[1],
    positions[at + 5]! - a[2],
  ];
  const ac: Vector3 = [
    positions[at + 6]! - a[0],
    positions[at + 7]! - a[1],
    positions[at + 8]! - a[2],
  ];
  const across = cross(toward, ac);
  const facing = dot(ab, across);
  if (Math.abs(facing) < 1e-9) return undefined;
  const way = subtract(eye, a);
  const u = dot(way, across) / facing;
  if (u < 0 || u > 1) return undefined;
  const turned = cross(way, ab);
  const v = dot(toward, turned) / facing;
  if (v < 0 || u + v > 1) return undefined;
  const distance = dot(ac, turned) / facing;
  return distance > 0 ? distance : undefined;
}
