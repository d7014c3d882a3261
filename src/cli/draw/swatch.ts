/**
 * A finish as a patch of colour in the terminal, where true colour can be shown. Flake finishes
 * show what turning shows: face, body, flop. Bands of 16 or 256 colours would lie about the
 * colour, so there the name stands alone.
 */

import { hexFromLab } from '../../colour/srgb.ts';
import type { Appearance } from '../../finish/appearance.ts';
import type { Screen } from './screen.ts';

/** Three columns of colour and a space; empty where the screen has no true colour. */
export function swatch(screen: Screen, { face, hex, flop }: Appearance): string {
  if (!screen.hasTrueColour) return '';
  return `${patch(hexFromLab(face).hex)}${patch(hex)}${patch(hexFromLab(flop).hex)} `;
}

/** `columns` columns of one colour (sRGB hex), or nothing where the screen has no true colour. */
export const bar = (screen: Screen, hex: string, columns: number): string =>
  screen.hasTrueColour ? `${patch(hex, columns)} ` : '';

function patch(hex: string, columns = 1): string {
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  return `\u001b[48;2;${red};${green};${blue}m${' '.repeat(columns)}\u001b[49m`;
}
