/**
 * How different do two colours look, laid side by side?
 *
 * CIEDE2000 of two Lab values under one white: 0 is the same, about 1 is just seen under careful
 * viewing. [Sharma2005] Carried by culori. `kL` above 1 makes lightness count less, as over
 * textured or curved surfaces. Made for small differences; above about 5 it only ranks. The
 * formula jumps by up to a few hundredths where two hues lie exactly 180° apart.
 */
import { differenceCiede2000 } from 'culori/fn';
import type { Lab } from '../ground/unit.ts';

type Difference = ReturnType<typeof differenceCiede2000>;

const plain = differenceCiede2000();
const others = new Map<number, Difference>();
// culori takes colour objects. Two are kept and refilled, so that a call makes no garbage.
const first = { mode: 'lab65', l: 0, a: 0, b: 0 } as const satisfies object as Fillable;
const second = { ...first };

interface Fillable {
  readonly mode: 'lab65';
  l: number;
  a: number;
  b: number;
}

/** CIEDE2000 of two Lab values; symmetric, never negative. `kL` > 0 weighs lightness down. */
export function ciede2000(a: Lab, b: Lab, kL = 1): number {
  first.l = a[0];
  first.a = a[1];
  first.b = a[2];
  second.l = b[0];
  second.a = b[1];
  second.b = b[2];
  return kL === 1 ? plain(first, second) : withLightnessWeight(kL)(first, second);
}

function withLightnessWeight(kL: number): Difference {
  let difference = others.get(kL);
  if (difference === undefined) {
    difference = differenceCiede2000(kL);
    others.set(kL, difference);
  }
  return difference;
}
