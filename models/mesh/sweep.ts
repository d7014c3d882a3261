/**
 * Shapes made by carrying a profile: a lathe turns it about an axis, a tube carries a ring along
 * a path, a ribbon carries a strip. Metres. Each adds to a solid and faces outwards.
 */
import {
  add,
  cross,
  lengthOf,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../src/ground/vector.ts';
import type { PartOf, Solid } from './solid.ts';

/** A point of a turned profile: distance from the axis, height along it. */
export type Turned = readonly [radius: number, height: number];

/**
 * Turns `profile` about +z in `segments` steps. Seen with the axis up, a profile that climbs on
 * its right side faces outwards.
 */
export function lathe(
  solid: Solid,
  part: PartOf,
  profile: readonly Turned[],
  segments: number,
): void {
  const rows = Array.from({ length: segments }, (_, k) => {
    const angle = (2 * Math.PI * k) / segments;
    return profile.map(
      ([radius, height]): Vector3 => [radius * Math.cos(angle), radius * Math.sin(angle), height],
    );
  });
  const named = typeof part === 'string' ? part : (row: number, step: number) => part(step, row);
  solid.grid(named, rows, { rows: true });
}

export interface TubeShape {
  /** Half width across the path and across `up`; a function of the share 0–1 of the path. */
  readonly radius: number | ((along: number) => number);
  /** Half height towards `up`, where it differs. */
  readonly height?: number;
  readonly sides?: number;
  readonly isClosed?: boolean;
  /** Where the ring's height points, at each path point. */
  readonly up?: Vector3 | ((index: number) => Vector3);
}

/** A round or oval bar along `path`, its ends capped unless it is closed on itself. */
export function tube(solid: Solid, part: string, path: readonly Vector3[], shape: TubeShape): void {
  const { radius, height, sides = 8, isClosed = false, up = [0, 0, 1] } = shape;
  const from = solid.triangles.length;
  const count = path.length;
  const rings = path.map((point, k) => {
    const { across, over } = frameAt(path, k, isClosed, typeof up === 'function' ? up(k) : up);
    const half = typeof radius === 'function' ? radius(k / (count - 1)) : radius;
    return Array.from({ length: sides }, (_, side) => {
      const angle = ((side + 0.5) / sides) * 2 * Math.PI;
      return add(
        point,
        add(scale(across, half * Math.cos(angle)), scale(over, (height ?? half) * Math.sin(angle))),
      );
    });
  });
  solid.grid(part, rings, { rows: isClosed, columns: true });
  if (!isClosed) solid.fan(part, rings[0]!).fan(part, [...rings[count - 1]!].reverse());
  solid.closedFrom(from);
}

/**
 * A flat strap along `path`: `width` across, standing `thickness` proud along each point's
 * `normals`, with both edges turned down; its underside is left open.
 */
export function strap(
  solid: Solid,
  part: string,
  path: readonly Vector3[],
  normals: readonly Vector3[],
  width: number,
  thickness: number,
): void {
  const rows = path.map((point, k) => {
    const normal = normalize(normals[k]!);
    const ahead = normalize(
      subtract(path[Math.min(path.length - 1, k + 1)]!, path[Math.max(0, k - 1)]!),
    );
    const across = normalize(cross(normal, ahead));
    const top = add(point, scale(normal, thickness));
    const half = width / 2;
    return [
      add(point, scale(across, -half)),
      add(top, scale(across, -half)),
      add(top, scale(across, half)),
      add(point, scale(across, half)),
    ];
  });
  const from = solid.triangles.length;
  solid.grid(part, rows);
  solid.facingFrom(from, (centre) => {
    let nearest = 0;
    path.forEach((point, k) => {
      const gain = lengthOf(subtract(point, centre)) < lengthOf(subtract(path[nearest]!, centre));
      if (gain) nearest = k;
    });
    const inner = subtract(path[nearest]!, scale(normalize(normals[nearest]!), thickness));
    return add(centre, subtract(centre, inner));
  });
}

function frameAt(
  path: readonly Vector3[],
  k: number,
  isClosed: boolean,
  up: Vector3,
): { across: Vector3; over: Vector3 } {
  const count = path.length;
  const before = path[isClosed ? (k - 1 + count) % count : Math.max(0, k - 1)]!;
  const after = path[isClosed ? (k + 1) % count : Math.min(count - 1, k + 1)]!;
  const ahead = normalize(subtract(after, before));
  const side = cross(ahead, up);
  const across = normalize(lengthOf(side) < 1e-3 ? cross(ahead, [1, 0, 0]) : side);
  return { across, over: cross(across, ahead) };
}
