/**
 * Only a colour is known: what might its spectrum be?
 *
 * XYZ under D65 (Y = 1 for white) to the smoothest reflectance 0–1 that has exactly that colour,
 * by the least hyperbolic-tangent slope squared rule. [Burns2020] One plausible metamer among
 * many: what follows from it under other lights is indicative only. No surface can be stronger in
 * chroma than the optimal colours [MacAdam1935]: a colour beyond them, or within 0.1 % of them, is
 * drawn straight towards the grey of its own luminance to that limit, and the result says so.
 */
import type { Reflectance, Xyz } from '../ground/unit.ts';
import { asReflectance } from '../ground/unit.ts';
import { solveSmoothest, startFrom } from './curve/smoothest.ts';
import { reachTowards } from './curve/solid.ts';
import { d65White } from './illuminant.ts';
import { flatReflectance } from './spectrum.ts';

/** A recovered spectrum and whether it has the colour asked for. */
export interface Recovery {
  readonly reflectance: Reflectance;
  /** False: no surface has this colour; the spectrum has less chroma (or is plain black or white). */
  readonly isReachable: boolean;
}

// Far below one 16-bit step: a colour this near to grey is grey, and an equal spectrum is exact.
const greyTolerance = 1e-9;
// At the limit itself the spectrum jumps between 0 and 1, which no smooth curve does.
const insideTheLimit = 0.999;
// Not needed in any trial so far; if the sum cannot be solved, a little less chroma is tried.
const drawnIn = 0.98;

/** The smoothest reflectance with the given XYZ under D65; for an unreachable one, the nearest. */
export const reflectanceFromXyz = (xyz: Xyz): Reflectance => recoveryFromXyz(xyz).reflectance;

/** As `reflectanceFromXyz`, saying also whether the colour was reached. */
export function recoveryFromXyz(xyz: Xyz): Recovery {
  if (!xyz.every(Number.isFinite)) throw new RangeError(`XYZ must be finite, found ${xyz}`);
  const target = xyz.map((value, axis) => value / d65White[axis]!);
  const luminance = target[1]!;
  const isGrey = target.every((value) => Math.abs(value - luminance) <= greyTolerance);
  if (luminance <= greyTolerance || luminance >= 1 - greyTolerance) {
    const edge = luminance < 0.5 ? 0 : 1;
    const isThere = isGrey && Math.abs(luminance - edge) <= greyTolerance;
    return { reflectance: flatReflectance(edge), isReachable: isThere };
  }
  if (isGrey) return { reflectance: flatReflectance(luminance), isReachable: true };

  let share = Math.min(1, insideTheLimit * reachTowards(luminance, target));
  while (true) {
    const stand = startFrom(luminance);
    const aim = target.map((value) => luminance + share * (value - luminance));
    if (solveSmoothest(aim, stand)) {
      const curve = stand.z.map((z) => (Math.tanh(z) + 1) / 2);
      return { reflectance: asReflectance(curve), isReachable: share === 1 };
    }
    share *= drawnIn;
  }
}
