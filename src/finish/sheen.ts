/**
 * How shiny is it, in the three ways builders, instruments and pictures say so? Gloss units at
 * 60°, the roughness that a renderer needs for the same reading, and the everyday sheen word.
 *
 * In and out: GU at 60° (0–100 as the schema allows), roughness 0–1. Bounds 5, 10, 20, 35, 70 and
 * 85 GU between classes [MPI], here by the 60° reading alone with words of our own; the institute's
 * own levels overlap and read 85° too. Gloss to roughness by a table of meter readings
 * [ISO2813] [Walter2007], joined by a monotone cubic [FritschCarlson1980]. Limits: a film of index
 * 1.5 reads at most 89.1 GU, so anything above counts as mirror smooth.
 */
import { gloss60Table } from './optics/table.ts';

export interface SheenClass {
  readonly id: string;
  /** The word a builder would use. */
  readonly name: string;
  /** GU at 60°: at least `from`, under `to`. */
  readonly from: number;
  readonly to: number;
}

export const sheenClasses: readonly SheenClass[] = [
  { id: 'dead-matt', name: 'dead matt', from: 0, to: 5 },
  { id: 'matt', name: 'matt', from: 5, to: 10 },
  { id: 'eggshell', name: 'eggshell', from: 10, to: 20 },
  { id: 'satin', name: 'satin', from: 20, to: 35 },
  { id: 'semi-gloss', name: 'semi-gloss', from: 35, to: 70 },
  { id: 'gloss', name: 'gloss', from: 70, to: 85 },
  { id: 'high-gloss', name: 'high gloss', from: 85, to: Number.POSITIVE_INFINITY },
];

/** The sheen class of a 60° reading; a reading on a bound belongs to the shinier class. */
export const sheenClassOf = (gloss60: number): SheenClass =>
  sheenClasses.findLast(({ from }) => gloss60 >= from) ?? sheenClasses[0]!;

/** GU at 60° of a film of this roughness (0–1); 89.1 down to 0.1. */
export function gloss60FromRoughness(roughness: number): number {
  return Math.exp(logGloss(Math.max(0, Math.min(1, roughness))));
}

/** Roughness (0–1) at which a film reads this many GU at 60°; 0 above 89.1 GU, 1 under 0.1. */
export function roughnessFromGloss60(gloss60: number): number {
  if (gloss60 >= knots[0]!.gloss60) return 0;
  if (gloss60 <= knots.at(-1)!.gloss60) return 1;
  let [smooth, rough] = [0, 1];
  while (rough - smooth > 1e-9) {
    const middle = (smooth + rough) / 2;
    if (gloss60FromRoughness(middle) > gloss60) smooth = middle;
    else rough = middle;
  }
  return (smooth + rough) / 2;
}

// Joined in the logarithm, where the readings fall evenly over three decades.
interface Knot {
  readonly roughness: number;
  readonly gloss60: number;
  readonly log: number;
}
const knots: readonly Knot[] = gloss60Table.map(([roughness, gloss60]) => ({
  roughness,
  gloss60,
  log: Math.log(gloss60),
}));
const secants = knots
  .slice(1)
  .map(
    (knot, before) => (knot.log - knots[before]!.log) / (knot.roughness - knots[before]!.roughness),
  );
const slopes = knots.map((_, at) => slopeAt(at));

/** Slope at a knot: the harmonic mean of its neighbours' secants, so no join overshoots. */
function slopeAt(at: number): number {
  const [before, after] = [secants[at - 1], secants[at]];
  if (before === undefined) return after!;
  if (after === undefined) return before;
  return before * after > 0 ? (2 * before * after) / (before + after) : 0;
}

function logGloss(roughness: number): number {
  let left = 0;
  let right = knots.length - 1;
  while (right - left > 1) {
    const middle = (left + right) >> 1;
    if (knots[middle]!.roughness <= roughness) left = middle;
    else right = middle;
  }
  const [a, b] = [knots[left]!, knots[right]!];
  const width = b.roughness - a.roughness;
  const t = (roughness - a.roughness) / width;
  const [t2, t3] = [t * t, t * t * t];
  return (
    a.log * (2 * t3 - 3 * t2 + 1) +
    b.log * (3 * t2 - 2 * t3) +
    slopes[left]! * width * (t3 - 2 * t2 + t) +
    slopes[right]! * width * (t3 - t2)
  );
}
