/**
 * How does a colour get into a finish? By screen code, by Lab figures or by a measured spectrum;
 * each also says how the colour was obtained.
 *
 * A finish in, a finish out. Lab of any colour is under D65, 1931 2° observer. A new way to obtain
 * the colour drops the builder's own ΔE and the gloss of the sample, which belonged to the old one.
 */

import * as v from 'valibot';
import { labFromXyz } from '../../colour/lab.ts';
import { xyzFromReflectance } from '../../colour/spectrum.ts';
import { hexFromLab, labFromHex } from '../../colour/srgb.ts';
import { asLab, type Lab } from '../../ground/unit.ts';
import { reflectanceOf } from '../colour.ts';
import { type Colour, colourSchema, type Finish, type Provenance } from '../finish.ts';
import { colourFromCell } from '../text/cell.ts';
import { hexTyped, type Typed } from './typed.ts';

/** Lab (D65) of a colour as it was given. */
export function labOf(colour: Colour): Lab {
  if ('srgb' in colour) return labFromHex(colour.srgb);
  if ('lab' in colour && colour.light === 'D65') return asLab(...colour.lab);
  return labFromXyz(xyzFromReflectance(reflectanceOf(colour).reflectance, 'D65'));
}

/** A colour typed into one field: a screen code, or `lab 54 -2 -5`. */
export function colourTyped(text: string): Typed<Colour> {
  const hex = hexTyped(text);
  if (hex.value !== undefined) return { value: { srgb: hex.value } };
  const read = v.safeParse(colourSchema, colourFromCell(text.trim().replaceAll('−', '-')));
  return read.success
    ? { value: read.output }
    : { fault: 'write a screen code such as #b3402a, or Lab figures such as lab 54 -2 -5.' };
}

/** The nearest screen code of a colour, and whether the screen falls short of it. */
export const screenOf = (colour: Colour): { hex: string; isClipped: boolean } =>
  'srgb' in colour
    ? { hex: colour.srgb.toLowerCase(), isClipped: false }
    : hexFromLab(labOf(colour));

/** Whether a surface that only reflects can have this colour; a measured one has it. */
export const isReachable = (colour: Colour): boolean => reflectanceOf(colour).isReachable;

/** Figures to one decimal, as instruments and books give them. */
export const rounded = (lab: Lab): [number, number, number] => {
  const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;
  return [tenth(lab[0]), tenth(lab[1]), tenth(lab[2])];
};

/** A Lab (D65) as a colour, held within what the schema takes. */
export function colourFromLab(lab: Lab): Colour {
  const [l, a, b] = rounded(lab);
  const held = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  return { lab: [held(l, 0, 100), held(a, -160, 160), held(b, -160, 160)], light: 'D65' };
}

/** Another colour for the finish, everything else as it was. */
export const setColour = (finish: Finish, colour: Colour): Finish => ({ ...finish, colour });

/** A measured spectrum for the finish. */
export const setSpectrum = (finish: Finish, spectrum: { nm: number[]; reflectance: number[] }) =>
  obtained({ ...finish, colour: { spectrum } }, 'measured');

/** The finish with its colour obtained in this way. */
export function obtained(finish: Finish, how: Provenance['how']): Finish {
  if (finish.provenance.how === how) return finish;
  const { deltaE: _own, ...rest } = finish.provenance;
  return { ...finish, provenance: { ...rest, how } };
}
