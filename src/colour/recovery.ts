/**
 * Only a colour is known: what might its spectrum be?
 *
 * XYZ under D65 (Y = 1 for white) to the smoothest reflectance 0–1 that has exactly that colour,
 * by the least hyperbolic-tangent slope squared rule. [Burns2020] One plausible metamer among
 * many: what follows from it under other lights is indicative only. No surface can be brighter at
 * its chroma than the optimal colours: such a colour is drawn straight towards the grey of its own
 * luminance, to the strongest chroma reached (within 0.1 %), and the result says so.
 */
import type { Reflectance, Xyz } from '../ground/unit.ts';
import { asReflectance, asXyz } from '../ground/unit.ts';
import { solveSmoothest, startFrom } from './curve/smoothest.ts';
import { d65White } from './illuminant.ts';
import { bandCount, flatReflectance } from './spectrum.ts';

/** A recovered spectrum and whether it has the colour asked for. */
export interface Recovery {
  readonly reflectance: Reflectance;
  /** False: no surface has this colour; the spectrum has less chroma (or is plain black or white). */
  readonly isReachable: boolean;
}

// Far below one 16-bit step: a colour this near to grey is grey, and an equal spectrum is exact.
const greyTolerance = 1e-9;
const finestChromaStep = 1 / 1024;

/** The smoothest reflectance with the given XYZ under D65; for an unreachable one, the nearest. */
export const reflectanceFromXyz = (xyz: Xyz): Reflectance => recoveryFromXyz(xyz).reflectance;

/** As `reflectanceFromXyz`, saying also whether the colour was reached. */
export function recoveryFromXyz(xyz: Xyz): Recovery {
  if (!xyz.every(Number.isFinite)) throw new RangeError(`XYZ must be finite, found ${xyz}`);
  const target = xyz.map((value, axis) => value / d65White[axis]!);
  const luminance = target[1]!;
  const isGrey = target.every((value) => Math.abs(value - luminance) <= greyTolerance);
  if (luminance <= 0 || luminance >= 1) {
    const edge = luminance <= 0 ? 0 : 1;
    const isThere = isGrey && Math.abs(luminance - edge) <= greyTolerance;
    return { reflectance: flatReflectance(edge), isReachable: isThere };
  }
  if (isGrey) return { reflectance: flatReflectance(luminance), isReachable: true };

  const direct = startFrom(luminance, bandCount);
  if (solveSmoothest(target, direct)) return { reflectance: curveOf(direct.z), isReachable: true };
  return towardsGrey(target, luminance);
}

/** Walks out from the grey of equal luminance as far as solutions exist, each start warm. */
function towardsGrey(target: readonly number[], luminance: number): Recovery {
  let reached = 0;
  let step = 0.5;
  let best = startFrom(luminance, bandCount);
  while (reached < 1 && step >= finestChromaStep) {
    const tried = Math.min(1, reached + step);
    const attempt = { z: best.z.slice(), multipliers: best.multipliers.slice() };
    const aim = target.map((value) => luminance + tried * (value - luminance));
    if (solveSmoothest(aim, attempt)) {
      reached = tried;
      best = attempt;
    } else {
      step /= 2;
    }
  }
  return { reflectance: curveOf(best.z), isReachable: reached === 1 };
}

const curveOf = (z: Float64Array): Reflectance =>
  asReflectance(z.map((v) => (Math.tanh(v) + 1) / 2));

/** XYZ (D65) of the grey with the same luminance, where an unreachable colour is drawn to. */
export const greyOf = (xyz: Xyz): Xyz =>
  asXyz(xyz[1] * d65White[0], xyz[1] * d65White[1], xyz[1] * d65White[2]);
