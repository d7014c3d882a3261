/**
 * Flat outlines as signed distances: below 0 inside, above 0 outside, in metres. A drawn polygon
 * is grown by a radius, which rounds every corner; this is how lamps, doors and openings are
 * given on the views (side, front, plan) a body maker would draw them in.
 * Exact distance to a polygon's edges; the sign by crossing number (general geometry).
 */
export type Flat = readonly [u: number, v: number];

/** Signed distance to `polygon` grown by `radius`. */
export function rounded(
  polygon: readonly Flat[],
  radius: number,
): (u: number, v: number) => number {
  return (u, v) => {
    let nearest = Number.POSITIVE_INFINITY;
    let isInside = false;
    polygon.forEach((a, k) => {
      const b = polygon[(k + 1) % polygon.length]!;
      const [alongU, alongV] = [b[0] - a[0], b[1] - a[1]];
      const [toU, toV] = [u - a[0], v - a[1]];
      const share = (toU * alongU + toV * alongV) / (alongU * alongU + alongV * alongV);
      const t = Math.min(1, Math.max(0, share));
      nearest = Math.min(nearest, Math.hypot(toU - alongU * t, toV - alongV * t));
      if (a[1] > v !== b[1] > v && toU < (alongU * toV) / alongV) isInside = !isInside;
    });
    return (isInside ? -nearest : nearest) - radius;
  };
}

/** A closed smooth curve within `polygon`: corners cut twice over (Chaikin, from memory). */
export function curved(polygon: readonly Flat[]): Flat[] {
  const cut = (sides: readonly Flat[]): Flat[] =>
    sides.flatMap((a, k): Flat[] => {
      const b = sides[(k + 1) % sides.length]!;
      const at = (t: number): Flat => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      return [at(0.25), at(0.75)];
    });
  return cut(cut(polygon));
}

/** The polygon whose right half is given, from its foot to its head, mirrored about u = 0. */
export const bothSides = (right: readonly Flat[]): Flat[] => [
  ...right,
  ...right
    .filter(([u]) => u > 0)
    .reverse()
    .map(([u, v]): Flat => [-u, v]),
];
