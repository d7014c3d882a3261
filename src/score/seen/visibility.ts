/**
 * Will half of all viewers tell two colours apart at this size?
 *
 * In: two CIELAB colours (D65) and the visual angle of the thinner part, degrees. Out: v, the
 * difference in units of the published 50 % thresholds: under 1 likely lost, 1–2 weak, over 2
 * likely to read. Patches: [Stone2014] ND(50, s) = C + K/s; strips: [Szafir2018] c + k/s, where
 * the better of the two models counts.
 *
 * Limits: thresholds come from uncontrolled web displays; joining the three axes as a root of
 * squares is our own rule; angles under 0.05° are not judged, over 6° count as 6°.
 */
import type { Lab } from '../../ground/unit.ts';
import { largestJudgedDegrees, smallestJudgedDegrees } from '../judgement.ts';

const patch = { lightness: [5.079, 0.751], a: [5.339, 1.541], b: [5.349, 2.871] } as const;
const strip = { lightness: [5.73, 0.5], a: [7.53, 0.34], b: [11.29, 0.43] } as const;

/** CIELAB difference half of all viewers see on each axis, for one size and shape. */
export interface Thresholds {
  readonly lightness: number;
  readonly a: number;
  readonly b: number;
}

/** Thresholds for a part `sizeDegrees` across; strips are seen better than patches as thin. */
export function thresholdsFor(sizeDegrees: number, isStrip: boolean): Thresholds {
  const s = Math.min(largestJudgedDegrees, Math.max(smallestJudgedDegrees, sizeDegrees));
  const at = (axis: keyof Thresholds): number => {
    const asPatch = patch[axis][0] + patch[axis][1] / s;
    return isStrip ? Math.min(asPatch, strip[axis][0] + strip[axis][1] / s) : asPatch;
  };
  return { lightness: at('lightness'), a: at('a'), b: at('b') };
}

/** Visual angle in degrees of `sizeMm` seen from `distanceMm`. */
export const visualAngleDegrees = (sizeMm: number, distanceMm: number): number =>
  (2 * Math.atan(sizeMm / (2 * distanceMm)) * 180) / Math.PI;

/** v: difference of two colours in units of the thresholds. */
export function visibility(one: Lab, other: Lab, thresholds: Thresholds): number {
  const lightness = (one[0] - other[0]) / thresholds.lightness;
  const a = (one[1] - other[1]) / thresholds.a;
  const b = (one[2] - other[2]) / thresholds.b;
  return Math.sqrt(lightness * lightness + a * a + b * b);
}
