/**
 * How does a paint film throw back light at its surface, before any colour comes in? Fresnel
 * reflection of a smooth film, and the microfacet lobe that spreads it when the film is rough.
 *
 * Angles in radians from the surface normal; alpha is the GGX width, roughness squared as in
 * glTF. Refractive index 1.5 for dried paint. [Walter2007]; the height-correlated form of the
 * Smith masking term after Heitz 2014. Limits: one scattering per facet, no orange peel, no haze.
 */

/** Refractive index of dried paint and clear, as every lacquer, enamel and acrylic nearly is. */
export const filmIndex = 1.5;

/** Share of unpolarised light reflected where it meets an index `n` from air; 0–1. */
export function fresnelReflectance(cosIncidence: number, n = filmIndex): number {
  const cosIn = Math.min(1, Math.abs(cosIncidence));
  const cosInside = Math.sqrt(1 - (1 - cosIn * cosIn) / (n * n));
  const across = (cosIn - n * cosInside) / (cosIn + n * cosInside);
  const along = (cosInside - n * cosIn) / (cosInside + n * cosIn);
  return (across * across + along * along) / 2;
}

/** Height-correlated Smith masking and shadowing of a GGX surface; 0–1. */
export function maskingShare(cosIn: number, cosOut: number, alpha: number): number {
  const squared = alpha * alpha;
  const inward = cosOut * Math.sqrt(squared + (1 - squared) * cosIn * cosIn);
  const outward = cosIn * Math.sqrt(squared + (1 - squared) * cosOut * cosOut);
  return (2 * cosIn * cosOut) / (inward + outward);
}

/**
 * Half-angle from the normal within which the share `u` of the facets' projected area lies
 * (0 ≤ u < 1): the cumulative form of the GGX distribution. [Walter2007] eq. 35
 */
export const facetAngle = (u: number, alpha: number): number =>
  Math.atan(alpha * Math.sqrt(u / (1 - u)));

/** Share of the facets' projected area that leans further than `angle` from the normal; 0–1. */
export function facetShareBeyond(angle: number, alpha: number): number {
  const squared = alpha * alpha;
  const tangent = Math.tan(angle);
  return squared === 0 ? 0 : squared / (squared + tangent * tangent);
}
