/**
 * What colour does a measured or computed surface have under a light?
 *
 * Reflectance 0–1 on one grid, 380–780 nm at 10 nm, 41 bands; out comes XYZ with Y = 1 for a
 * perfect white, CIE 1931 2°. [ASTME308] Measurements on other grids are brought to ours by
 * `resample.ts`; one that stops short of 380 or 780 nm has its end value repeated, and says so.
 */
import type { Reflectance, Xyz } from '../ground/unit.ts';
import { asReflectance, asXyz } from '../ground/unit.ts';
import { clamp } from '../ground/vector.ts';
import type { LightId } from './illuminant.ts';
import { lightIds, whiteOf } from './illuminant.ts';
import { labFromXyz } from './lab.ts';
import { checkTable, resampled } from './resample.ts';
import { weightsOf } from './table/weights.ts';

export const firstNm = 380;
export const lastNm = 780;
export const stepNm = 10;
export const bandCount = 41;

/** Wavelength in nm of every band, 380, 390 … 780. */
export const bandsNm: readonly number[] = Array.from(
  { length: bandCount },
  (_, band) => firstNm + band * stepNm,
);

/** A measurement on the internal grid, and what had to be done to it. */
export interface GriddedReflectance {
  readonly reflectance: Reflectance;
  /** The table stopped short of 380 or 780 nm and its end value was repeated. */
  readonly isExtended: boolean;
  /** A value lay outside 0–1 (fluorescence, or a poor white tile) and was held to the limit. */
  readonly isClipped: boolean;
}

/**
 * A measured table on the internal grid. `nm` ascending, covering at least 400–700 nm without a
 * gap above 50 nm; `values` are reflectance factors, 1 = perfect white. Throws an `InputError`.
 */
export function reflectanceFromTable(
  nm: readonly number[],
  values: readonly number[],
): GriddedReflectance {
  checkTable(nm, values);
  const raw = resampled(nm, values, bandsNm);
  return {
    reflectance: asReflectance(raw.map((value) => clamp(value, 0, 1))),
    isExtended: nm[0]! > firstNm || nm[nm.length - 1]! < lastNm,
    isClipped: values.some((value) => value < 0 || value > 1),
  };
}

/** The same reflectance in every band: an ideal grey, 0 black to 1 white. */
export const flatReflectance = (value: number): Reflectance =>
  asReflectance(new Float64Array(bandCount).fill(value));

// x, y, z of each band side by side, so that one pass over a spectrum reads memory in order.
const interleaved = Object.fromEntries(
  lightIds.map((light) => {
    const { x, y, z } = weightsOf[light];
    return [light, Float64Array.from(x.flatMap((value, band) => [value, y[band]!, z[band]!]))];
  }),
) as unknown as Readonly<Record<LightId, Float64Array>>;

/** XYZ of a surface under a light, before any adaptation of the eye. */
export const xyzFromReflectance = (reflectance: Reflectance, light: LightId): Xyz =>
  xyzFromBands(reflectance, 0, interleaved[light]);

/**
 * Lab of many surfaces under one light, each relative to that light's white. `flat` holds the
 * spectra one after another, 41 bands each; the result holds L*, a*, b* in the same order.
 */
export function labsFromReflectances(flat: Float64Array, light: LightId): Float64Array {
  if (flat.length % bandCount !== 0) {
    throw new RangeError(
      `${flat.length} bands are not a whole number of ${bandCount}-band spectra`,
    );
  }
  const weights = interleaved[light];
  const white = whiteOf(light);
  const labs = new Float64Array((flat.length / bandCount) * 3);
  for (let from = 0, to = 0; from < flat.length; from += bandCount, to += 3) {
    const lab = labFromXyz(xyzFromBands(flat, from, weights), white);
    labs[to] = lab[0];
    labs[to + 1] = lab[1];
    labs[to + 2] = lab[2];
  }
  return labs;
}

function xyzFromBands(bands: Float64Array, start: number, weights: Float64Array): Xyz {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let band = 0, cell = 0; band < bandCount; band++, cell += 3) {
    const value = bands[start + band]!;
    x += value * weights[cell]!;
    y += value * weights[cell + 1]!;
    z += value * weights[cell + 2]!;
  }
  return asXyz(x, y, z);
}
