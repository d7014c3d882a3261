/**
 * What of a car can be looked at as a whole, and how far may hands go round it? The car, its cabin,
 * its front left wheel, each as the points of its mesh; full-size mm. Worked out once for each car.
 */
import { boundsOf, facetOf, type Mesh, middleOf, partOf, radiusOf } from '../../car/mesh.ts';
import { type Points, pointsOf } from './fit.ts';
import type { Limits } from './pose.ts';

export type StageFrame = 'car' | 'cabin' | 'wheel';

interface Known {
  readonly points: Map<StageFrame, Points>;
  readonly limits: Limits;
  readonly outsideMm: number;
}

const known = new WeakMap<Mesh, Known>();

/** Nearest that an eye comes, full-size mm: 17 mm at 1:24, as near as a loupe. */
export const nearestMm = 400;
/** The view is at most so many times as tall as the car is long: the car stays a car. */
const mostLengths = 4;
/** How far the target may leave the car's box, as a share of the ball round it. */
const grown = 0.1;

function learn(mesh: Mesh): Known {
  const met = known.get(mesh);
  if (met !== undefined) return met;
  const box = boundsOf(mesh);
  if (box === undefined) throw new RangeError('this car has no triangles to look at');
  const [middleX, , middleZ] = middleOf(box);
  const group = (triangle: number): string => mesh.parts[partOf(mesh, triangle)]!.group;
  const points = new Map<StageFrame, Points>();
  const found = (frame: StageFrame, isMeant: (triangle: number) => boolean): void => {
    const some = pointsOf(mesh, isMeant);
    if (some.length > 0) points.set(frame, some);
  };
  found('car', () => true);
  found('cabin', (triangle) => group(triangle) === 'cabin');
  found('wheel', (triangle) => {
    if (group(triangle) !== 'wheels') return false;
    const [x, , z] = facetOf(mesh, triangle).centroid;
    return x > middleX && z > middleZ;
  });
  const radius = radiusOf(box);
  const spare = grown * radius;
  const { low, high } = box;
  const limits: Limits = {
    nearestMm,
    tallestMm: mostLengths * 2 * radius,
    within: {
      low: [low[0] - spare, Math.max(low[1], 0), low[2] - spare],
      high: [high[0] + spare, high[1] + spare, high[2] + spare],
    },
  };
  const fresh = { points, limits, outsideMm: 2 * radius + nearestMm };
  known.set(mesh, fresh);
  return fresh;
}

/** The points of what a frame holds; undefined where the car has nothing for it. */
export const pointsOfFrame = (mesh: Mesh, frame: StageFrame): Points | undefined =>
  learn(mesh).points.get(frame);

/** How far hands may take the eye round this car. */
export const limitsOf = (mesh: Mesh): Limits => learn(mesh).limits;

/** At this distance from anything on the car the eye is outside it, mm. */
export const outsideMmOf = (mesh: Mesh): number => learn(mesh).outsideMm;
