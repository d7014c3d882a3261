/**
 * A finish as the scores see it: its colour in the chosen light, under the other lights and to
 * other eyes, its sheen step, and what kind of surface it is. All colours are CIELAB adapted to
 * D65; the conditions of steadiness are D65, A and LED-B3 (CIE), protan and deutan [Machado2009].
 */
import { labSeenBy } from '../../colour/deficiency.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { appearanceOf } from '../../finish/appearance.ts';
import { type Effect, type Finish, isBareMetal, isCloth, isFlake } from '../../finish/finish.ts';
import { asLab, type Lab } from '../../ground/unit.ts';
import { neutralChroma, sheenSteps } from '../judgement.ts';
import { along } from './curve.ts';

/** Lights a scheme should hold under. */
export const steadyLights = ['D65', 'A', 'LED-B3'] as const;
/** Eyes a scheme should hold for; tritan is shown elsewhere, not scored. */
export const steadyEyes = ['protan', 'deutan'] as const;

export interface Worn {
  readonly ref: string;
  readonly name: string;
  readonly effect: Effect;
  /** In the light the build is judged under. */
  readonly lab: Lab;
  readonly chroma: number;
  /** In each of `steadyLights`. */
  readonly underLights: readonly Lab[];
  /** To each of `steadyEyes`, in D65. */
  readonly toEyes: readonly Lab[];
  readonly gloss60: number;
  /** Sheen step of the gloss; whole steps look about equally far apart. */
  readonly sheenStep: number;
  readonly isCloth: boolean;
  /** Bare or foil metal. */
  readonly isMetal: boolean;
  /** Metallic, pearl or candy: flake that turns with the light. */
  readonly isFlake: boolean;
  /** Shines like metal: bare metal, or metallic paint. */
  readonly isMetalLike: boolean;
  /** Paint or leather-like: a surface whose sheen someone chose. */
  readonly isPaint: boolean;
  readonly isNeutral: boolean;
  /** RMS CIEDE2000 between the stated and the real colour. */
  readonly deltaE: number;
  /** A colour under another light rests on a lifted spectrum. */
  readonly isIndicative: boolean;
}

const chromaOf = (lab: Lab): number => Math.hypot(lab[1], lab[2]);

/** The finish with reference `ref` as seen under `light`. */
export function wornFrom(ref: string, finish: Finish, light: LightId): Worn {
  const seen = appearanceOf(finish, light);
  const inDaylight = light === 'D65' ? seen : appearanceOf(finish, 'D65');
  return {
    ...surfaceOf(finish.effect, seen.lab, seen.gloss60),
    ref,
    name: finish.name,
    underLights: steadyLights.map((id) =>
      id === light ? seen.lab : id === 'D65' ? inDaylight.lab : appearanceOf(finish, id).lab,
    ),
    toEyes: steadyEyes.map((eye) => labSeenBy(inDaylight.lab, eye)),
    deltaE: seen.deltaE,
    isIndicative: seen.isIndicative,
  };
}

/** A given surface (tyre, lamp, glass) from the car's sight table: the same under every light. */
export function wornAsGiven(
  name: string,
  given: {
    readonly lab: readonly [number, number, number];
    readonly gloss60: number;
    readonly isMetal?: boolean | undefined;
  },
): Worn {
  const lab = asLab(...given.lab);
  return {
    ...surfaceOf(given.isMetal === true ? 'bare-metal' : 'rubber', lab, given.gloss60),
    ref: `given/${name}`,
    name,
    underLights: steadyLights.map(() => lab),
    toEyes: steadyEyes.map((eye) => labSeenBy(lab, eye)),
    deltaE: 0,
    isIndicative: false,
  };
}

function surfaceOf(effect: Effect, lab: Lab, gloss60: number) {
  const chroma = chromaOf(lab);
  return {
    effect,
    lab,
    chroma,
    gloss60,
    sheenStep: along(sheenSteps, gloss60),
    isCloth: isCloth({ effect }),
    isMetal: isBareMetal({ effect }),
    isFlake: isFlake({ effect }),
    isMetalLike: isBareMetal({ effect }) || effect === 'metallic',
    isPaint:
      effect === 'leather' || ['solid', 'metallic', 'pearl', 'candy', 'clear'].includes(effect),
    isNeutral: chroma < neutralChroma,
  };
}
