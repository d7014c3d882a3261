/**
 * What would a person call this colour?
 *
 * Lab (D65) to the nearest name of a curated list of about three thousand, by CIEDE2000, with that
 * difference. A hint beside the colour, never its identity: names are playful, neighbours differ,
 * and beyond about 5 the name only points the way. The list is loaded when first asked for; names
 * of makes, brands, people and the like are left out (`table/unsuited.ts`).
 */
import type { Lab } from '../ground/unit.ts';
import { ciede2000 } from './difference.ts';
import { labFromHex } from './srgb.ts';
import { isSuited } from './table/unsuited.ts';

/** A name and how far its colour lies from the one asked about, in CIEDE2000. */
export interface NearestName {
  readonly name: string;
  readonly deltaE: number;
}

interface Named {
  readonly name: string;
  readonly lab: Lab;
}

let loading: Promise<readonly Named[]> | undefined;

/** Nearest everyday name of a colour. Rejects if the list cannot be loaded; asking again retries. */
export async function nearestName(lab: Lab): Promise<NearestName> {
  loading ??= load();
  try {
    return nearestOf(await loading, lab);
  } catch (fault) {
    loading = undefined;
    throw fault;
  }
}

/** The list, darkest name first. */
async function load(): Promise<readonly Named[]> {
  const { colornames } = await import('color-name-list/short');
  return colornames
    .filter(({ name }) => isSuited(name))
    .map(({ name, hex }) => ({ name, lab: labFromHex(hex) }))
    .sort((a, b) => a.lab[0] - b.lab[0]);
}

// CIEDE2000 is never below ΔL* / S_L, and S_L is at most 1 + 0.015 · 50² / √(20 + 50²).
const largestLightnessWeight = 1 + (0.015 * 50 ** 2) / Math.sqrt(20 + 50 ** 2);

/** Looks outwards from the colour's own lightness until lightness alone rules the rest out. */
function nearestOf(names: readonly Named[], lab: Lab): NearestName {
  let below = names.findIndex((named) => named.lab[0] >= lab[0]);
  if (below < 0) below = names.length;
  let above = below;
  below -= 1;
  let nearest: NearestName = { name: '', deltaE: Number.POSITIVE_INFINITY };
  const gapTo = (index: number): number =>
    Math.abs((names[index]?.lab[0] ?? Number.POSITIVE_INFINITY) - lab[0]);
  while (true) {
    const isBelowNearer = gapTo(below) < gapTo(above);
    const index = isBelowNearer ? below-- : above++;
    if (!(gapTo(index) / largestLightnessWeight < nearest.deltaE)) return nearest;
    const { name, lab: its } = names[index]!;
    const deltaE = ciede2000(lab, its);
    if (deltaE < nearest.deltaE) nearest = { name, deltaE };
  }
}
