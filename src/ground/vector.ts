/** Small fixed-size vector arithmetic for meshes and cameras; metres unless a caller says otherwise. */
export type Vector3 = readonly [x: number, y: number, z: number];

export const add = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vector3, b: Vector3): Vector3 => [
  a[0] - b[0],
  a[1] - b[1],
  a[2] - b[2],
];
export const scale = (a: Vector3, factor: number): Vector3 => [
  a[0] * factor,
  a[1] * factor,
  a[2] * factor,
];
export const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const lengthOf = (a: Vector3): number => Math.hypot(a[0], a[1], a[2]);

/** Unit vector along `a`; the zero vector stays zero. */
export function normalize(a: Vector3): Vector3 {
  const length = lengthOf(a);
  return length === 0 ? a : scale(a, 1 / length);
}

/** Value at `t` on the straight line from `from` (t = 0) to `to` (t = 1). */
export const interpolate = (from: number, to: number, t: number): number => from + (to - from) * t;
export const interpolate3 = (from: Vector3, to: Vector3, t: number): Vector3 => [
  interpolate(from[0], to[0], t),
  interpolate(from[1], to[1], t),
  interpolate(from[2], to[2], t),
];

export const clamp = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value));
