/**
 * What does the eye meet when everything is dry? One finish under one light, as scores, pictures
 * and terminal all use it, so what is scored is what is shown.
 *
 * In: a finish, one of the five lights, how many dyed coats. Out: XYZ under that light (white
 * Y = 1), Lab and hex adapted to D65 by CAT16 [Li2017], face and flop Lab, GU at 60°, roughness,
 * RMS CIEDE2000. The colour is the body plus what a dull surface strews of its reflection; where
 * the colour was taken from a sample of other gloss, the sample's share comes off first. Limits: a
 * flat view under directional light; face and flop of unrecorded flake are derived.
 */
import { adaptedXyz } from '../colour/adaptation.ts';
import { type LightId, whiteOf } from '../colour/illuminant.ts';
import { labFromXyz } from '../colour/lab.ts';
import { xyzFromReflectance } from '../colour/spectrum.ts';
import { hexFromLab } from '../colour/srgb.ts';
import { asReflectance, type Lab, type Reflectance, type Xyz } from '../ground/unit.ts';
import { type Body, bodyOf } from './film.ts';
import { type Finish, isFlake } from './finish.ts';
import { scatteredReflectance } from './optics/scatter.ts';
import { uncertaintyOf } from './provenance.ts';
import { roughnessFromGloss60, type SheenClass, sheenClassOf } from './sheen.ts';

export interface Appearance {
  /** Under the light, adapted to D65, surface scatter included: what the scores compare. */
  readonly lab: Lab;
  /** Under the light itself. */
  readonly xyz: Xyz;
  readonly hex: string;
  /** Whether `hex` had to be brought into the gamut of a screen. */
  readonly isClipped: boolean;
  readonly face: Lab;
  readonly flop: Lab;
  /** GU at 60°. */
  readonly gloss60: number;
  /** 0 mirror smooth to 1, as renderers take it. */
  readonly roughness: number;
  readonly sheen: SheenClass;
  /** RMS CIEDE2000 between the stated and the real colour. */
  readonly deltaE: number;
  /** Whether the colour rests on a lifted spectrum in a way that matters here. */
  readonly isIndicative: boolean;
}

export interface ViewOptions {
  /** Coats of a candy or clear instead of the recorded number; other finishes hide and ignore it. */
  readonly coats?: number;
}

/** Least reflectance of any real black paint, kept when a sample's scatter is taken off. */
const darkest = 0.0005;

/** Look of one finish under one light. */
export function appearanceOf(
  finish: Finish,
  light: LightId,
  options: ViewOptions = {},
): Appearance {
  const coats = options.coats ?? finish.coats;
  const body = bodyOf(finish, 'colour', coats);
  const roughness = roughnessFromGloss60(finish.gloss60);
  const lift = surfaceLift(finish, roughness);
  const seen = (part: Body): Xyz => xyzFromReflectance(lifted(part.reflectance, lift), light);
  const xyz = seen(body);
  const lab = adaptedLab(xyz, light);
  const turns = isFlake(finish) || finish.effect === 'clear' || finish.clear?.tint !== undefined;
  return {
    lab,
    xyz,
    ...hexFromLab(lab),
    face: turns ? adaptedLab(seen(bodyOf(finish, 'face', coats)), light) : lab,
    flop: turns ? adaptedLab(seen(bodyOf(finish, 'flop', coats)), light) : lab,
    gloss60: finish.gloss60,
    roughness,
    sheen: sheenClassOf(finish.gloss60),
    deltaE: uncertaintyOf(finish.provenance),
    isIndicative: !body.isReachable || (!body.isMeasured && (light !== 'D65' || body.isStack)),
  };
}

/** Reflectance to add for the surface: all of it where films were computed, else the change. */
function surfaceLift(finish: Finish, roughness: number): number {
  const own = scatteredReflectance(roughness);
  const isDyed = finish.effect === 'candy' || finish.effect === 'clear';
  if (isDyed && finish.undercoats.length > 0) return own;
  const { sampleGloss60 } = finish;
  if (sampleGloss60 === undefined || sampleGloss60 === finish.gloss60) return 0;
  return own - scatteredReflectance(roughnessFromGloss60(sampleGloss60));
}

const lifted = (reflectance: Reflectance, lift: number): Reflectance =>
  lift === 0
    ? reflectance
    : asReflectance(reflectance.map((band) => Math.max(Math.min(darkest, band), band + lift)));

const adaptedLab = (xyz: Xyz, light: LightId): Lab =>
  labFromXyz(light === 'D65' ? xyz : adaptedXyz(xyz, whiteOf(light), whiteOf('D65')));
