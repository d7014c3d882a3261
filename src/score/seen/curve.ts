/** A curve through listed points: straight between them, flat outside; x rises. */
export type Curve = readonly (readonly [x: number, y: number])[];

/** Height of the curve at `x`. */
export function along(curve: Curve, x: number): number {
  let from = curve[0]!;
  if (x <= from[0]) return from[1];
  for (let k = 1; k < curve.length; k++) {
    const to = curve[k]!;
    if (x <= to[0]) return from[1] + ((to[1] - from[1]) * (x - from[0])) / (to[0] - from[0]);
    from = to;
  }
  return from[1];
}
