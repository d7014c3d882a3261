/**
 * What colour comes back out of the films of one finish? Base, candy coats and tinted clear, from
 * the bottom up, band by band.
 *
 * In: a finish, the look (face, 45°, flop) and how many coats. Out: the reflectance of the body,
 * without any surface reflection. A dyed coat follows Beer–Lambert: its colour is white seen
 * through all its coats, so one coat passes T1 = R^(1/2n) and the light crosses it twice. Under a
 * strewing base light is also turned back inside [Saunderson1942]; flake throws it straight out.
 * The base's record already holds the loss at its surface, which the outermost film takes over.
 * Limits: coats are relative, every coat as thick as the recorded ones; solid colours hide fully.
 */
import { asReflectance, type Reflectance } from '../ground/unit.ts';
import { reflectanceOf } from './colour.ts';
import type { Colour, Finish, Undercoat } from './finish.ts';
import { type Look, pathRatio, turned, usualFlopIndex } from './flop.ts';
import { insideSurface, k1, seenThroughSurface, transmittance } from './optics/coat.ts';

export interface Body {
  readonly reflectance: Reflectance;
  /** Whether every film that matters was given as a spectrum. */
  readonly isMeasured: boolean;
  /** Whether a reflecting surface can have every colour in it; fluorescent ones pass 1. */
  readonly isReachable: boolean;
  /** Whether a dyed film lies over another, so that spectra were multiplied. */
  readonly isStack: boolean;
}

/** Reflectance of everything under the surface at this look; `coats` replaces the dyed coats. */
export function bodyOf(finish: Finish, look: Look, coats = finish.coats): Body {
  const isDyed = finish.effect === 'candy' || finish.effect === 'clear';
  const body = isDyed ? dyedBody(finish, look, coats) : ownBody(finish, look);
  const tint = finish.clear?.tint;
  if (tint === undefined) return body;
  const isFlake = isDyed ? isFlakeBase(finish.undercoats.at(-1)) : hasFlake(finish);
  return through(body, tint, 1, look, isFlake ? 'straight' : 'strewn');
}

const hasFlake = ({ effect }: Pick<Finish, 'effect'>): boolean =>
  effect === 'metallic' || effect === 'pearl';
const isFlakeBase = (base: Undercoat | undefined): boolean => base?.effect === 'metallic';

/** Solid, flake or material: the record itself, turned to the look. */
function ownBody(finish: Finish, look: Look): Body {
  const recorded = look === 'colour' ? undefined : finish[look];
  if (recorded !== undefined && hasFlake(finish)) {
    return { ...reflectanceOf(recorded), isStack: false };
  }
  const { reflectance, ...origin } = reflectanceOf(finish.colour);
  const flopIndex = hasFlake(finish) ? (finish.flopIndex ?? usualFlopIndex(finish.effect)) : 0;
  return { reflectance: turned(reflectance, look, flopIndex), ...origin, isStack: false };
}

/** Candy or clear: its top undercoat seen through the coats; white without an undercoat. */
function dyedBody(finish: Finish, look: Look, coats: number): Body {
  const share = coats / finish.coats;
  const base = finish.undercoats.at(-1);
  if (base === undefined) {
    const { reflectance, ...origin } = reflectanceOf(finish.colour);
    const dyed = reflectance.map((band) => transmittance(clear(band), share * pathRatio(look)));
    return { reflectance: asReflectance(dyed), ...origin, isStack: share !== 1 };
  }
  const { reflectance, ...origin } = reflectanceOf(base.colour);
  const ground = turned(reflectance, look, usualFlopIndex(base.effect));
  const body = { reflectance: ground, ...origin, isStack: false };
  return through(body, finish.colour, share, look, isFlakeBase(base) ? 'straight' : 'strewn');
}

/** `under` seen through a dye; `share` of its recorded coats, crossed twice. */
function through(
  under: Body,
  dye: Colour,
  share: number,
  look: Look,
  light: 'straight' | 'strewn',
): Body {
  const film = reflectanceOf(dye);
  const passes = share * pathRatio(look);
  const reflectance = under.reflectance.map((ground, band) => {
    const twice = transmittance(clear(film.reflectance[band]!), passes);
    if (light === 'straight') return ground * twice;
    return seenThroughSurface(insideSurface(ground + k1) * twice) - k1;
  });
  return {
    reflectance: asReflectance(reflectance),
    isMeasured: under.isMeasured && film.isMeasured,
    isReachable: under.isReachable && film.isReachable,
    isStack: true,
  };
}

/** A dye cannot give back more light than white gave it. */
const clear = (band: number): number => Math.min(1, Math.max(0, band));
