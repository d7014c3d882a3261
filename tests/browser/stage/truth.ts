/**
 * How far is what the stage shows from what was scored? Spheres in the product's paint, their middle
 * averaged in linear light, against the scored Lab as a screen can show it.
 *
 * The mirror is left out of the colour of the body, so a polished finish is taken: its surface
 * strews nothing and the scored colour is all body. With the mirror left in, a matt finish must come
 * back to its scored colour as a whole.
 */
import type { Written } from '../../finish/sample.ts';
import { finishWith } from '../../finish/sample.ts';
import { differences, disc, linearOfHex, meanOf, type Rgb, spread, staged } from './colours.ts';
import type { Lighting } from './page/bench.ts';
import type { StudioPage } from './studio.ts';

type Bench = StudioPage['bench'];

const side = 40;
/** 293 pixels, seen within 29° of straight on. */
export const middle = disc(side, 0.48);
/** A gauge reads 89.1 GU from a film without any roughness. */
const polished = 90;
const deadMatt = 3;

export interface Truth {
  readonly count: number;
  readonly mean: number;
  readonly worst: number;
  /** Greatest disagreement of the two libraries about a difference. */
  readonly doubt: number;
  readonly worstHex: string;
}

/** What spheres came out as, against what they were scored as. */
export function truthOf(pairs: readonly { hex: string; met: Rgb }[]): Truth {
  const all = pairs.map(({ hex, met }) => ({ hex, ...differences(linearOfHex(hex), met) }));
  const worst = all.reduce((most, one) => (one.ours > most.ours ? one : most));
  return {
    count: all.length,
    mean: all.reduce((sum, { ours }) => sum + ours, 0) / all.length,
    worst: worst.ours,
    doubt: Math.max(...all.map(({ ours, second }) => Math.abs(ours - second))),
    worstHex: worst.hex,
  };
}

/** Solids of these colours and gloss under a light, each averaged over its middle. */
export async function metIn(
  bench: Bench,
  solids: readonly Written[],
  lighting: Lighting,
): Promise<{ hex: string; met: Rgb }[]> {
  const all = solids.map((solid) => staged(finishWith(solid)));
  const pictures = await bench.spheres(
    all.map(({ surface }) => surface),
    lighting,
    side,
  );
  return all.map(({ hex }, at) => ({ hex, met: meanOf(pictures[at]!, middle) }));
}

const solids = (gloss60: number): Written[] => spread().map((colour) => ({ colour, gloss60 }));

/** Bodies in the same light from everywhere. */
export const truthInEvenLight = async (bench: Bench): Promise<Truth> =>
  truthOf(await metIn(bench, solids(polished), { room: 'even', mirror: 0, knee: 1 }));

/** Matt solids whole, what their surface strews included, in the same light from everywhere. */
export const truthOfMatt = async (bench: Bench): Promise<Truth> =>
  truthOf(await metIn(bench, solids(deadMatt), { room: 'even', mirror: 1, knee: 1 }));

/** Bodies under soft boxes, beside a perfect white in the same place. */
export async function truthUnderSoftboxes(bench: Bench): Promise<Truth> {
  // Dimmed so that no white is cut off.
  const lighting: Lighting = { room: 'softbox', mirror: 0, knee: 1, strength: 0.7 };
  const [white, ...met] = await metIn(
    bench,
    [{ colour: { lab: [100, 0, 0] }, gloss60: polished }, ...solids(polished)],
    lighting,
  );
  if (Math.max(...white!.met) > 0.98) throw new Error('the white is cut off');
  return truthOf(
    met.map(({ hex, met: [r, g, b] }) => {
      const [wr, wg, wb] = white!.met;
      return { hex, met: [r / wr, g / wg, b / wb] };
    }),
  );
}
