/**
 * From where are the cars looked at now, and how does that change under a hand or over time?
 * One pose serves every view, whatever its shape: it says nothing of the width of a picture.
 *
 * In and out: full-size mm as the mesh has them, standing on a table at y = 0; degrees, azimuth
 * from the nose toward the car's left, elevation upward. Every change keeps the eye above the table
 * and short of the pole, where "upright" would lose its meaning. The bounds are our judgement.
 */
import type { Box } from '../../car/mesh.ts';
import { cameraAt, directionOf } from '../../car/viewpoint.ts';
import { add, clamp, interpolate, interpolate3, scale, type Vector3 } from '../../ground/vector.ts';

export interface Pose {
  /** What the eye looks at and turns round, mm; in the middle of the view. */
  readonly target: Vector3;
  /** −180…180. */
  readonly azimuthDegrees: number;
  readonly elevationDegrees: number;
  /** From the eye to the target, mm. */
  readonly distanceMm: number;
  /** Field from the lower to the upper edge of the view. */
  readonly fieldDegrees: number;
}

/** The eye and its unit axes; `forward` points into the picture. */
export interface ViewFrame {
  readonly eye: Vector3;
  readonly right: Vector3;
  readonly up: Vector3;
  readonly forward: Vector3;
}

/** How far hands may take the eye. */
export interface Limits {
  /** Least distance from the target. */
  readonly nearestMm: number;
  /** Greatest height of the view where the target is. */
  readonly tallestMm: number;
  /** Where the target may be. */
  readonly within: Box;
}

const lowestElevation = -4;
const highestElevation = 88;
/** Lowest that an eye comes above the table: a lens laid on it at 1:24. */
const lowestEyeMm = 60;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const degrees = (angle: number): number => (angle * 180) / Math.PI;
/** Tangent of half the field from the lower to the upper edge. */
export const halfTangentOf = ({ fieldDegrees }: Pose): number =>
  Math.tan(radians(fieldDegrees) / 2);
/** Height of the view at the target, mm. */
const tallOf = (pose: Pose): number => 2 * pose.distanceMm * halfTangentOf(pose);

/** The same azimuth between −180 (left out) and 180. */
export function wrapped(azimuthDegrees: number): number {
  const turned = azimuthDegrees % 360;
  if (turned > 180) return turned - 360;
  return turned <= -180 ? turned + 360 : turned;
}

/** The pose, raised as far as the table and the pole demand. */
function aboveTable(pose: Pose): Pose {
  const rise = clamp((lowestEyeMm - pose.target[1]) / pose.distanceMm, -1, 1);
  const lowest = Math.max(lowestElevation, degrees(Math.asin(rise)));
  const low = Math.min(lowest, highestElevation);
  return { ...pose, elevationDegrees: clamp(pose.elevationDegrees, low, highestElevation) };
}

/** The eye walked round its target; elevation stays within −4…88°. */
export const orbited = (pose: Pose, byAzimuthDegrees: number, byElevationDegrees: number): Pose =>
  aboveTable({
    ...pose,
    azimuthDegrees: wrapped(pose.azimuthDegrees + byAzimuthDegrees),
    elevationDegrees: pose.elevationDegrees + byElevationDegrees,
  });

/** The target shown `factor` times as large (above 1 is nearer), within the limits. */
export function zoomed(pose: Pose, factor: number, limits: Limits): Pose {
  const farthest = limits.tallestMm / (2 * halfTangentOf(pose));
  const nearest = Math.min(limits.nearestMm, farthest);
  return aboveTable({ ...pose, distanceMm: clamp(pose.distanceMm / factor, nearest, farthest) });
}

/**
 * The cars moved under the hand: `dxShare` to the right and `dyShare` upward, both as shares of
 * the view's height. The target stays within the limits.
 */
export function panned(pose: Pose, dxShare: number, dyShare: number, limits: Limits): Pose {
  const { right, up } = viewFrame(pose);
  const tall = tallOf(pose);
  const moved = add(pose.target, add(scale(right, -dxShare * tall), scale(up, -dyShare * tall)));
  const { low, high } = limits.within;
  const target: Vector3 = [
    clamp(moved[0], low[0], high[0]),
    clamp(moved[1], low[1], high[1]),
    clamp(moved[2], low[2], high[2]),
  ];
  return aboveTable({ ...pose, target });
}

const inLogarithm = (from: number, to: number, t: number): number => from * (to / from) ** t;

/**
 * The pose at `share` (0–1) of the way of a glide; whoever moves the time on eases it. Turns the
 * shorter way round; distance and width of the field go in the logarithm, so that things grow at
 * an even rate.
 */
export function between(from: Pose, to: Pose, share: number): Pose {
  if (share <= 0) return from;
  if (share >= 1) return to;
  const turn = wrapped(to.azimuthDegrees - from.azimuthDegrees);
  const halfTangent = inLogarithm(halfTangentOf(from), halfTangentOf(to), share);
  return aboveTable({
    target: interpolate3(from.target, to.target, share),
    azimuthDegrees: wrapped(from.azimuthDegrees + turn * share),
    elevationDegrees: interpolate(from.elevationDegrees, to.elevationDegrees, share),
    distanceMm: inLogarithm(from.distanceMm, to.distanceMm, share),
    fieldDegrees: degrees(2 * Math.atan(halfTangent)),
  });
}

/** Where the eye is, mm. */
export const eyeOf = (pose: Pose): Vector3 =>
  add(pose.target, scale(directionOf(pose.azimuthDegrees, pose.elevationDegrees), pose.distanceMm));

/** The eye with its axes, upright. */
export function viewFrame(pose: Pose): ViewFrame {
  const direction = directionOf(pose.azimuthDegrees, pose.elevationDegrees);
  const { eye, right, up, forward } = cameraAt(
    pose.target,
    direction,
    pose.distanceMm,
    halfTangentOf(pose),
  );
  return { eye, right, up, forward };
}
