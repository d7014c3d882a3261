/**
 * Under which light is the model looked at, and what is white there?
 *
 * CIE daylight D65, incandescent A, a white LED (LED-B3), warm daylight D50 and a three-band
 * fluorescent tube (FL11), all for the CIE 1931 2° observer. White points come from the same
 * weights that turn a spectrum into XYZ, so a perfect white is exactly white. [CIE015]
 */
import type { Xyz } from '../ground/unit.ts';
import { asXyz } from '../ground/unit.ts';
import { weightsOf } from './table/weights.ts';

/** The five lights the product computes with: CIE D65, A, LED-B3, D50 and FL11. [CIE015] */
export const lightIds = ['D65', 'A', 'LED-B3', 'D50', 'FL11'] as const;
export type LightId = (typeof lightIds)[number];

const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);

const whites = Object.fromEntries(
  lightIds.map((light) => {
    const { x, y, z } = weightsOf[light];
    return [light, asXyz(sum(x), sum(y), sum(z))];
  }),
) as unknown as Readonly<Record<LightId, Xyz>>;

/** XYZ of a perfect white under a light, Y = 1 to within the eighth decimal. */
export const whiteOf = (light: LightId): Xyz => whites[light];

/** White of average daylight, the white of every Lab value that does not say otherwise. */
export const d65White: Xyz = whites.D65;
