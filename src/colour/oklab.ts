/**
 * Which hue would a person name, and how strong is it?
 *
 * OKLab and its polar form OKLCH of a colour under D65, through culori. [Ottosson2020] Lightness
 * is 0–1 here, unlike Lab's 0–100; chroma is 0 to about 0.4; hue in degrees, 0 ≤ h < 360. Better
 * than Lab for naming hues (blue stays blue as it lightens), not used for differences.
 */
import { convertLrgbToOklab, convertOklabToLrgb } from 'culori/fn';
import type { Lab, Xyz } from '../ground/unit.ts';
import { asLinearRgb } from '../ground/unit.ts';
import { labFromXyz, xyzFromLab } from './lab.ts';
import { linearRgbFromXyz, xyzFromLinearRgb } from './srgb.ts';

/** OKLab: lightness 0–1, green–red and blue–yellow about ±0.4. */
export interface Oklab {
  readonly lightness: number;
  readonly a: number;
  readonly b: number;
}

/** OKLCH: lightness 0–1, chroma from 0, hue in degrees 0 ≤ h < 360 (0 where there is no hue). */
export interface Oklch {
  readonly lightness: number;
  readonly chroma: number;
  readonly hueDegrees: number;
}

// Below this chroma the hue is rounding noise; a just visible chroma is about 0.005.
const noHue = 1e-5;

/** OKLab of an XYZ under D65. */
export function oklabFromXyz(xyz: Xyz): Oklab {
  const [r, g, b] = linearRgbFromXyz(xyz);
  const oklab = convertLrgbToOklab({ r, g, b });
  return { lightness: oklab.l, a: oklab.a, b: oklab.b };
}

/** OKLCH of a Lab (D65). */
export function oklchFromLab(lab: Lab): Oklch {
  const { lightness, a, b } = oklabFromXyz(xyzFromLab(lab));
  const chroma = Math.hypot(a, b);
  if (chroma < noHue) return { lightness, chroma, hueDegrees: 0 };
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  return { lightness, chroma, hueDegrees: degrees < 0 ? (degrees + 360) % 360 : degrees };
}

/** Lab (D65) of an OKLCH; the inverse of `oklchFromLab`. */
export function labFromOklch({ lightness, chroma, hueDegrees }: Oklch): Lab {
  const hue = (hueDegrees * Math.PI) / 180;
  const { r, g, b } = convertOklabToLrgb({
    l: lightness,
    a: chroma * Math.cos(hue),
    b: chroma * Math.sin(hue),
  });
  return labFromXyz(xyzFromLinearRgb(asLinearRgb(r, g, b)));
}
