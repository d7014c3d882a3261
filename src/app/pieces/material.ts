/**
 * What does the bowl of a sprayed test spoon show? From a finish and its appearance to the colours
 * and shapes that draw it: a sharper and brighter lamp the glossier the surface, face turning to
 * flop on flake, deeper rims on candy, weave and fuzz on cloth.
 *
 * Colours are sRGB hex, blur in units of the bowl drawing (48 high), opacity 0–1. The shapes are
 * our judgement: they describe a finish to the eye and are not measured.
 */
import { hexFromLab } from '../../colour/srgb.ts';
import type { Appearance } from '../../finish/appearance.ts';
import { type Finish, isBareMetal, isCloth, isFlake } from '../../finish/finish.ts';
import { asLab, type Lab } from '../../ground/unit.ts';

export type Grain = 'flake' | 'pearl' | 'weave' | 'fuzz' | 'leather' | 'brushed';

export interface Material {
  /** Under the lamp, over most of the bowl, and at its rim. */
  readonly face: string;
  readonly middle: string;
  readonly rim: string;
  readonly lampBlur: number;
  readonly lampOpacity: number;
  readonly grain: Grain | undefined;
}

/** How a bowl sprayed with this finish is drawn. */
export function materialOf(finish: Finish, look: Appearance): Material {
  const [face, rim] = isFlake(finish)
    ? [look.face, look.flop]
    : isBareMetal(finish)
      ? [lighter(look.lab, 12), lighter(look.lab, -24)]
      : [lighter(look.lab, look.gloss60 / 40), lighter(look.lab, -4 - look.gloss60 / 14)];
  return {
    face: hexFromLab(face).hex,
    middle: look.hex,
    rim: hexFromLab(finish.effect === 'candy' ? lighter(rim, -8) : rim).hex,
    ...lampOn(finish, look.roughness),
    grain: grainOf(finish),
  };
}

/** The lamp's reflection: narrow and bright on gloss, gone on cloth. */
function lampOn(finish: Finish, roughness: number): Pick<Material, 'lampBlur' | 'lampOpacity'> {
  if (isCloth(finish)) return { lampBlur: 8, lampOpacity: 0 };
  return {
    lampBlur: 0.3 + 13 * roughness,
    lampOpacity: Math.max(0.06, 0.94 - 2.1 * roughness),
  };
}

function grainOf({ effect }: Finish): Grain | undefined {
  switch (effect) {
    case 'metallic':
    case 'candy':
      return 'flake';
    case 'pearl':
      return 'pearl';
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
      return undefined;
  }
}

const lighter = (lab: Lab, by: number): Lab =>
  asLab(Math.min(100, Math.max(0, lab[0] + by)), lab[1], lab[2]);
