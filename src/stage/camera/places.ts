/**
 * From where does one want to see a model, and how is one part of it brought close? Places are
 * looks as a model is taken in on the bench, eye low; the field of 22° is that of a model on a
 * shelf across the desk, which hardly distorts. Angles, margins and thresholds are our judgement.
 *
 * In: a mesh (full-size mm), the aspect of the view (width over height), for a part the pose one
 * comes from. Out: poses that hold what they frame, in the middle of the view.
 */
import type { Mesh } from '../../car/mesh.ts';
import { rasterise } from '../../car/raster.ts';
import { directionOf } from '../../car/viewpoint.ts';
import {
  add,
  clamp,
  cross,
  dot,
  lengthOf,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../ground/vector.ts';
import { fitted, pointsOf } from './fit.ts';
import { nearestMm, pointsOfFrame, type StageFrame } from './frame.ts';
import { type Lump, lumpsOf } from './lump.ts';
import { eyeOf, halfTangentOf, type Pose, viewFrame, wrapped } from './pose.ts';

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
  spot('cabin', 'Cabin', 'cabin', 60, 44),
  spot('wheel', 'Wheel', 'wheel', 72, 6),
];

/** The places this car has something for; the first is where one opens. */
export const placesOf = (mesh: Mesh): readonly Place[] =>
  spots
    .filter(({ frame }) => pointsOfFrame(mesh, frame) !== undefined)
    .map(({ id, name }) => ({ id, name }));

/**
 * The pose at a place, for a view of this aspect.
 * @throws RangeError where there is no such place, or the car has nothing for it.
 */
export function poseAt(mesh: Mesh, placeId: string, aspect: number): Pose {
  const found = spots.find(({ id }) => id === placeId);
  const points = found === undefined ? undefined : pointsOfFrame(mesh, found.frame);
  if (found === undefined || points === undefined) {
    const ids = placesOf(mesh).map(({ id }) => id);
    throw new RangeError(`place ${placeId}: expected one that this car has, ${ids.join(', ')}`);
  }
  const { azimuthDegrees, elevationDegrees } = found;
  const direction = { azimuthDegrees, elevationDegrees, fieldDegrees };
  return fitted(points, { ...direction, aspect, fill: wholeFill, nearestMm });
}

/** How far a thing's outward side may turn from the eye and still face it, degrees. */
const facingDegrees = 50;
/** Lowest and highest elevation for a part, degrees: above the table, over the doors, under arches. */
const elevationsFor = {
  cabin: [35, 75],
  wheels: [3, 20],
  skin: [3, 75],
  trim: [3, 75],
} as const;

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
  const lumps = chosenLumps(mesh, partIds, from, near);
  const [anchor] = lumps;
  if (anchor === undefined) {
    throw new RangeError(`parts ${partIds.join(', ')}: expected at least one part of this car`);
  }
  const wanted = new Set(lumps.flatMap(({ triangles }) => triangles));
  const points = pointsOf(mesh, (triangle) => wanted.has(triangle));
  const car = pointsOfFrame(mesh, 'car')!;
  let best: { pose: Pose; worth: number } | undefined;
  for (const { direction, turnDegrees } of directionsFor(mesh, anchor, from)) {
    const fitting = { ...direction, fieldDegrees, aspect, nearestMm };
    const close = fitted(points, { ...fitting, fill: partFill });
    const whole = fitted(car, { ...fitting, fill: wholeFill });
    // What is nearly as large as the car is shown with the car, not smaller than it.
    const pose = close.distanceMm < whole.distanceMm ? close : whole;
    const seen = seenShare(mesh, anchor, pose, aspect);
    if (seen >= wellSeen) return pose;
    const worth = seen - turnDegrees / degreesPerShare;
    if (best === undefined || worth > best.worth) best = { pose, worth };
  }
  return best!.pose;
}

/** A scrap of a stripe under the bumper does not stand for the stripe; share of the largest lump. */
const leastShare = 0.3;
function largeAmong(lumps: readonly Lump[]): Lump[] {
  const largest = Math.max(...lumps.map(({ areaMm2 }) => areaMm2));
  return lumps.filter(({ areaMm2 }) => areaMm2 >= leastShare * largest);
}

/** The lump to frame first, then one of every other part. */
function chosenLumps(
  mesh: Mesh,
  partIds: readonly string[],
  from: Pose,
  near: Vector3 | undefined,
): Lump[] {
  const all = mesh.parts.flatMap(({ id }, part) => (partIds.includes(id) ? [part] : []));
  const eye = eyeOf(from);
  const closest = (lumps: readonly Lump[], to: Vector3): Lump | undefined => {
    const away = ({ middle }: Lump): number => lengthOf(subtract(middle, to));
    return [...lumps].sort((a, b) => away(a) - away(b))[0];
  };
  const anchorFrom = (): Lump | undefined => {
    const lumps = all.flatMap((part) => lumpsOf(mesh, part));
    if (near !== undefined) return closest(lumps, near);
    const large = all.flatMap((part) => largeAmong(lumpsOf(mesh, part)));
    const facing = large.filter(
      ({ middle, outward }) => outward === undefined || dot(outward, subtract(eye, middle)) >= 0,
    );
    return closest(facing.length > 0 ? facing : large, eye);
  };
  const anchor = anchorFrom();
  if (anchor === undefined) return [];
  const others = all
    .filter((part) => part !== anchor.part)
    .flatMap((part) => closest(largeAmong(lumpsOf(mesh, part)), anchor.middle) ?? []);
  return [anchor, ...others];
}

const turnsDegrees = [0, 30, -30, 60, -60, 90, -90, 120, -120, 150, -150, 180];
const risesDegrees = [0, 20];
/** A part is well seen with this share of it in sight; glass does not hide. */
const wellSeen = 0.6;
/** Turning by so much is worth as little as seeing none of the part instead of all. */
const degreesPerShare = 700;

interface Turn {
  readonly direction: { readonly azimuthDegrees: number; readonly elevationDegrees: number };
  readonly turnDegrees: number;
}

/** Directions in which a lump faces the eye, the smallest turn first. */
function directionsFor(mesh: Mesh, lump: Lump, from: Pose): Turn[] {
  const [lowest, highest] = elevationsFor[mesh.parts[lump.part]!.group];
  const present = directionOf(from.azimuthDegrees, from.elevationDegrees);
  const turned = lump.outward === undefined ? present : turnedToward(present, lump.outward);
  const azimuth = (Math.atan2(turned[0], turned[2]) * 180) / Math.PI;
  const elevation = (Math.asin(clamp(turned[1], -1, 1)) * 180) / Math.PI;
  const turns = turnsDegrees.flatMap((turn) =>
    risesDegrees.map((rise) => ({
      direction: {
        azimuthDegrees: wrapped(azimuth + turn),
        elevationDegrees: clamp(clamp(elevation, lowest, highest) + rise, lowest, highest),
      },
      turnDegrees: Math.abs(turn) + rise,
    })),
  );
  const leastCosine = Math.cos((facingDegrees * Math.PI) / 180) - 1e-6;
  const faces = ({ direction: { azimuthDegrees, elevationDegrees } }: Turn): boolean =>
    lump.outward === undefined ||
    dot(directionOf(azimuthDegrees, elevationDegrees), lump.outward) >= leastCosine;
  const [first, ...rest] = turns.sort((a, b) => a.turnDegrees - b.turnDegrees);
  return [first!, ...rest.filter(faces)];
}

/** The direction, turned toward `outward` as little as it takes to lie within 50° of it. */
function turnedToward(direction: Vector3, outward: Vector3): Vector3 {
  const within = (facingDegrees * Math.PI) / 180;
  if (Math.acos(clamp(dot(direction, outward), -1, 1)) <= within) return direction;
  const aside = subtract(direction, scale(outward, dot(direction, outward)));
  // Looking at it from right behind, any way round is as short.
  const sideways = lengthOf(aside) > 1e-6 ? aside : cross(outward, [0, 1, 0]);
  return add(scale(outward, Math.cos(within)), scale(normalize(sideways), Math.sin(within)));
}

/** Side of the little picture that tells what is seen, pixels. */
const lookPx = 56;

/** Share of a lump's own picture, alone, that is in sight on the whole car. */
function seenShare(mesh: Mesh, lump: Lump, pose: Pose, aspect: number): number {
  const wide = Math.max(8, Math.round(lookPx * Math.sqrt(aspect)));
  const tall = Math.max(8, Math.round(lookPx / Math.sqrt(aspect)));
  const halfTangent = (halfTangentOf(pose) * wide) / tall;
  const camera = { ...viewFrame(pose), halfTangent };
  const isOfLump = new Set(lump.triangles);
  const count = (of: Mesh, isSeen: (triangle: number) => boolean): number =>
    rasterise(of, camera, wide, tall, isDrawn).triangle.reduce(
      (sum, triangle) => sum + (isSeen(triangle) ? 1 : 0),
      0,
    );
  const isDrawn = (node: number): boolean =>
    node === lump.node || !mesh.parts[mesh.nodes[node]!.part]!.isGlass;
  const alone = count(onlyOf(mesh, lump), (triangle) => triangle >= 0);
  return alone === 0 ? 0 : count(mesh, (triangle) => isOfLump.has(triangle)) / alone;
}

/** A lump as a mesh of its own. */
function onlyOf(mesh: Mesh, { triangles }: Lump): Mesh {
  const nine = (from: Float32Array): Float32Array =>
    Float32Array.from(triangles.flatMap((one) => [...from.subarray(one * 9, one * 9 + 9)]));
  return {
    ...mesh,
    positions: nine(mesh.positions),
    normals: nine(mesh.normals),
    nodeOf: Uint16Array.from(triangles, (one) => mesh.nodeOf[one]!),
  };
}
