/**
 * How does a colour get onto a screen, and back?
 *
 * XYZ under D65 (Y = 1 for white) to linear-light sRGB and to a hex code `#rrggbb`, after
 * IEC 61966-2-1 as carried by culori. Linear values are kept outside 0–1; only a hex code clips,
 * channel by channel, and then says so: saturated candies and fluorescents do not fit a screen.
 */
import {
  convertLrgbToRgb,
  convertRgbToLrgb,
  convertRgbToXyz65,
  convertXyz65ToRgb,
  formatHex,
} from 'culori/fn';
import type { Problem } from '../ground/problem.ts';
import { InputError, shown } from '../ground/problem.ts';
import type { Lab, LinearRgb, Xyz } from '../ground/unit.ts';
import { asLinearRgb, asXyz } from '../ground/unit.ts';
import { clamp } from '../ground/vector.ts';
import { d65White } from './illuminant.ts';
import { labFromXyz, libraryWhite, xyzFromLab } from './lab.ts';

const hexForm = /^#[0-9a-f]{6}$/i;
// Half a step of an 8-bit channel: anything nearer to the gamut than this cannot be seen as clipped.
const clipTolerance = 0.5 / 255;

/** Linear-light sRGB of an XYZ under D65; 0–1 inside the gamut, kept outside it. */
export function linearRgbFromXyz(xyz: Xyz): LinearRgb {
  const { r, g, b } = convertRgbToLrgb(
    convertXyz65ToRgb({
      x: (xyz[0] / d65White[0]) * libraryWhite[0],
      y: xyz[1] / d65White[1],
      z: (xyz[2] / d65White[2]) * libraryWhite[2],
    }),
  );
  return asLinearRgb(r, g, b);
}

/** XYZ under D65 of linear-light sRGB; the inverse of `linearRgbFromXyz`. */
export function xyzFromLinearRgb(rgb: LinearRgb): Xyz {
  const { x, y, z } = convertRgbToXyz65(convertLrgbToRgb({ r: rgb[0], g: rgb[1], b: rgb[2] }));
  return asXyz(
    (x / libraryWhite[0]) * d65White[0],
    y * d65White[1],
    (z / libraryWhite[2]) * d65White[2],
  );
}

/** Lab (D65) of a hex code like `#1a2b3c`; throws an `InputError` for any other text. */
export function labFromHex(hex: string): Lab {
  if (!hexForm.test(hex)) throw new InputError([hexProblem(hex)]);
  const channel = (start: number): number => Number.parseInt(hex.slice(start, start + 2), 16) / 255;
  const { r, g, b } = convertRgbToLrgb({ r: channel(1), g: channel(3), b: channel(5) });
  return labFromXyz(xyzFromLinearRgb(asLinearRgb(r, g, b)));
}

/** Channels of the nearest sRGB of a Lab (D65), 0–1, and whether the screen had to clip it. */
export function srgbFromLab(lab: Lab): {
  channels: readonly [red: number, green: number, blue: number];
  isClipped: boolean;
} {
  const [red, green, blue] = linearRgbFromXyz(xyzFromLab(lab));
  const { r, g, b } = convertLrgbToRgb({ r: red, g: green, b: blue });
  const isClipped = [r, g, b].some((value) => value < -clipTolerance || value > 1 + clipTolerance);
  return { channels: [clamp(r, 0, 1), clamp(g, 0, 1), clamp(b, 0, 1)], isClipped };
}

/** Nearest hex code of a Lab (D65), and whether the screen had to clip it. */
export function hexFromLab(lab: Lab): { hex: string; isClipped: boolean } {
  const { channels, isClipped } = srgbFromLab(lab);
  const [r, g, b] = channels;
  return { hex: formatHex({ mode: 'rgb', r, g, b }), isClipped };
}

function hexProblem(found: string): Problem {
  return {
    place: 'colour',
    found: shown(found),
    expected: 'a colour like #1a2b3c',
    mend: 'Write # and six digits from 0–9 and a–f.',
  };
}
