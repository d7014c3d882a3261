/**
 * The roadster's character lines: what its shape is drawn from, before any opening is cut.
 * In: `station`, metres back from the nose (0 to 4.1), or a height. Out: metres above ground or
 * out from the middle. Wheelbase 2.47 m, length 4.1 m. An invented car; every number is our own
 * judgement, settled by eye on rendered pictures. Curves: [FritschCarlson1980].
 */
import type { Vector3 } from '../../src/ground/vector.ts';
import { type Curve, curveThrough } from '../mesh/curve.ts';

export const carLength = 4.1;
export const axles = { front: 0.8, rear: 3.27 } as const;
export const wheelCentreHeight = 0.322;
export const archRadius = 0.352;

/** Car coordinates (x left, y up, z to the nose, origin on the ground) of a station. */
export const placed = (station: number, y: number, x: number): Vector3 => [
  x,
  y,
  carLength / 2 - station,
];
export const stationOf = (point: Vector3): number => carLength / 2 - point[2];

/** Half width of the body at the waist, seen from above. */
export const halfWidth: Curve = curveThrough([
  [0, 0.79],
  [0.4, 0.822],
  [0.8, 0.846],
  [1.2, 0.828],
  [1.6, 0.808],
  [2.1, 0.806],
  [2.6, 0.838],
  [3.27, 0.888],
  [3.7, 0.868],
  [4.1, 0.825],
]);

/** Height of the waist, where the body is widest. */
export const waistHeight: Curve = curveThrough([
  [0, 0.47],
  [0.45, 0.55],
  [0.8, 0.61],
  [1.2, 0.595],
  [1.6, 0.58],
  [2.1, 0.575],
  [2.7, 0.605],
  [3.27, 0.655],
  [3.7, 0.655],
  [4.1, 0.62],
]);

/** How far the side lies inside the waist, by height above the waist: tuck-under and tumblehome. */
export const sideInset: Curve = curveThrough([
  [-0.5, 0.085],
  [-0.42, 0.052],
  [-0.34, 0.03],
  [-0.22, 0.031],
  [-0.1, 0.012],
  [0, 0],
  [0.09, 0.01],
  [0.2, 0.055],
  [0.34, 0.16],
  [0.5, 0.32],
]);

/** Height of the lower edge of the body. */
export const lowerEdge: Curve = curveThrough([
  [0, 0.155],
  [0.45, 0.132],
  [3.4, 0.142],
  [3.8, 0.19],
  [4.1, 0.235],
]);

/** The top, as heights along five lines from the middle outwards. */
export const middleHeight: Curve = curveThrough([
  [0, 0.632],
  [0.2, 0.712],
  [0.45, 0.79],
  [0.8, 0.845],
  [1.2, 0.879],
  [1.62, 0.894],
  [2.8, 0.862],
  [3.27, 0.858],
  [3.72, 0.84],
  [4.1, 0.846],
]);
export const bonnetHeight: Curve = curveThrough([
  [0, 0.628],
  [0.2, 0.703],
  [0.45, 0.778],
  [0.8, 0.832],
  [1.2, 0.866],
  [1.62, 0.882],
  [2.8, 0.874],
  [3.27, 0.868],
  [3.72, 0.846],
  [4.1, 0.85],
]);
export const valleyHeight: Curve = curveThrough([
  [0, 0.61],
  [0.2, 0.688],
  [0.45, 0.752],
  [0.8, 0.788],
  [1.2, 0.812],
  [1.62, 0.834],
  [2.8, 0.858],
  [3.27, 0.868],
  [3.72, 0.852],
  [4.1, 0.85],
]);
export const crownHeight: Curve = curveThrough([
  [0, 0.6],
  [0.2, 0.698],
  [0.45, 0.802],
  [0.82, 0.862],
  [1.2, 0.84],
  [1.6, 0.812],
  [2.1, 0.795],
  [2.65, 0.86],
  [3.27, 0.925],
  [3.72, 0.9],
  [4.1, 0.856],
]);
/** Where the bonnet edge, the valley and the crown lie, out from the middle. */
export const bonnetOut: Curve = curveThrough([
  [0, 0.34],
  [0.8, 0.37],
  [1.62, 0.42],
  [2.8, 0.42],
  [4.1, 0.34],
]);
export const valleyOut: Curve = curveThrough([
  [0, 0.45],
  [0.8, 0.51],
  [1.62, 0.55],
  [2.8, 0.55],
  [4.1, 0.5],
]);
export const crownOut: Curve = curveThrough([
  [0, 0.6],
  [0.8, 0.69],
  [1.62, 0.68],
  [2.1, 0.675],
  [2.7, 0.69],
  [3.27, 0.73],
  [4.1, 0.66],
]);

/** The nose and the tail in side view: station of their skin by height. */
export const noseLine: Curve = curveThrough([
  [0.1, 0.13],
  [0.16, 0.055],
  [0.23, 0.012],
  [0.34, 0],
  [0.44, 0.006],
  [0.53, 0.04],
  [0.6, 0.09],
  [0.75, 0.26],
]);
export const tailLine: Curve = curveThrough([
  [0.1, 3.86],
  [0.2, 3.97],
  [0.3, 4.05],
  [0.4, 4.082],
  [0.5, 4.086],
  [0.585, 4.078],
  [0.625, 4.058],
  [0.66, 4.043],
  [0.73, 4.036],
  [0.78, 4.042],
  [0.815, 4.062],
  [0.85, 4.094],
  [0.875, 4.106],
  [0.92, 4.11],
]);
/** How far the deck kicks up into the lip across the tail. */
export const lipLift: Curve = curveThrough([
  [3.7, 0],
  [3.9, 0.006],
  [4.02, 0.02],
  [4.1, 0.036],
]);
