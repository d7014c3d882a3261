/**
 * How far may the real colour be from the stated one? Every colour says how it was obtained, and
 * that sets its uncertainty unless the builder gives a figure.
 *
 * Out: RMS CIEDE2000 between the stated and the real colour. Our judgement: a good instrument on
 * a sprayed sample repeats to about 1, of which most is the next spray coat; a careful eye against
 * a swatch under daylight misses by about 4, printed swatches themselves being off; a photograph
 * with a grey card by about 5; a colour typed from memory by about 8. Correct them per finish
 * where you know better.
 */
import type { Provenance } from './finish.ts';

/** Usual RMS CIEDE2000 for each way to obtain a colour. */
export const usualDeltaE: Readonly<Record<Provenance['how'], number>> = {
  measured: 1,
  swatch: 4,
  photo: 5,
  guess: 8,
};

/** RMS CIEDE2000 between the stated and the real colour; the builder's own figure where given. */
export const uncertaintyOf = (provenance: Provenance): number =>
  provenance.deltaE ?? usualDeltaE[provenance.how];
