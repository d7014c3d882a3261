/**
 * One smooth closed skin for the whole car: the solid where side, top, nose and tail overlap,
 * their meeting edges rolled over to a chosen softness. In: a ray from inside the car. Out: the
 * point where it leaves the skin, and the unit normal there. Metres, car coordinates.
 * The roll is the cubic smooth maximum (twice differentiable, so reflections flow over it); its
 * widths, the arch flares and the headrest fairings are our own judgement, by eye.
 */
import { add, clamp, normalize, scale, type Vector3 } from '../../src/ground/vector.ts';
import { type Curve, curveThrough } from '../mesh/curve.ts';
import type { Ray, Surface } from '../mesh/shell.ts';
import {
  archRadius,
  axles,
  bonnetHeight,
  bonnetOut,
  crownHeight,
  crownOut,
  halfWidth,
  lipLift,
  middleHeight,
  noseLine,
  sideInset,
  stationOf,
  tailLine,
  valleyHeight,
  valleyOut,
  waistHeight,
  wheelCentreHeight,
} from './lines.ts';

/** Smooth step from 0 to 1. */
const smooth = (t: number): number => t * t * (3 - 2 * t);
const bell = (x: number): number => Math.exp(-x * x);

/** Twice-differentiable maximum: within `width` of each other the two roll into one. */
export function rolledMaximum(a: number, b: number, width: number): number {
  const near = Math.max(width - Math.abs(a - b), 0) / width;
  return Math.max(a, b) + (near * near * near * width) / 6;
}

/** Half width of the side at a height: waist, tuck and tumblehome, with flares over the wheels. */
export function sideAt(station: number, height: number): number {
  let flare = 0;
  for (const axle of [axles.front, axles.rear]) {
    const away = Math.hypot(station - axle, Math.max(0, height - wheelCentreHeight)) - archRadius;
    flare += 0.026 * bell(away / (away < 0 ? 0.5 : 0.06));
  }
  return halfWidth(station) - sideInset(height - waistHeight(station)) + flare;
}

const fairingFade = curveThrough([
  [2.55, 0],
  [2.78, 1],
  [2.95, 0.94],
  [3.75, 0],
]);

// Rays ask for one station after another, several times each.
let lastAcross: { station: number; across: Curve } | undefined;
function acrossAt(station: number): Curve {
  if (lastAcross?.station === station) return lastAcross.across;
  const crown = crownOut(station);
  const across = curveThrough([
    [-0.2, middleHeight(station) - 0.004],
    [0, middleHeight(station)],
    [bonnetOut(station), bonnetHeight(station)],
    [valleyOut(station), valleyHeight(station)],
    [crown, crownHeight(station)],
    [crown + 0.35, crownHeight(station) - 0.1],
  ]);
  lastAcross = { station, across };
  return across;
}

/** Height of the top at a distance from the middle, with the two headrest fairings. */
export function topAt(station: number, out: number): number {
  const lip = lipLift(station) * (1 - 0.6 * clamp((out - 0.3) / 0.5, 0, 1) ** 2);
  return acrossAt(station)(out) + lip + 0.085 * fairingFade(station) * bell((out - 0.36) / 0.135);
}

// Below 0 inside the car, above 0 outside; roughly metres near the skin.
function depth(point: Vector3): number {
  const station = stationOf(point);
  const out = Math.abs(point[0]);
  const height = point[1];
  const side = out - sideAt(station, height);
  const top = height - topAt(station, out);
  const bowed = (out / 0.85) ** 2;
  const nose = noseLine(height) + 0.3 * bowed - station;
  const tail = station - tailLine(height) + 0.2 * bowed;
  const crowned = rolledMaximum(side, top, 0.2);
  // A crisp lip across the tail, softening to full corners at the sides and down to the bumper.
  const corner = clamp((out - 0.45) / 0.33, 0, 1);
  const low = clamp((0.8 - height) / 0.25, 0, 1);
  const soft = 0.045 + 0.125 * smooth(Math.max(corner * 0.8, low));
  return rolledMaximum(rolledMaximum(crowned, nose, 0.17), tail, soft);
}

const reach = 1.2;
const step = 5e-4;

function hit(ray: Ray): Vector3 {
  const at = (t: number): Vector3 => add(ray.from, scale(ray.along, t));
  let [low, high] = [0, reach];
  let [lowDepth, highDepth] = [depth(at(low)), depth(at(high))];
  if (lowDepth > 0 || highDepth < 0) throw new RangeError('A ray must start inside the car.');
  // Illinois false position: a secant that halves the stale end, so it always closes in.
  for (let turn = 0, stuck = 0; turn < 60 && high - low > 1e-9; turn++) {
    const t = low + ((high - low) * lowDepth) / (lowDepth - highDepth);
    const here = depth(at(t));
    if (Math.abs(here) < 1e-10) return at(t);
    if (here < 0) {
      [low, lowDepth] = [t, here];
      if (stuck < 0) highDepth /= 2;
      stuck = -1;
    } else {
      [high, highDepth] = [t, here];
      if (stuck > 0) lowDepth /= 2;
      stuck = 1;
    }
  }
  return at((low + high) / 2);
}

function normal([x, y, z]: Vector3): Vector3 {
  return normalize([
    // The middle is a plane of symmetry: no sideways tilt there.
    Math.abs(x) < 1e-9 ? 0 : depth([x + step, y, z]) - depth([x - step, y, z]),
    depth([x, y + step, z]) - depth([x, y - step, z]),
    depth([x, y, z + step]) - depth([x, y, z - step]),
  ]);
}

/** The roadster's skin before any opening is cut. */
export const skin: Surface = { hit, normal };

/** The skin's point straight above a place in plan. */
export const skinAbove = (station: number, x: number): Vector3 =>
  hit({ from: [x, 0.45, 2.05 - station], along: [0, 1, 0] });
/** The skin's point straight out to the left at a station and height. */
export const skinBeside = (station: number, y: number): Vector3 =>
  hit({ from: [0.3, y, 2.05 - station], along: [1, 0, 0] });
/** The skin's point straight ahead (`direction` 1) or behind (−1) at a height and offset. */
export const skinAlong = (direction: 1 | -1, y: number, x: number): Vector3 =>
  hit({ from: [x, y, direction * 1.3], along: [0, 0, direction] });
