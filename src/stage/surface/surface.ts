/**
 * What does a renderer need to know of one finish? The bridge from the finish model to light on
 * screen: nothing here is a colour of its own, everything follows from `appearanceOf` and gloss.
 *
 * In: a finish and its appearance under the chosen light, or a given part's Lab and gloss; the
 * build's scale. Out: linear-light sRGB as screens show it, GGX roughness, reflectance of the
 * surface at normal incidence, lengths in full-size metres. What a dull surface strews is part of
 * the scored colour and is drawn as reflection, so it comes off the body first, as far as a body
 * can be dark. Grain sizes and the cloth's bloom are our judgement: they are seen, not scored.
 */

import { xyzFromLab } from '../../colour/lab.ts';
import { hexFromLab, labFromHex, linearRgbFromXyz } from '../../colour/srgb.ts';
import type { Appearance } from '../../finish/appearance.ts';
import { type Finish, isBareMetal, isCloth, isFlake } from '../../finish/finish.ts';
import { fresnelReflectance } from '../../finish/optics/lobe.ts';
import { scatteredReflectance } from '../../finish/optics/scatter.ts';
import { roughnessFromGloss60 } from '../../finish/sheen.ts';
import { asLab, type Lab } from '../../ground/unit.ts';

export type Rgb = readonly [red: number, green: number, blue: number];

export const grains = ['none', 'weave', 'fuzz', 'leather', 'brushed'] as const;
/** What the eye finds on the surface from close by. */
export type Grain = (typeof grains)[number];

export interface Surface {
  /** Body colour at 45° from the mirror direction, near it, and far from it; alike without flake. */
  readonly body: Rgb;
  readonly face: Rgb;
  readonly flop: Rgb;
  /** GGX roughness 0–1 of the outermost surface. */
  readonly roughness: number;
  /** Reflectance of the surface at normal incidence: 0.04 for a film, its colour for bare metal. */
  readonly mirror: Rgb;
  /** How strongly single flakes sparkle, 0–1, and how large they look, full-size metres. */
  readonly sparkle: number;
  readonly flakeM: number;
  /** Absorbance of a dyed film for each further crossing; 0 for films without dye. */
  readonly dye: Rgb;
  /** Bloom of upright fibres at grazing view, 0–1. */
  readonly bloom: number;
  readonly grain: Grain;
  /** Size of the grain, full-size metres. */
  readonly grainM: number;
  /** 1 hides what lies beneath, 0 shows it whole. */
  readonly opacity: number;
}

/** What a part is given where the build does not say. */
export interface Given {
  readonly lab: readonly [number, number, number];
  readonly gloss60: number;
  readonly isMetal?: boolean | undefined;
}

const metresPerMm = 1 / 1000;
const film = fresnelReflectance(1);
const filmMirror: Rgb = [film, film, film];
const none: Rgb = [0, 0, 0];
/** Darkest body that is left when a surface's scatter comes off. */
const darkest = 0.0005;
/** Flakes read as clusters; mm on the model. Common practice, no source. */
const flakeMm = { metallic: 0.07, candy: 0.06, pearl: 0.045 } as const;
const sparkles = { metallic: 0.5, candy: 0.35, pearl: 0.2 } as const;
/** Thread of a ribbon, fibre of flock, crease of leather, brush line: mm on the model. */
const grainMm: Readonly<Record<Grain, number>> = {
  none: 1,
  weave: 0.28,
  fuzz: 0.2,
  leather: 0.26,
  brushed: 0.1,
};

/** How a finish is rendered on a model of this scale (24 for 1:24). */
export function surfaceOf(finish: Finish, look: Appearance, scale: number): Surface {
  const { roughness } = look;
  const metal = isBareMetal(finish);
  const shown = (lab: Lab): Rgb => linearOf(lab);
  // Cloth has no film that mirrors: what it strews is all its own.
  const under = (lab: Lab): Rgb =>
    isCloth(finish) ? shown(lab) : withoutScatter(shown(lab), roughness);
  const turns = isFlake(finish);
  const grain = grainOf(finish);
  const flake =
    finish.effect === 'metallic' || finish.effect === 'candy' || finish.effect === 'pearl'
      ? finish.effect
      : undefined;
  const body = metal ? none : under(look.lab);
  const isDyed = finish.effect === 'candy';
  return {
    body,
    face: metal ? none : turns ? under(look.face) : body,
    flop: metal ? none : turns ? under(look.flop) : body,
    roughness: isCloth(finish) ? 1 : roughness,
    mirror: metal ? shown(look.lab) : isCloth(finish) ? none : filmMirror,
    sparkle: flake === undefined ? 0 : sparkles[flake],
    flakeM: (flake === undefined ? 1 : flakeMm[flake]) * scale * metresPerMm,
    dye: isDyed ? absorbanceOf(shown(look.lab)) : none,
    bloom: finish.effect === 'flock' ? 0.9 : isCloth(finish) ? 0.35 : 0,
    grain,
    grainM: grainMm[grain] * scale * metresPerMm,
    opacity: 1,
  };
}

/** How a given part is rendered; glass is seen through. */
export function surfaceOfGiven(given: Given, isGlass = false): Surface {
  const roughness = roughnessFromGloss60(given.gloss60);
  const rgb = linearOf(asLab(...given.lab));
  const metal = given.isMetal === true;
  const body = metal ? none : withoutScatter(rgb, roughness);
  return {
    body,
    face: body,
    flop: body,
    roughness,
    mirror: metal ? rgb : filmMirror,
    sparkle: 0,
    flakeM: 1,
    dye: none,
    bloom: 0,
    grain: 'none',
    grainM: 1,
    opacity: isGlass ? 0.06 : 1,
  };
}

/** The colour as the screen shows it flat: in gamut, linear light. */
const linearOf = (lab: Lab): Rgb =>
  linearRgbFromXyz(xyzFromLab(labFromHex(hexFromLab(lab).hex))).map((value) =>
    Math.min(1, Math.max(0, value)),
  ) as unknown as Rgb;

function withoutScatter(rgb: Rgb, roughness: number): Rgb {
  const scattered = scatteredReflectance(roughness);
  return rgb.map((value) =>
    Math.max(Math.min(darkest, value), value - scattered),
  ) as unknown as Rgb;
}

/** What a dye keeps back for a further crossing, from the colour two crossings leave. */
const absorbanceOf = (rgb: Rgb): Rgb =>
  rgb.map((value) => -Math.log(Math.max(0.02, value)) / 2) as unknown as Rgb;

function grainOf({ effect }: Finish): Grain {
  switch (effect) {
    case 'ribbon':
      return 'weave';
    case 'flock':
      return 'fuzz';
    case 'leather':
      return 'leather';
    case 'bare-metal':
    case 'foil':
      return 'brushed';
    default:
      return 'none';
  }
}
