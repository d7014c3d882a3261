/**
 * Which part lies under the pointer? The nearest opaque triangle along the line of sight; glass is
 * looked through. In: a mesh (full-size mm), the camera's frame and field, a point of the view
 * −1…1 with y up [MollerTrumbore1997]. Out: an index into the mesh's parts and the place that was met,
 * or undefined beside the car.
 */
import { type Mesh, partOf } from '../../car/mesh.ts';
import { add, scale, type Vector3 } from '../../ground/vector.ts';

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

/** Distance to a triangle in units of `toward`; plain numbers, since every move of a hand asks. */
function distanceTo(
  positions: Float32Array,
  at: number,
  [eyeX, eyeY, eyeZ]: Vector3,
  [x, y, z]: Vector3,
): number | undefined {
  const ax = positions[at]!;
  const ay = positions[at + 1]!;
  const az = positions[at + 2]!;
  const bx = positions[at + 3]! - ax;
  const by = positions[at + 4]! - ay;
  const bz = positions[at + 5]! - az;
  const cx = positions[at + 6]! - ax;
  const cy = positions[at + 7]! - ay;
  const cz = positions[at + 8]! - az;
  const px = y * cz - z * cy;
  const py = z * cx - x * cz;
  const pz = x * cy - y * cx;
  const facing = bx * px + by * py + bz * pz;
  if (Math.abs(facing) < 1e-9) return undefined;
  const wx = eyeX - ax;
  const wy = eyeY - ay;
  const wz = eyeZ - az;
  const u = (wx * px + wy * py + wz * pz) / facing;
  if (u < 0 || u > 1) return undefined;
  const qx = wy * bz - wz * by;
  const qy = wz * bx - wx * bz;
  const qz = wx * by - wy * bx;
  const v = (x * qx + y * qy + z * qz) / facing;
  if (v < 0 || u + v > 1) return undefined;
  const distance = (cx * qx + cy * qy + cz * qz) / facing;
  return distance > 0 ? distance : undefined;
}
