/**
 * What of a finish do viewers need to see it? Colour, sheen and flake, and of the films only those
 * that show: the base under a dyed one, and a tinted clear. Bottles, notes and films that hide or
 * are clear stay with the builder, and figures are as fine as an eye or an instrument.
 *
 * In: a finish and the light of the round. Out: a finish; of one that was made so, the same again.
 */
import type { LightId } from '../colour/illuminant.ts';
import { colourFromLab, labOf } from '../finish/edit/colour.ts';
import type { Colour, Finish } from '../finish/finish.ts';
import { withoutHidden } from '../finish/parse.ts';

/** What of it is told, all where absent. */
interface Told {
  readonly withSpectra?: boolean;
  readonly withFinishNames?: boolean;
}

/** Figures finer than a hundredth are finer than any eye or instrument; ΔE of 0.01 or so. */
export const hundredths = (value: number): number => Math.round(value * 100) / 100 + 0;
/** Shares of reflected light, as fine as an instrument gives them. */
const hundredthsOfPercent = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;

/** A name as a link may hold it: nothing that hides or turns the text around it, one line. */
export function nameIn(name: string): string {
  const plain = withoutHidden(name.replace(/[\t\r\n]+/g, ' '));
  return plain.trim() === '' ? 'Unnamed' : plain;
}

function colourSeen(colour: Colour): Colour {
  if ('srgb' in colour) return colour;
  if ('lab' in colour) {
    const [l, a, b] = colour.lab;
    return { ...colour, lab: [hundredths(l), hundredths(a), hundredths(b)] };
  }
  const { nm, reflectance } = colour.spectrum;
  return { spectrum: { nm, reflectance: reflectance.map(hundredthsOfPercent) } };
}

/**
 * What of a finish is seen: no bottles, no notes, no films that hide or are clear. By daylight a
 * spectrum shows nothing that its Lab does not, save through a dyed film, which takes band by band.
 */
export function seenOf(
  finish: Finish,
  light: LightId,
  { withSpectra = true, withFinishNames = true }: Told,
): Finish {
  const { bottle: _bottle, note: _note, clear, undercoats, provenance, ...rest } = finish;
  const { face, flop, flopIndex, sampleGloss60, ...seen } = rest;
  const isDyed = finish.effect === 'candy' || finish.effect === 'clear';
  const isFlat = !withSpectra || (light === 'D65' && !isDyed && clear?.tint === undefined);
  const told = (colour: Colour): Colour =>
    'spectrum' in colour && isFlat ? colourFromLab(labOf(colour)) : colourSeen(colour);
  const base = isDyed ? undercoats.slice(-1) : [];
  const named = (name: string): string => (withFinishNames ? nameIn(name) : effectName(finish));
  return {
    ...seen,
    name: named(finish.name),
    colour: told(finish.colour),
    ...(face && { face: told(face) }),
    ...(flop && { flop: told(flop) }),
    ...(flopIndex !== undefined && { flopIndex: hundredths(flopIndex) }),
    gloss60: hundredths(finish.gloss60),
    ...(sampleGloss60 !== undefined && { sampleGloss60: hundredths(sampleGloss60) }),
    undercoats: base.map(({ bottle: _jar, ...film }) => ({
      ...film,
      name: named(film.name),
      colour: told(film.colour),
    })),
    provenance: {
      how: provenance.how,
      ...(provenance.deltaE !== undefined && { deltaE: hundredths(provenance.deltaE) }),
    },
    ...(clear?.tint && {
      clear: { ...bare(clear), name: named(clear.name), tint: told(clear.tint) },
    }),
  };
}

/** `Bare metal` for `bare-metal`. */
const effectName = ({ effect }: Finish): string =>
  `${effect.slice(0, 1).toUpperCase()}${effect.slice(1).replace('-', ' ')}`;

function bare<Film extends { bottle?: unknown }>({ bottle: _bottle, ...film }: Film) {
  return film;
}
