/**
 * How much lighter does a dull surface look than a polished one of the same colour? A film throws
 * back 4 % of white light at its surface; polished, that goes into the mirror image and leaves the
 * colour deep; dull, most of it is strewn and greys the colour.
 *
 * In: roughness 0–1. Out: reflectance 0–0.04 to add to the body colour in every band. Own model:
 * the share of the first reflection thrown more than 8° from the mirror direction, a facet lean of
 * 4°, as a gloss trap of a sphere instrument would let pass. Limits: seen near the normal, under
 * directional light; a room bright all round lifts polished blacks as well.
 */
import { facetShareBeyond, fresnelReflectance } from './lobe.ts';

/** Beyond this angle from the mirror direction the eye takes a reflection for the surface. */
export const mirrorDegrees = 8;
const facetLean = ((mirrorDegrees / 2) * Math.PI) / 180;
const firstReflection = fresnelReflectance(1);

/** Reflectance that the surface of a film of this roughness adds to its body colour; 0–0.04. */
export const scatteredReflectance = (roughness: number): number =>
  firstReflection * facetShareBeyond(facetLean, roughness * roughness);
