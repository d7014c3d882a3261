/**
 * What does a colour look like once the eye has got used to the light?
 *
 * CAT16 [Li2017]: XYZ under one white to the corresponding XYZ under another, both with Y = 1.
 * Adaptation is taken as complete (D = 1), because a model is looked at for minutes under one
 * lamp; with D = 1 the one-step and two-step forms agree. Limits: dim lamps adapt the eye less.
 */
import type { Xyz } from '../ground/unit.ts';
import { asXyz } from '../ground/unit.ts';

// XYZ to the sharpened cone space of CAT16, Li et al. 2017.
const toCones = [
  [0.401288, 0.650173, -0.051461],
  [-0.250268, 1.204414, 0.045854],
  [-0.002079, 0.048952, 0.953127],
] as const;
type Row = readonly [number, number, number];
type Matrix = readonly [Row, Row, Row];

const fromCones = inverse(toCones);

/** Corresponding colour under `toWhite` of an XYZ seen under `fromWhite`. */
export function adaptedXyz(xyz: Xyz, fromWhite: Xyz, toWhite: Xyz): Xyz {
  // The same white must give the same colour to the last bit, not to the rounding of a round trip.
  if (fromWhite.every((value, axis) => value === toWhite[axis])) return xyz;
  const cones = times(toCones, xyz);
  const before = times(toCones, fromWhite);
  const after = times(toCones, toWhite);
  const adapted: Row = [
    (cones[0] * after[0]) / before[0],
    (cones[1] * after[1]) / before[1],
    (cones[2] * after[2]) / before[2],
  ];
  return asXyz(...times(fromCones, adapted));
}

function times(matrix: Matrix, v: Row): [number, number, number] {
  const [p, q, r] = matrix;
  return [
    p[0] * v[0] + p[1] * v[1] + p[2] * v[2],
    q[0] * v[0] + q[1] * v[1] + q[2] * v[2],
    r[0] * v[0] + r[1] * v[1] + r[2] * v[2],
  ];
}

function inverse([[a, b, c], [d, e, f], [g, h, i]]: Matrix): Matrix {
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  const over = (value: number): number => value / determinant;
  return [
    [over(e * i - f * h), over(c * h - b * i), over(b * f - c * e)],
    [over(f * g - d * i), over(a * i - c * g), over(c * d - a * f)],
    [over(d * h - e * g), over(b * g - a * h), over(a * e - b * d)],
  ];
}
