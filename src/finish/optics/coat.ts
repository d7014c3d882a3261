/**
 * What does one film do to the light that passes it? The coating equations that stacks are made
 * of, each for one wavelength.
 *
 * In and out: reflectances and transmittances 0–1, angles in radians. Beer–Lambert absorption;
 * interface correction [Saunderson1942] with k1 lost outside (the surface glint) and k2 turned
 * back inside; scattering films [Kubelka1948] (film equation from memory, checked at both limits).
 * Limits: light is taken as fully strewn inside scattering films; no fluorescence.
 */
import { filmIndex } from './lobe.ts';

/** First-surface share of a film of index 1.5 at normal incidence. */
export const k1 = 0.04;
/** Share of strewn light turned back inside: 0.4–0.6 in practice, 0.596 in theory. */
export const k2 = 0.6;

/** Reflectance seen from outside a film whose inside reflectance is `inside`. */
export const seenThroughSurface = (inside: number, outer = k1, inner = k2): number =>
  outer + ((1 - outer) * (1 - inner) * inside) / (1 - inner * inside);

/** Inside reflectance of a film that shows `seen` outside: the inverse of `seenThroughSurface`. */
export const insideSurface = (seen: number, outer = k1, inner = k2): number =>
  (seen - outer) / (1 - outer - inner + inner * seen);

/** Transmittance after `passes` of one film that lets `once` through; `passes` may be a fraction. */
export const transmittance = (once: number, passes: number): number => once ** passes;

/** How much longer than straight down the way through a film is at this angle of view; ≥ 1. */
export const pathFactor = (angle: number, n = filmIndex): number =>
  1 / Math.sqrt(1 - (Math.sin(angle) / n) ** 2);

/** Ratio of absorption to scattering of a film thick enough to hide, from its reflectance. */
export const absorptionFromMasstone = (hiding: number): number => (1 - hiding) ** 2 / (2 * hiding);

/** Reflectance of a film thick enough to hide, from its ratio of absorption to scattering. */
export const masstoneFromAbsorption = (ratio: number): number =>
  1 + ratio - Math.sqrt(ratio * ratio + 2 * ratio);

/**
 * Reflectance of a scattering film over a ground. `absorption` K and `scatter` S per unit of
 * `thickness`; S = 0 gives the clear film, a large S × thickness the masstone.
 */
export function filmOverGround(
  absorption: number,
  scatter: number,
  thickness: number,
  ground: number,
): number {
  if (scatter === 0) return ground * Math.exp(-2 * absorption * thickness);
  const a = 1 + absorption / scatter;
  const b = Math.sqrt(a * a - 1);
  if (b * scatter * thickness > 300) return a - b;
  const cotangent = b === 0 ? 1 / (scatter * thickness) : b / Math.tanh(b * scatter * thickness);
  return (1 - ground * (a - cotangent)) / (a - ground + cotangent);
}
