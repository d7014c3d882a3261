/** Opens a link: the round it holds, or what is wrong with it. Nothing is guessed. */
import { roundFrom } from '../../opinion/link/link.ts';
import { pastedLink } from '../../opinion/link/pasted.ts';
import type { Round } from '../../opinion/round.ts';

export type Opened =
  | { readonly kind: 'empty' }
  | { readonly kind: 'refused'; readonly error: unknown }
  | { readonly kind: 'round'; readonly round: Round; readonly link: string };

/** What the part of the address behind `#` holds, with or without the sign. */
export function openedFrom(fragment: string): Opened {
  if (fragment.replace(/^#/, '').trim() === '') return { kind: 'empty' };
  try {
    return { kind: 'round', round: roundFrom(fragment), link: pastedLink(fragment) };
  } catch (error) {
    return { kind: 'refused', error };
  }
}
