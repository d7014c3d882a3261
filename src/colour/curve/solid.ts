/**
 * Can any surface have this colour at all?
 *
 * The colours of all reflectances between 0 and 1 fill a solid whose surface is made of the optimal
 * colours. [MacAdam1935] On 41 bands it is exactly a zonotope: a sum of 41 arrows, one per band,
 * point-symmetric about mid grey, bounded by one pair of parallel planes for each pair of arrows.
 * In: XYZ under D65, each axis relative to white (white is 1, 1, 1). Out: how far one can go.
 */
import { d65White } from '../illuminant.ts';
import { weightsOf } from '../table/weights.ts';

type Point = readonly [number, number, number];

/** The D65 weights as one arrow per band, each axis relative to white. */
const arrows: readonly Point[] = weightsOf.D65.x.map((x, band) => [
  x / d65White[0],
  weightsOf.D65.y[band]! / d65White[1],
  weightsOf.D65.z[band]! / d65White[2],
]);

const along = (normal: Point, point: Point): number =>
  normal[0] * point[0] + normal[1] * point[1] + normal[2] * point[2];

/** A pair of parallel planes: unit normal, and half their distance apart. */
interface Slab {
  readonly normal: Point;
  readonly half: number;
}

// Arrows this close to parallel (the far red ones are) span no plane that rounding leaves usable.
const parallel = 1e-12;
let known: readonly Slab[] | undefined;

function slabsOf(): Slab[] {
  return arrows.flatMap((a, index) =>
    arrows.slice(index + 1).flatMap((b): Slab[] => {
      const across: Point = [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
      ];
      const length = Math.hypot(...across);
      if (length < parallel * Math.hypot(...a) * Math.hypot(...b)) return [];
      const normal: Point = [across[0] / length, across[1] / length, across[2] / length];
      const half = arrows.reduce((sum, arrow) => sum + Math.abs(along(normal, arrow)), 0) / 2;
      return [{ normal, half }];
    }),
  );
}

/**
 * The share of the way from the grey of a luminance (0–1) to a colour at which the solid ends:
 * below 1 no surface has the colour, at 1 it is optimal, above 1 it can be had.
 */
export function reachTowards(luminance: number, colour: readonly number[]): number {
  known ??= slabsOf();
  const offset = luminance - 0.5;
  const way: Point = [colour[0]! - luminance, colour[1]! - luminance, colour[2]! - luminance];
  let reach = Number.POSITIVE_INFINITY;
  for (const { normal, half } of known) {
    const start = offset * (normal[0] + normal[1] + normal[2]);
    const speed = along(normal, way);
    if (speed === 0) continue;
    reach = Math.min(reach, (speed > 0 ? half - start : -half - start) / speed);
  }
  return reach;
}
