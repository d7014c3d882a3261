/**
 * Where does a point lie in a view? The turntable worked out by hand, independent of the camera's
 * own axes: turn the world by −azimuth about the upright, tip it by the elevation about the level
 * line across the view, and the eye stands on +z at its distance, looking back. Then a point at
 * depth d shows at x / (d · tan(field / 2) · aspect), y / (d · tan(field / 2)), each −1…1.
 */
import type { Mesh } from '../../../src/car/mesh.ts';
import type { Pose } from '../../../src/stage/camera/pose.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
}

export function projected(pose: Pose, point: readonly number[], aspect: number): Spot {
  const azimuth = (pose.azimuthDegrees * Math.PI) / 180;
  const elevation = (pose.elevationDegrees * Math.PI) / 180;
  const [dx, dy, dz] = [0, 1, 2].map((axis) => point[axis]! - pose.target[axis]!) as [
    number,
    number,
    number,
  ];
  const across = dx * Math.cos(azimuth) - dz * Math.sin(azimuth);
  const toward = dx * Math.sin(azimuth) + dz * Math.cos(azimuth);
  const upward = dy * Math.cos(elevation) - toward * Math.sin(elevation);
  const depth = pose.distanceMm - (dy * Math.sin(elevation) + toward * Math.cos(elevation));
  const tall = depth * Math.tan((pose.fieldDegrees * Math.PI) / 360);
  return { x: across / (tall * aspect), y: upward / tall, depth };
}

/** The picture's edges round every corner of the triangles that `isMeant` picks. */
export function edges(
  mesh: Mesh,
  pose: Pose,
  aspect: number,
  isMeant: (triangle: number) => boolean = () => true,
) {
  let [left, right, bottom, top, nearest] = [Infinity, -Infinity, Infinity, -Infinity, Infinity];
  for (let triangle = 0; triangle < mesh.nodeOf.length; triangle++) {
    if (!isMeant(triangle)) continue;
    for (let at = triangle * 9; at < triangle * 9 + 9; at += 3) {
      const { x, y, depth } = projected(pose, [...mesh.positions.subarray(at, at + 3)], aspect);
      left = Math.min(left, x);
      right = Math.max(right, x);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
      nearest = Math.min(nearest, depth);
    }
  }
  return { left, right, bottom, top, nearest };
}

/** Where the eye stands, from the definition of azimuth and elevation. */
export const eyeBy = (pose: Pose): [number, number, number] => {
  const azimuth = (pose.azimuthDegrees * Math.PI) / 180;
  const elevation = (pose.elevationDegrees * Math.PI) / 180;
  const level = pose.distanceMm * Math.cos(elevation);
  return [
    pose.target[0] + level * Math.sin(azimuth),
    pose.target[1] + pose.distanceMm * Math.sin(elevation),
    pose.target[2] + level * Math.cos(azimuth),
  ];
};
