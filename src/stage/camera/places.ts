/**
 * From where does one want to see a model, and how is one part of it brought close? Places are
 * looks as a model is taken in on the bench, eye low; the field of 22° is that of a model on a
 * shelf across the desk, which hardly distorts. Angles, margins and thresholds are our judgement.
 *
 * In: a mesh (full-size mm), the aspect of the view (width over height), for a part the pose one
 * comes from. Out: poses that hold what they frame, in the middle of the view.
 */
import type { Mesh } from '../../car/mesh.ts';
import { dot, lengthOf, subtract, type Vector3 } from '../../ground/vector.ts';
import { type Fitting, fitted, type Points, pointsOf } from './fit.ts';
import { nearestMm, pointsOfFrame, type StageFrame } from './frame.ts';
import { type Lump, lumpsOf } from './lump.ts';
import { eyeOf, type Pose } from './pose.ts';
import { seenShare } from './seen.ts';
import { type Turn, turnsToward } from './turn.ts';

export interface Place {
  readonly id: string;
  readonly name: string;
}
interface Spot extends Place {
  readonly frame: StageFrame;
  readonly azimuthDegrees: number;
  readonly elevationDegrees: number;
}

const fieldDegrees = 22;
/**
 * The whole car is always seen from as far as from a desk at 1:24, so that perspective and
 * reflections are the same in every window and every picture; only the field differs.
 */
const wholeAwayMm = 11_500;
const rounds = 6;
/** A margin of 6 % on every side. */
const wholeFill = 0.88;
const partFill = 0.45;

const spot = (
  id: string,
  name: string,
  frame: StageFrame,
  azimuthDegrees: number,
  elevationDegrees: number,
): Spot => ({ id, name, frame, azimuthDegrees, elevationDegrees });

const spots: readonly Spot[] = [
  spot('front', 'Front', 'car', 38, 12),
  spot('side', 'Side', 'car', 90, 5),
  spot('rear', 'Rear', 'car', 142, 13),
  spot('nose', 'Nose', 'car', 0, 8),
  spot('tail', 'Tail', 'car', 180, 8),
  spot('above', 'Above', 'car', 90, 72),
  spot('cabin', 'Cabin', 'cabin', 123, 50),
  spot('wheel', 'Wheel', 'wheel', 72, 6),
];

/** The places this car has something for; the first is where one opens. */
export const placesOf = (mesh: Mesh): readonly Place[] =>
  spots
    .filter(({ frame }) => pointsOfFrame(mesh, frame) !== undefined)
    .map(({ id, name }) => ({ id, name }));

/** The last pose at each place, with the aspect it was for; pages ask again and again. */
const lastPoses = new WeakMap<Mesh, Map<string, { aspect: number; pose: Pose }>>();

/**
 * The pose at a place, for a view of this aspect.
 * @throws RangeError where there is no such place, or the car has nothing for it.
 */
export function poseAt(mesh: Mesh, placeId: string, aspect: number): Pose {
  const poses = lastPoses.get(mesh) ?? new Map<string, { aspect: number; pose: Pose }>();
  lastPoses.set(mesh, poses);
  const last = poses.get(placeId);
  if (last?.aspect === aspect) return last.pose;
  const found = spots.find(({ id }) => id === placeId);
  const points = found === undefined ? undefined : pointsOfFrame(mesh, found.frame);
  if (found === undefined || points === undefined) {
    const ids = placesOf(mesh).map(({ id }) => id);
    throw new RangeError(`place ${placeId}: expected one that this car has, ${ids.join(', ')}`);
  }
  const { azimuthDegrees, elevationDegrees } = found;
  const direction = { azimuthDegrees, elevationDegrees, fieldDegrees };
  const fitting = { ...direction, aspect, fill: wholeFill, nearestMm };
  const pose = found.frame === 'car' ? fittedFrom(points, fitting) : fitted(points, fitting);
  poses.set(placeId, { aspect, pose });
  return pose;
}

/** The pose that shows the whole car from the direction of `from`. */
export function wholeFrom(mesh: Mesh, from: Pose, aspect: number): Pose {
  const points = pointsOfFrame(mesh, 'car');
  if (points === undefined) return from;
  const { azimuthDegrees, elevationDegrees } = from;
  const direction = { azimuthDegrees, elevationDegrees, fieldDegrees };
  return fittedFrom(points, { ...direction, aspect, fill: wholeFill, nearestMm });
}

/** The pose that is fitted by its field, the eye staying `wholeAwayMm` away. */
function fittedFrom(points: Points, fitting: Fitting): Pose {
  let pose = fitted(points, fitting);
  for (let round = 0; round < rounds; round++) {
    const half = Math.tan((pose.fieldDegrees * Math.PI) / 360) * (pose.distanceMm / wholeAwayMm);
    pose = fitted(points, { ...fitting, fieldDegrees: (Math.atan(half) * 360) / Math.PI });
  }
  return pose;
}

/** A part is well seen with this share of it in sight; glass does not hide. */
const wellSeen = 0.6;
/** A turn takes its share of this from the worth of what is seen after it; no turn is as large. */
const worthlessDegrees = 500;
/** So many lumps are tried before the nearest is walked round. */
const mostTried = 4;

/**
 * The pose that brings parts close, from a direction near that of `from` in which they face the eye
 * and are seen. Of a part that lies in several places the one nearest to `near` (mm; the present
 * eye, unless told) is framed; of several parts those next to it.
 * @throws RangeError where the car has none of these parts.
 */
export function framingPart(
  mesh: Mesh,
  partIds: readonly string[],
  from: Pose,
  aspect: number,
  near?: Vector3,
): Pose {
  const parts = mesh.parts.flatMap(({ id }, part) => (partIds.includes(id) ? [part] : []));
  const [first, ...further] = lumpsToFrame(mesh, parts, from, near);
  if (first === undefined) {
    throw new RangeError(`parts ${partIds.join(', ')}: expected at least one part of this car`);
  }
  const shown = (lump: Lump): Shown => ({ lump, points: pointsBeside(mesh, lump, parts) });
  // Rather another caliper in plain sight than a long way round to a hidden one.
  for (const lump of [first, ...further]) {
    const [turn] = turnsToward(mesh, lump, from);
    const sight = turn && sightAfter(mesh, shown(lump), turn, aspect);
    if (sight && sight.seen >= wellSeen) return sight.pose;
  }
  let best: { pose: Pose; worth: number } | undefined;
  const nearest = shown(first);
  for (const turn of turnsToward(mesh, first, from)) {
    const { pose, seen } = sightAfter(mesh, nearest, turn, aspect);
    if (seen >= wellSeen) return pose;
    const worth = seen * (1 - turn.turnDegrees / worthlessDegrees);
    if (best === undefined || worth > best.worth) best = { pose, worth };
  }
  return best!.pose;
}

interface Shown {
  readonly lump: Lump;
  /** Its points, and those of what is framed with it. */
  readonly points: Points;
}

/** The pose after a turn, and the share of the lump that is in sight from there. */
function sightAfter(
  mesh: Mesh,
  { lump, points }: Shown,
  { direction }: Turn,
  aspect: number,
): { pose: Pose; seen: number } {
  const fitting = { ...direction, fieldDegrees, aspect, nearestMm };
  const close = fitted(points, { ...fitting, fill: partFill });
  const whole = fitted(pointsOfFrame(mesh, 'car')!, { ...fitting, fill: wholeFill });
  // What is nearly as large as the car is shown with the car, not smaller than it.
  const pose = close.distanceMm < whole.distanceMm ? close : whole;
  return { pose, seen: seenShare(mesh, lump, pose, aspect) };
}

/** A scrap of a stripe under the bumper does not stand for the stripe; share of the largest lump. */
const leastShare = 0.3;
const largeOf = (mesh: Mesh, part: number): Lump[] => {
  const lumps = lumpsOf(mesh, part);
  const largest = Math.max(...lumps.map(({ areaMm2 }) => areaMm2));
  return lumps.filter(({ areaMm2 }) => areaMm2 >= leastShare * largest);
};
const byDistance = (lumps: readonly Lump[], to: Vector3): Lump[] => {
  const away = ({ middle }: Lump): number => lengthOf(subtract(middle, to));
  return [...lumps].sort((a, b) => away(a) - away(b));
};

/** Lumps that may be framed, the one to frame first: what was pointed at, or the near ones. */
function lumpsToFrame(
  mesh: Mesh,
  parts: readonly number[],
  from: Pose,
  near: Vector3 | undefined,
): Lump[] {
  if (near !== undefined) {
    const lumps = parts.flatMap((part) => lumpsOf(mesh, part));
    return byDistance(lumps, near).slice(0, 1);
  }
  const eye = eyeOf(from);
  const large = parts.flatMap((part) => largeOf(mesh, part));
  const facing = large.filter(
    ({ middle, outward }) => outward === undefined || dot(outward, subtract(eye, middle)) >= 0,
  );
  return byDistance(facing.length > 0 ? facing : large, eye).slice(0, mostTried);
}

/** The points of a lump, and of the lump next to it of every other part. */
function pointsBeside(mesh: Mesh, lump: Lump, parts: readonly number[]): Points {
  const others = parts
    .filter((part) => part !== lump.part)
    .flatMap((part) => byDistance(largeOf(mesh, part), lump.middle).slice(0, 1));
  const wanted = new Set([lump, ...others].flatMap(({ triangles }) => triangles));
  return pointsOf(mesh, (triangle) => wanted.has(triangle));
}
