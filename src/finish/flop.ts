/**
 * How does a metallic, pearl or candy change as the model turns? Face is the look near the mirror
 * direction, flop the look far from it; the recorded colour stands between.
 *
 * Angles are aspecular, in degrees from the mirror direction: 15, 45 and 110 [ASTME2194], lit
 * from 45°. Flop index FI = 2.69 (L15 − L110)^1.11 / L45^0.86, 0 for a solid, 15–17 very strong
 * [Alman1987] (formula from memory). Where only the index is known, face and flop are set evenly
 * in lightness about the 45° look, our judgement; hue is kept, so a pearl's colour travel must be
 * recorded. Defaults without any record are our judgement of fine model-scale flake.
 */
import { xyzFromReflectance } from '../colour/spectrum.ts';
import { asReflectance, type Reflectance } from '../ground/unit.ts';
import type { Effect } from './finish.ts';
import { pathFactor } from './optics/coat.ts';

export type Look = 'face' | 'colour' | 'flop';

/** Aspecular angle of each look, degrees. */
export const aspecularDegrees: Readonly<Record<Look, number>> = { face: 15, colour: 45, flop: 110 };
const lampDegrees = 45;

/** Flop index where none was recorded: fine silver flake turns plainly, pearl half as much. */
export const usualFlopIndex = (effect: Effect): number =>
  effect === 'metallic' ? 10 : effect === 'pearl' ? 5 : 0;

const [gain, power, damping] = [2.69, 1.11, 0.86];
const leastLightness = 1;

/** Flop index from CIE lightness at 15, 45 and 110°; 0 where the flop is not darker. */
export const flopIndexFrom = (l15: number, l45: number, l110: number): number =>
  l15 <= l110 ? 0 : (gain * (l15 - l110) ** power) / Math.max(leastLightness, l45) ** damping;

/** Lightness at 15 and 110° that give this flop index about this lightness at 45°. */
export function lightnessesFrom(flopIndex: number, l45: number): { face: number; flop: number } {
  const span = ((flopIndex * Math.max(leastLightness, l45) ** damping) / gain) ** (1 / power);
  // A dark, strong flake would sink below black: the face then carries the rest of the span.
  const flop = Math.max(Math.min(leastLightness, l45), l45 - span / 2);
  return { face: flop + span, flop };
}

/** Reflectance at `look` of a flake film whose 45° look is known; may pass 1 at the face. */
export function turned(at45: Reflectance, look: Look, flopIndex: number): Reflectance {
  if (look === 'colour' || flopIndex === 0) return at45;
  const luminance = xyzFromReflectance(at45, 'D65')[1];
  if (luminance <= 0) return at45;
  const wanted = lightnessesFrom(flopIndex, lightnessFrom(luminance))[look];
  const factor = luminanceFrom(wanted) / luminance;
  return asReflectance(at45.map((band) => band * factor));
}

/** Way through a clear film at this look over the way at the 45° look it was recorded at. */
export function pathRatio(look: Look): number {
  return pathAt(aspecularDegrees[look]) / pathAt(aspecularDegrees.colour);
}
const pathAt = (aspecular: number): number =>
  (pathFactor(radians(lampDegrees)) + pathFactor(radians(aspecular - lampDegrees))) / 2;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

// CIE 1976 lightness, here for luminances above white too, where a face glares. [CIE015]
const knee = 216 / 24389;
const slope = 24389 / 27;
const lightnessFrom = (luminance: number): number =>
  luminance > knee ? 116 * Math.cbrt(luminance) - 16 : slope * luminance;
const luminanceFrom = (lightness: number): number =>
  lightness > 8 ? ((lightness + 16) / 116) ** 3 : lightness / slope;
