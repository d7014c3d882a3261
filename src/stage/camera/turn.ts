/**
 * Which ways may one turn so that a piece of a part faces the eye? Its outward side, where it has
 * one, stays within 50° of the line of sight; into the cabin one looks from above, at wheels from
 * low on their own side. Angles are our judgement; degrees.
 *
 * In: a lump of a part and the pose one comes from. Out: directions, the smallest turn first; the
 * first is the present direction, turned no more than it must be.
 */
import type { Mesh } from '../../car/mesh.ts';
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
import type { Lump } from './lump.ts';
import { type Pose, wrapped } from './pose.ts';

/** How far a thing's outward side may turn from the eye and still face it, degrees. */
const facingDegrees = 50;
/** Lowest and highest elevation for a part, degrees: above the table, over the doors, under arches. */
const elevationsFor = {
  cabin: [35, 75],
  wheels: [3, 20],
  skin: [3, 75],
  trim: [3, 75],
} as const;

const turnsDegrees = [0, 30, -30, 60, -60, 90, -90, 120, -120, 150, -150, 180];
const risesDegrees = [0, 20, 35];
/** A wider turn than this needs no steep look as well. */
const steepWithinDegrees = 60;
export interface Turn {
  readonly direction: { readonly azimuthDegrees: number; readonly elevationDegrees: number };
  /** From the first direction, round and upward together. */
  readonly turnDegrees: number;
}

const risesFor = (turn: number): readonly number[] =>
  risesDegrees.slice(0, Math.abs(turn) > steepWithinDegrees ? 2 : 3);

/** Directions in which a lump faces the eye, the smallest turn first. */
export function turnsToward(mesh: Mesh, lump: Lump, from: Pose): Turn[] {
  const [lowest, highest] = elevationsFor[mesh.parts[lump.part]!.group];
  const present = directionOf(from.azimuthDegrees, from.elevationDegrees);
  const turned = lump.outward === undefined ? present : turnedToward(present, lump.outward);
  const azimuth = (Math.atan2(turned[0], turned[2]) * 180) / Math.PI;
  const elevation = (Math.asin(clamp(turned[1], -1, 1)) * 180) / Math.PI;
  const turns = turnsDegrees.flatMap((turn) =>
    risesFor(turn).map((rise) => ({
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
