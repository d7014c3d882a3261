/**
 * Where does a colour sit in CIELAB: how light, how red or green, how yellow or blue?
 *
 * XYZ (Y = 1 for a perfect white) to and from Lab [L* 0–100, a*, b*] relative to any white, D65
 * when none is named. [CIE015] The formula is culori's D65 mode; its other Lab mode means D50 and
 * is never used. Our D65 comes from the weights and culori's from xy 0.3127 0.3290, one part in
 * ten thousand apart, so XYZ is always passed as its ratio to white and white is exactly white.
 */
import { convertLab65ToXyz65, convertXyz65ToLab65 } from 'culori/fn';
import type { Lab, Xyz } from '../ground/unit.ts';
import { asLab, asXyz } from '../ground/unit.ts';
import { d65White } from './illuminant.ts';

/** XYZ that culori takes for white: x = 0.3127, y = 0.3290, Y = 1. Derived, as culori does. */
export const libraryWhite = [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329] as const;

/** Lab of an XYZ, relative to the white it was seen under (no adaptation transform). */
export function labFromXyz(xyz: Xyz, white: Xyz = d65White): Lab {
  const { l, a, b } = convertXyz65ToLab65({
    x: (xyz[0] / white[0]) * libraryWhite[0],
    y: xyz[1] / white[1],
    z: (xyz[2] / white[2]) * libraryWhite[2],
  });
  return asLab(l, a, b);
}

/** XYZ of a Lab that is relative to `white`; the inverse of `labFromXyz`. */
export function xyzFromLab(lab: Lab, white: Xyz = d65White): Xyz {
  const { x, y, z } = convertLab65ToXyz65({ l: lab[0], a: lab[1], b: lab[2] });
  return asXyz((x / libraryWhite[0]) * white[0], y * white[1], (z / libraryWhite[2]) * white[2]);
}

/** Chroma C*ab: distance from grey, 0 for a neutral. */
export const chromaOf = (lab: Lab): number => Math.hypot(lab[1], lab[2]);

/** Hue angle h_ab in degrees, 0 ≤ h < 360; 0 for an exact neutral, where hue has no meaning. */
export function hueDegreesOf(lab: Lab): number {
  if (lab[1] === 0 && lab[2] === 0) return 0;
  const degrees = (Math.atan2(lab[2], lab[1]) * 180) / Math.PI;
  return degrees < 0 ? (degrees + 360) % 360 : degrees;
}
