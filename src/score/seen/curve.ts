/** A curve through listed points: straight between them, flat outside; x rises. */
export type Curve = readonly (readonly [x: number, y: number])[];

/** Height of the curve at `x`. */
export function along(curve: Curve, x: number): number {
  let [fromX, fromY] = curve[0]!;
  if (x <= fromX) return fromY;
  for (let k = 1; k < curve.length; k++) {
    const [toX, toY] = curve[k]!;
    if (x <= toX) return fromY + ((toY - fromY) * (x - fromX)) / (toX - fromX);
    fromX = toX;
    fromY = toY;
  }
  return fromY;
}
