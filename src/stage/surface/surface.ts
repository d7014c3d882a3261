/**
 * What does a renderer need to know of one finish? The bridge from the finish model to light on
 * screen: nothing here is a colour of its own, everything follows from `appearanceOf` and gloss.
 *
 * In: a finish and its appearance under the chosen light, or a given part's Lab and gloss; the
 * build's scale. Out: linear-light sRGB as screens show it, GGX roughness, reflectance of the
 * surface at normal incidence, lengths in full-size metres. What a dull surface strews is part of
 * the scored colour and is drawn as reflection, so it comes off the body first; where the scored
 * colour is darker than that, or a matt one purer, the surface reflects less, and the colour still
 * holds. A satin colour that is both dark and pure is greyed a little by its own surface. Grain sizes
 * and the cloth's bloom are our judgement: they are seen, not scored.
 */

import { xyzFromLab } from '../../colour/lab.ts';
import { hexFromLab, labFromHex, linearRgbFromXyz } from '../../colour/srgb.ts';
import type { Appearance } from '../../finish/appearance.ts';
import { type Finish, isBareMetal, isCloth, isFlake } from '../../finish/finish.ts';
import { fresnelReflectance } from '../../finish/optics/lobe.ts';
import { scatteredReflectance } from '../../finish/optics/scatter.ts';
import { roughnessFromGloss60 } from '../../finish/sheen.ts';
import { asLab, asLinearRgb, type Lab, type LinearRgb } from '../../ground/unit.ts';
import { clamp, interpolate } from '../../ground/vector.ts';

export const grains = ['none', 'weave', 'fuzz', 'leather', 'brushed'] as const;
/** What the eye finds on the surface from close by. */
export type Grain = (typeof grains)[number];

export interface Surface {
  /** Body colour at 45° from the mirror direction, near it, and far from it; alike without flake. */
  readonly body: LinearRgb;
  readonly face: LinearRgb;
  readonly flop: LinearRgb;
  /** GGX roughness 0–1 of the outermost surface. */
  readonly roughness: number;
  /** Reflectance of the surface at normal incidence: 0.04 for a film, its colour for bare metal. */
  readonly mirror: LinearRgb;
  /** How strongly single flakes sparkle, 0–1, and how large they look, full-size metres. */
  readonly sparkle: number;
  readonly flakeM: number;
  /** Absorbance of a dyed film for each further crossing; 0 for films without dye. */
  readonly dye: LinearRgb;
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
const none = asLinearRgb(0, 0, 0);
/** Darkest body that is left when a surface's scatter comes off. */
const darkest = 0.0005;
/** Share of its reflection that a satin film of 20 GU scatters, and a dead matt one of 5. */
const [satin, matt] = [0.53, 0.88];
/** Flakes read as clusters; mm on the model. Common practice, no source. */
const flakeMm = { metallic: 0.035, candy: 0.035, pearl: 0.025 } as const;
const sparkles = { metallic: 0.4, candy: 0.3, pearl: 0.15 } as const;
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
  const cloth = isCloth(finish);
  const turns = isFlake(finish);
  const shell = isBareMetal(finish)
    ? metalShell(linearOf(look.lab))
    : cloth
      ? clothShell(linearOf(look.lab))
      : filmShell(
          linearOf(look.lab),
          turns ? linearOf(look.face) : undefined,
          turns ? linearOf(look.flop) : undefined,
          look.roughness,
        );
  const grain = grainOf(finish);
  const { effect } = finish;
  const flake =
    effect === 'metallic' || effect === 'candy' || effect === 'pearl' ? effect : undefined;
  return {
    ...shell,
    roughness: cloth ? 1 : look.roughness,
    sparkle: flake === undefined ? 0 : sparkles[flake],
    flakeM: (flake === undefined ? 1 : flakeMm[flake]) * scale * metresPerMm,
    dye: effect === 'candy' ? absorbanceOf(linearOf(look.lab)) : none,
    bloom: effect === 'flock' ? 0.9 : cloth ? 0.35 : 0,
    grain,
    grainM: grainMm[grain] * scale * metresPerMm,
    opacity: 1,
  };
}

/** How a given part is rendered; glass is seen through. */
export function surfaceOfGiven(given: Given, isGlass = false): Surface {
  const roughness = roughnessFromGloss60(given.gloss60);
  const rgb = linearOf(asLab(...given.lab));
  const shell =
    given.isMetal === true ? metalShell(rgb) : filmShell(rgb, undefined, undefined, roughness);
  return {
    ...shell,
    roughness,
    sparkle: 0,
    flakeM: 1,
    dye: none,
    bloom: 0,
    grain: 'none',
    grainM: 1,
    opacity: isGlass ? 0.06 : 1,
  };
}

type Shell = Pick<Surface, 'body' | 'face' | 'flop' | 'mirror'>;

/** Metal is all mirror. */
const metalShell = (mirror: LinearRgb): Shell => ({ body: none, face: none, flop: none, mirror });
/** Cloth has no film that mirrors: what it strews is all its own. */
const clothShell = (body: LinearRgb): Shell => ({ body, face: body, flop: body, mirror: none });

/** A film that mirrors at its surface, over a body that turns with flake. */
function filmShell(
  rgb: LinearRgb,
  face: LinearRgb | undefined,
  flop: LinearRgb | undefined,
  roughness: number,
): Shell {
  const scattered = scatteredReflectance(roughness) / film;
  const strewn = scattered * thrownBack(roughness);
  const [red, green, blue] = rgb;
  const room = (value: number): number => Math.max(0, Math.min(strewn, value - darkest)) / strewn;
  // A black duller than any film could be keeps back some of what a film would strew; so does a
  // matt colour purer than that, whose sheen nobody would miss.
  const ofBlack = strewn > 0 ? room(0.2126 * red + 0.7152 * green + 0.0722 * blue) : 1;
  const ofPure = strewn > 0 ? room(Math.min(...rgb)) : 1;
  const kept = interpolate(ofBlack, ofPure, clamp((scattered - satin) / (matt - satin), 0, 1));
  const off = strewn * kept;
  const under = (colour: LinearRgb): LinearRgb =>
    each(colour, (value) => Math.max(Math.min(darkest, value), value - off));
  const body = under(rgb);
  return {
    body,
    face: face === undefined ? body : under(face),
    flop: flop === undefined ? body : under(flop),
    mirror: asLinearRgb(film * kept, film * kept, film * kept),
  };
}

/**
 * What a rough film throws back straight on in even light; the fit is the shader's [Karis2013]. As
 * much of it as is scattered passes for the surface's own colour.
 */
function thrownBack(roughness: number): number {
  const [x, y] = [1 - roughness, 0.0425 - 0.0275 * roughness];
  const bend = Math.min(x * x, 2 ** -9.28) * x + y;
  return film * (1.04 - 0.572 * roughness - 1.04 * bend) + 1.04 * bend - 0.04 + 0.022 * roughness;
}

/** The same change to every channel. */
const each = ([red, green, blue]: LinearRgb, change: (value: number) => number): LinearRgb =>
  asLinearRgb(change(red), change(green), change(blue));

/** The colour as the screen shows it flat: in gamut, linear light. */
const linearOf = (lab: Lab): LinearRgb =>
  each(linearRgbFromXyz(xyzFromLab(labFromHex(hexFromLab(lab).hex))), (value) =>
    clamp(value, 0, 1),
  );

/** What a dye keeps back for a further crossing, from the colour two crossings leave. */
const absorbanceOf = (rgb: LinearRgb): LinearRgb =>
  each(rgb, (value) => -Math.log(Math.max(0.02, value)) / 2);

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
