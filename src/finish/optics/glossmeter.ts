/**
 * What would a gloss meter read on a film of this roughness? The meter's beam and window are laid
 * over the microfacet lobe and the flux that enters the window is summed, then divided by what the
 * polished standard (n = 1.567) sends there, which is 100 GU. [ISO2813] [Walter2007]
 *
 * In: roughness 0–1 (alpha = roughness squared), geometry 20, 60 or 85°. Out: GU. Angles and
 * standard from the standard; aperture sizes from memory. Limits: surface reflection only, no
 * light from the body (a white body adds about 2 GU at 60°); real films look smoother than GGX
 * at 85°, so read 60° as the figure and 20° and 85° as companions.
 */
import { facetAngle, filmIndex, fresnelReflectance, maskingShare } from './lobe.ts';

export const geometries = [20, 60, 85] as const;
export type Geometry = (typeof geometries)[number];

/** Full angles in degrees, in the plane of incidence and across it. */
const source = { along: 0.75, across: 2.5 };
const windows: Record<Geometry, { along: number; across: number }> = {
  20: { along: 1.8, across: 3.6 },
  60: { along: 4.4, across: 11.7 },
  85: { along: 4.0, across: 6.0 },
};
export const standardIndex = 1.567;

// Midpoint rules: doubling both counts moves no reading by more than 0.02 GU.
const rings = 1200;
const spokes = 256;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Gloss units a film of index `n` reads when it is smooth as a mirror. */
export const mirrorGloss = (geometry: Geometry, n = filmIndex): number => {
  const cosine = Math.cos(radians(geometry));
  return (100 * fresnelReflectance(cosine, n)) / fresnelReflectance(cosine, standardIndex);
};

/** Gloss units read at `geometry` on a film of index 1.5 with this roughness (0–1). */
export function glossReading(roughness: number, geometry: Geometry): number {
  const alpha = roughness * roughness;
  if (alpha === 0) return mirrorGloss(geometry);
  const incidence = radians(geometry);
  const [sine, cosine] = [Math.sin(incidence), Math.cos(incidence)];
  const half = { source: halves(source), window: halves(windows[geometry]) };

  let flux = 0;
  for (let ring = 0; ring < rings; ring++) {
    // Equal shares of projected facet area; the square packs rings towards the lobe's middle.
    const step = (ring + 0.5) / rings;
    const u = step * step;
    const lean = facetAngle(u, alpha);
    const [leanSine, leanCosine] = [Math.sin(lean), Math.cos(lean)];
    for (let spoke = 0; spoke < spokes / 2; spoke++) {
      // The lobe is symmetrical about the plane of incidence: half the turn is enough.
      const turn = (2 * Math.PI * (spoke + 0.5)) / spokes;
      const h = [leanSine * Math.cos(turn), leanSine * Math.sin(turn), leanCosine] as const;
      const cosLocal = cosine * h[2] - sine * h[0];
      if (cosLocal <= 0) continue;
      const out = [sine + 2 * cosLocal * h[0], 2 * cosLocal * h[1], 2 * cosLocal * h[2] - cosine];
      const [outX, outY, outZ] = out as [number, number, number];
      if (outZ <= 0) continue;
      const ahead = outX * sine + outZ * cosine;
      if (ahead <= 0) continue;
      const along = Math.atan2(outX * cosine - outZ * sine, ahead);
      const across = Math.atan2(outY, ahead);
      const entering =
        overlapShare(along, half.source.along, half.window.along) *
        overlapShare(across, half.source.across, half.window.across);
      if (entering === 0) continue;
      const weight = (2 * step) / rings / (spokes / 2);
      const reflected =
        (fresnelReflectance(cosLocal) * maskingShare(cosine, outZ, alpha) * cosLocal) /
        (cosine * leanCosine);
      flux += weight * reflected * entering;
    }
  }
  return (100 * flux) / fresnelReflectance(cosine, standardIndex);
}

const halves = ({ along, across }: { along: number; across: number }) => ({
  along: radians(along / 2),
  across: radians(across / 2),
});

/** Share of a beam of half-width `beam`, centred at `offset`, that falls inside ±`window`. */
function overlapShare(offset: number, beam: number, window: number): number {
  const inside = Math.min(offset + beam, window) - Math.max(offset - beam, -window);
  return Math.max(0, Math.min(1, inside / (2 * beam)));
}
