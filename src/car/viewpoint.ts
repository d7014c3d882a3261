/**
 * From where is a model looked at? Nine whole-car looks and up to six closer ones, as a model stands
 * on a table: eye 400 mm away at 1:24, which is 9.6 m full size, field 28°. Weights and angles are
 * our judgement of how a cabinet model is seen; closer looks lean in to 250 mm and frame the cabin,
 * a wheel or the nose. Azimuth is measured from the nose toward the car's left, elevation upward,
 * both degrees; distances full-size mm. A car too long for that field is looked at from farther off.
 */
import { add, cross, normalize, scale, type Vector3 } from '../ground/vector.ts';
import { type Box, boundsOf, facetOf, type Mesh, middleOf, partOf, radiusOf } from './mesh.ts';
import type { Camera } from './raster.ts';
import type { SightLook } from './table.ts';

/** What a look frames. */
export type Frame = 'car' | 'cabin' | 'wheel-front' | 'wheel-rear' | 'nose';
export interface Look extends SightLook {
  readonly frame: Frame;
}

const look = (
  id: string,
  name: string,
  frame: Frame,
  weight: number,
  azimuthDegrees: number,
  elevationDegrees: number,
): Look => ({
  id,
  name,
  isWhole: frame === 'car',
  weight,
  azimuthDegrees,
  elevationDegrees,
  frame,
});

/** Every look, whole-car looks first. */
export const looks: readonly Look[] = [
  look('front-left', 'three-quarter front, left', 'car', 2, 35, 20),
  look('front-right', 'three-quarter front, right', 'car', 2, -35, 20),
  look('rear-left', 'three-quarter rear, left', 'car', 1.5, 145, 20),
  look('rear-right', 'three-quarter rear, right', 'car', 1.5, -145, 20),
  look('left', 'left flank', 'car', 1, 90, 8),
  look('right', 'right flank', 'car', 1, -90, 8),
  look('nose', 'nose', 'car', 0.75, 0, 10),
  look('tail', 'tail', 'car', 0.75, 180, 10),
  look('above', 'from above', 'car', 1.5, 30, 50),
  look('cabin-front', 'into the cabin over the screen', 'cabin', 1, 25, 42),
  look('cabin-rear', 'into the cabin over the tail', 'cabin', 0.5, -155, 42),
  look('cabin-side', 'into the cabin over the door', 'cabin', 0.5, 90, 48),
  look('wheel-front', 'front wheel, left', 'wheel-front', 0.5, 75, 6),
  look('wheel-rear', 'rear wheel, right', 'wheel-rear', 0.5, -105, 6),
  look('nose-close', 'nose, close', 'nose', 0.25, 15, 12),
];

const farMm = 400 * 24;
export const closeMm = 250 * 24;
const farHalfTangent = Math.tan((14 * Math.PI) / 180);
/** Room round what a look frames, as a factor on its ball. */
const margin = 1.04;
/** Length of the nose that its close look frames, as a share of the car's length. */
const noseShare = 0.12;

/** The looks this car allows: no cabin look where nothing belongs to the cabin. */
export const looksOf = (mesh: Mesh): readonly Look[] =>
  looks.filter((one) => frameOf(mesh, one.frame) !== undefined);

/** What a look frames of this car, mm; undefined where the car has no such thing. */
export function frameOf(mesh: Mesh, frame: Frame): Box | undefined {
  const car = boundsOf(mesh);
  if (frame === 'car' || car === undefined) return car;
  const group = (triangle: number): string => mesh.parts[partOf(mesh, triangle)]!.group;
  if (frame === 'cabin') return boundsOf(mesh, (triangle) => group(triangle) === 'cabin');
  const centre = middleOf(car);
  const from = car.high[2] - noseShare * (car.high[2] - car.low[2]);
  return boundsOf(mesh, (triangle) => {
    const [x, , z] = facetOf(mesh, triangle).centroid;
    if (frame === 'nose') return z > from;
    if (group(triangle) !== 'wheels') return false;
    return frame === 'wheel-front'
      ? x > centre[0] && z > centre[2]
      : x < centre[0] && z < centre[2];
  });
}

/** The camera of a look at this car, for a square picture. */
export function cameraOf(mesh: Mesh, view: Look): Camera {
  const frame = frameOf(mesh, view.frame);
  if (frame === undefined) throw new RangeError(`this car has nothing for the look ${view.id}`);
  const direction = directionOf(view.azimuthDegrees, view.elevationDegrees);
  const radius = radiusOf(frame) * margin;
  if (!view.isWhole) return cameraFraming(middleOf(frame), direction, closeMm, radius);
  // A ball of this radius fits the field from radius / sin 14°; a model car needs no step back.
  const distance = Math.max(farMm, radius / Math.sin(Math.atan(farHalfTangent)));
  return cameraAt(middleOf(frame), direction, distance, farHalfTangent);
}

/** Unit vector from the car toward the eye. */
export function directionOf(azimuthDegrees: number, elevationDegrees: number): Vector3 {
  const azimuth = (azimuthDegrees * Math.PI) / 180;
  const elevation = (elevationDegrees * Math.PI) / 180;
  return [
    Math.sin(azimuth) * Math.cos(elevation),
    Math.sin(elevation),
    Math.cos(azimuth) * Math.cos(elevation),
  ];
}

/** A camera that frames a ball of `radius` round `target`, seen from `direction`, all mm. */
export function cameraFraming(
  target: Vector3,
  direction: Vector3,
  distance: number,
  radius: number,
): Camera {
  const away = Math.max(distance, 2 * radius);
  return cameraAt(target, direction, away, Math.tan(Math.asin(radius / away)));
}

/** A camera `distance` mm from its target, upright. */
export function cameraAt(
  target: Vector3,
  direction: Vector3,
  distance: number,
  halfTangent: number,
): Camera {
  const forward = scale(direction, -1);
  const right = normalize(cross(forward, [0, 1, 0]));
  const eye = add(target, scale(direction, distance));
  return { eye, right, up: cross(right, forward), forward, halfTangent };
}
