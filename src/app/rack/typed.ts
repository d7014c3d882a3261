/**
 * What is typed into a search: words, and perhaps a colour like #b87333 to look near to. A typed
 * colour stands for an opaque paint that looks like it in daylight.
 */
import type { Finish } from '../../finish/finish.ts';
import type { Wanted } from '../../finish/rack/find.ts';

const colour = /(?:^|\s)(#[0-9a-f]{6})(?=\s|$)/i;

export interface Typed {
  readonly words: string;
  /** The colour typed, as six digits behind a #. */
  readonly srgb: string | undefined;
}

/** The words and the colour in a typed text. */
export function typedFrom(text: string): Typed {
  const srgb = colour.exec(text)?.[1]?.toLowerCase();
  return { words: srgb === undefined ? text : text.replace(colour, ' '), srgb };
}

/** An opaque paint of this colour, to compare others with. */
export const paintOfColour = (srgb: string): Finish => ({
  ...{ id: 'typed', name: srgb, effect: 'solid', colour: { srgb }, gloss60: 85 },
  ...{ coats: 1, chemistry: 'none', undercoats: [], provenance: { how: 'guess' } },
});

/** One text for everything asked: it changes with the question. */
export const questionOf = (wanted: Omit<Wanted, 'near'>, near: Finish | undefined): string =>
  JSON.stringify([wanted, near?.id, near?.name]);
