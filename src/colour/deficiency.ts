/**
 * Do two colours still read as two for someone who sees fewer of them?
 *
 * A Lab (D65) as seen with a red (protan), green (deutan) or blue (tritan) deficiency, severity
 * 0–1, where 1 is a dichromat. [Machado2009] The matrices act on linear-light sRGB and the result
 * is clipped to the screen, as the authors do; culori's own filters act on gamma-encoded values
 * and are not used. Between the tabulated severities the matrix is interpolated. Limits: the
 * tritan matrices are the authors' least certain; colours outside sRGB are clipped.
 */
import type { Lab } from '../ground/unit.ts';
import { asLinearRgb } from '../ground/unit.ts';
import { clamp, interpolate } from '../ground/vector.ts';
import { labFromXyz, xyzFromLab } from './lab.ts';
import { linearRgbFromXyz, xyzFromLinearRgb } from './srgb.ts';

export const deficiencies = ['protan', 'deutan', 'tritan'] as const;
/** Which cone is missing or shifted: long (protan), middle (deutan) or short wave (tritan). */
export type Deficiency = (typeof deficiencies)[number];

/** A 3 × 3 matrix, row by row. */
type Matrix = readonly number[];

const identity: Matrix = [1, 0, 0, 0, 1, 0, 0, 0, 1];
const step = 0.2;

/** Severity 0, 0.2, 0.4, 0.6, 0.8 and 1 of each deficiency, from the authors' supplement. */
const matrices: Readonly<Record<Deficiency, readonly Matrix[]>> = {
  protan: [
    identity,
    [0.734766, 0.334872, -0.069637, 0.05184, 0.919198, 0.028963, -0.004928, -0.004209, 1.009137],
    [0.539009, 0.579343, -0.118352, 0.082546, 0.866121, 0.051332, -0.007136, -0.011959, 1.019095],
    [0.38545, 0.769005, -0.154455, 0.100526, 0.829802, 0.069673, -0.007442, -0.02219, 1.029632],
    [0.259411, 0.923008, -0.18242, 0.110296, 0.80434, 0.085364, -0.006276, -0.034346, 1.040622],
    [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    identity,
    [0.760729, 0.319078, -0.079807, 0.090568, 0.889315, 0.020117, -0.006027, 0.013325, 0.992702],
    [0.605511, 0.52856, -0.134071, 0.155318, 0.812366, 0.032316, -0.009376, 0.023176, 0.9862],
    [0.498864, 0.674741, -0.173604, 0.205199, 0.754872, 0.039929, -0.011131, 0.030969, 0.980162],
    [0.422823, 0.781057, -0.203881, 0.245752, 0.709602, 0.044646, -0.011843, 0.037423, 0.974421],
    [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    identity,
    [0.89572, 0.13333, -0.02905, 0.029997, 0.9454, 0.024603, 0.013027, 0.104707, 0.882266],
    [0.948035, 0.08949, -0.037526, 0.014364, 0.946792, 0.038844, 0.010853, 0.193991, 0.795156],
    [1.104996, -0.046633, -0.058363, -0.032137, 0.971635, 0.060503, 0.001336, 0.317922, 0.680742],
    [1.257728, -0.139648, -0.118081, -0.078003, 0.975409, 0.102594, -0.003316, 0.501214, 0.502102],
    [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
  ],
};

/** The matrix for linear sRGB, row by row (9 numbers), at a severity held within 0–1. */
export function deficiencyMatrix(deficiency: Deficiency, severity = 1): readonly number[] {
  const table = matrices[deficiency];
  const place = clamp(severity, 0, 1) / step;
  // 0.6 / 0.2 is a hair under 3; a tabulated severity must give the tabulated matrix.
  const nearest = Math.round(place);
  if (Math.abs(place - nearest) < 1e-9) return table[nearest]!;
  const lower = Math.floor(place);
  const upper = table[lower + 1]!;
  return table[lower]!.map((value, cell) => interpolate(value, upper[cell]!, place - lower));
}

/** Lab (D65) as an observer with the deficiency sees it; severity 1 unless said. */
export function labSeenBy(lab: Lab, deficiency: Deficiency, severity = 1): Lab {
  if (severity <= 0) return lab;
  const m = deficiencyMatrix(deficiency, severity);
  const [r, g, b] = linearRgbFromXyz(xyzFromLab(lab));
  const row = (start: number): number =>
    clamp(m[start]! * r + m[start + 1]! * g + m[start + 2]! * b, 0, 1);
  return labFromXyz(xyzFromLinearRgb(asLinearRgb(row(0), row(3), row(6))));
}
