/**
 * Which reflectance stands behind a colour as the builder gave it? A spectrum is taken as it is;
 * Lab and sRGB are lifted to one plausible smooth spectrum. [Burns2020]
 *
 * In: sRGB hex, Lab under D65 or D50, or a spectrum. Out: reflectance on the internal grid, and
 * whether it was measured. Limits: a lifted spectrum is one of many that look the same under D65,
 * so what it shows under another light, or through a tinted coat, is indicative only.
 */
import { adaptedXyz } from '../colour/adaptation.ts';
import { whiteOf } from '../colour/illuminant.ts';
import { xyzFromLab } from '../colour/lab.ts';
import { recoveryFromXyz } from '../colour/recovery.ts';
import { reflectanceFromTable } from '../colour/spectrum.ts';
import { labFromHex } from '../colour/srgb.ts';
import { asLab, asReflectance, asXyz, type Reflectance, type Xyz } from '../ground/unit.ts';
import type { Colour } from './finish.ts';

export interface LiftedColour {
  readonly reflectance: Reflectance;
  /** Whether a spectrum was given; otherwise the reflectance is one of many that fit. */
  readonly isMeasured: boolean;
  /** False for colours brighter or purer than any surface that only reflects, such as fluorescents. */
  readonly isReachable: boolean;
}

// A lift costs a few Newton steps and the same colours are asked for at every look.
const lifts = new Map<string, LiftedColour>();
const mostLifts = 20_000;

/** Reflectance of a given colour, lifted where no spectrum was given. */
export function reflectanceOf(colour: Colour): LiftedColour {
  if ('spectrum' in colour) {
    const { nm, reflectance } = colour.spectrum;
    return {
      reflectance: reflectanceFromTable(nm, reflectance).reflectance,
      isMeasured: true,
      isReachable: true,
    };
  }
  const key =
    'srgb' in colour ? colour.srgb.toLowerCase() : `${colour.light} ${colour.lab.join(' ')}`;
  const known = lifts.get(key);
  if (known !== undefined) return known;
  const lift = liftedFrom(xyzOf(colour));
  if (lifts.size >= mostLifts) lifts.clear();
  lifts.set(key, lift);
  return lift;
}

// Too bright for a surface at its purity, the colour is lifted at a fraction of its light and the
// spectrum raised again: above 1 in some bands, as a fluorescent paint measures, and exact.
const dimmings = [1, 1.25, 1.6, 2, 3, 5];

function liftedFrom(xyz: Xyz): LiftedColour {
  for (const dimming of dimmings) {
    const [x, y, z] = xyz;
    const { reflectance, isReachable } = recoveryFromXyz(
      asXyz(x / dimming, y / dimming, z / dimming),
    );
    if (!isReachable) continue;
    const raised = asReflectance(reflectance.map((band) => band * dimming));
    return { reflectance: raised, isMeasured: false, isReachable: dimming === 1 };
  }
  // No light at all has this colour; the nearest one of the same lightness stands in.
  const { reflectance } = recoveryFromXyz(xyz);
  return { reflectance, isMeasured: false, isReachable: false };
}

/** XYZ under D65 of a colour given as sRGB or Lab. */
function xyzOf(colour: Exclude<Colour, { spectrum: unknown }>): Xyz {
  if ('srgb' in colour) return xyzFromLab(labFromHex(colour.srgb));
  const lab = asLab(...colour.lab);
  if (colour.light === 'D65') return xyzFromLab(lab);
  const white = whiteOf('D50');
  return adaptedXyz(xyzFromLab(lab, white), white, whiteOf('D65'));
}
