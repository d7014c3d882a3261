/**
 * What would one published experiment say about these two colours together?
 *
 * Two Lab colours (D65) to the two-colour harmony CH of Ou & Luo: 1431 pairs judged on a screen
 * against mid grey, about −1.24 to +1.39 there; larger was called more harmonious. [OuLuo2006]
 * An opinion about one pair, never summed over three or more colours and never taste: on 348
 * historical combinations it does no better than chance once colour usage is held fixed. Two like
 * colours rate high, so it is no measure of contrast.
 */
import type { Lab } from '../ground/unit.ts';
import { chromaOf, hueDegreesOf } from './lab.ts';

/** Lowest and highest CH in the authors' own data. */
export const opinionRange = [-1.24, 1.39] as const;

/** The opinion and the three effects it is the sum of. */
export interface HarmonyOpinion {
  readonly opinion: number;
  /** HC: near in hue and chroma is better. */
  readonly chromatic: number;
  /** HL: light together, and apart in lightness, is better. */
  readonly lightness: number;
  /** HH: some hues please more than others, the more so the stronger they are. */
  readonly hue: number;
}

/** CH of a pair; order does not matter. */
export const pairOpinion = (a: Lab, b: Lab): number => harmonyOpinion(a, b).opinion;

/** CH of a pair with its three effects, HC, HL and HH. */
export function harmonyOpinion(a: Lab, b: Lab): HarmonyOpinion {
  const chromatic = chromaticEffect(a, b);
  const lightness = lightnessEffect(a, b);
  const hue = hueEffect(a) + hueEffect(b);
  return { opinion: chromatic + lightness + hue, chromatic, lightness, hue };
}

function chromaticEffect(a: Lab, b: Lab): number {
  const dChroma = chromaOf(a) - chromaOf(b);
  // The CIELAB metric hue difference squared, not degrees; rounding can take it just below zero.
  const dHueSquared = Math.max(0, (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2 - dChroma ** 2);
  const dC = Math.sqrt(dHueSquared + (dChroma / 1.46) ** 2);
  return 0.04 + 0.53 * Math.tanh(0.8 - 0.045 * dC);
}

function lightnessEffect(a: Lab, b: Lab): number {
  const ofSum = 0.28 + 0.54 * Math.tanh(-3.88 + 0.029 * (a[0] + b[0]));
  const ofDifference = 0.14 + 0.15 * Math.tanh(-2 + 0.2 * Math.abs(a[0] - b[0]));
  return ofSum + ofDifference;
}

function hueEffect(lab: Lab): number {
  const h = hueDegreesOf(lab);
  const sine = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);
  const strength = 0.5 + 0.5 * Math.tanh(-2 + 0.5 * chromaOf(lab));
  const ofHue = -0.08 - 0.14 * sine(h + 50) - 0.07 * sine(2 * h + 90);
  const fromYellow = (90 - h) / 10;
  const ofYellow = ((0.22 * lab[0] - 12.8) / 10) * Math.exp(fromYellow - Math.exp(fromYellow));
  return strength * (ofHue + ofYellow);
}
