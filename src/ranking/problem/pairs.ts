/**
 * What do two surfaces cost under every two finishes? The pair costs of the sheet (`score/six`), summed
 * by weight, for tables of whole racks: hundreds of thousands of pairs.
 *
 * Finishes are numbered once. What does not depend on the surfaces is worked out once for every two
 * finishes; and where two colours are farther apart than anything is charged for, in every light and to
 * all eyes, contrast and steadiness are not asked. Costs in halvings.
 */
import { steadyEyes, steadyLights, type Worn } from '../../score/seen/worn.ts';
import { contrastCost, type Reading } from '../../score/six/contrast.ts';
import { nearlySameCost } from '../../score/six/harmony.ts';
import { sheenCost } from '../../score/six/sheen.ts';
import { steadinessCost } from '../../score/six/steadiness.ts';
import type { PairTerm, Terms } from '../../score/terms.ts';
import type { Shares } from './shares.ts';

/** Cost of candidates ca and cb of the pair's two surfaces. */
export type PairCost = (ca: number, cb: number) => number;

/** Whether a pair can cost anything under these weights. */
export const isWeighed = ({ reading, delicate, sheen, group }: PairTerm, shares: Shares): boolean =>
  (reading !== undefined && shares.contrast > 0) ||
  (delicate && shares.steadiness > 0) ||
  (sheen !== undefined && shares.sheen > 0) ||
  (group !== undefined && shares.harmony > 0);

/** Gives for each pair of surfaces the cost of their finishes. */
export function pairCostsOf(terms: Terms, shares: Shares): (pair: PairTerm) => PairCost {
  const { worn, numbered, seenAs, sheenBy, nearlySame } = finishesOf(terms);
  return ({ a, b, reading, delicate, sheen, group }) => {
    const [inA, inB] = [numbered[a]!, numbered[b]!];
    const isRead = reading !== undefined && !reading.isTooSmall;
    const isFar = isRead ? farApart(seenAs, reading, delicate) : () => true;
    const readCost = (x: number, y: number): number => {
      const [feature, neighbour] = reading!.feature === a ? [x, y] : [y, x];
      const [one, other] = [worn[feature]!, worn[neighbour]!];
      const contrast = shares.contrast * contrastCost(reading!, one, other);
      return delicate
        ? contrast + shares.steadiness * steadinessCost(reading!, one, other)
        : contrast;
    };
    const sheenOf = sheenBy[sheen?.isSkin ? 1 : 0]!;
    const sheenShare = shares.sheen * (sheen?.weight ?? 0);
    const groupShare = shares.harmony * (group?.weight ?? 0);
    return (ca, cb) => {
      const x = inA[ca]!;
      const y = inB[cb]!;
      let cost = isFar(x, y) ? 0 : readCost(x, y);
      if (sheenShare > 0) cost += sheenShare * sheenOf(x, y);
      if (groupShare > 0) cost += groupShare * nearlySame(x, y);
      return cost;
    };
  };
}

/** The finishes of a layout, numbered, and what every two of them cost whatever wears them. */
interface Finishes {
  readonly worn: readonly Worn[];
  /** Number of candidate c of surface k at [k][c]. */
  readonly numbered: readonly Int32Array[];
  /** Lab of each as the build is judged, under every other light and to all eyes, one after another. */
  readonly seenAs: Float64Array;
  /** Cost of two sheens that touch throughout: off the skin, on it. */
  readonly sheenBy: readonly PairCost[];
  readonly nearlySame: PairCost;
}

const known = new WeakMap<Terms, Finishes>();

function finishesOf(terms: Terms): Finishes {
  const before = known.get(terms);
  if (before !== undefined) return before;
  const numbers = new Map<string, number>();
  const worn: Worn[] = [];
  const numbered = terms.candidates.map((list) =>
    Int32Array.from(list, ({ worn: one }) => {
      const number = numbers.get(one.ref);
      if (number !== undefined) return number;
      numbers.set(one.ref, worn.length);
      return worn.push(one) - 1;
    }),
  );
  const family = new Map(
    terms.families.flatMap(({ members }, f) => members.map(({ ref }) => [ref, f] as const)),
  );
  const familyOf = worn.map(({ ref }) => family.get(ref));
  const sheenBy = [false, true].map((isSkin) =>
    onceFor(worn, (x, y) =>
      sheenCost({ a: 0, b: 0, weight: 1, isSkin }, worn[x]!, worn[y]!, familyOf[x] === familyOf[y]),
    ),
  );
  const nearlySame = onceFor(worn, (x, y) =>
    nearlySameCost({ a: 0, b: 0, weight: 1 }, worn[x]!, worn[y]!),
  );
  const seenAs = Float64Array.from(
    worn.flatMap(({ lab, underLights, toEyes }) => [lab, ...underLights, ...toEyes].flat()),
  );
  const found = { worn, numbered, seenAs, sheenBy, nearlySame };
  known.set(terms, found);
  return found;
}

/** The cost of every two finishes, worked out when first asked; the same whichever comes first. */
function onceFor(worn: readonly Worn[], costOf: PairCost): PairCost {
  const width = worn.length;
  let known: Float32Array | undefined;
  return (x, y) => {
    known ??= new Float32Array(width * width).fill(Number.NaN);
    const at = x * width + y;
    if (Number.isNaN(known[at]!)) {
      const cost = costOf(x, y);
      known[at] = cost;
      known[y * width + x] = cost;
    }
    return known[at]!;
  };
}

/** Places of one finish in `seenAs`: L*, a*, b* in each of so many ways to be seen. */
const seenSize = 3 * (1 + steadyLights.length + steadyEyes.length);

/**
 * Whether two finishes are so far apart that a reading costs nothing: beyond the end of its curve as
 * the build is judged and, where it is delicate, in every other light and to all eyes.
 */
function farApart(seenAs: Float64Array, { curve, thresholds }: Reading, isDelicate: boolean) {
  const [end, costThere] = curve.at(-1)!;
  if (costThere > 0) return () => false;
  const used = isDelicate ? seenSize : 3;
  const [perL, perA, perB] = [1 / thresholds.lightness, 1 / thresholds.a, 1 / thresholds.b];
  // A hair beyond the end, so that rounding charges rather than forgives.
  const limit = end * end * (1 + 1e-9);
  return (x: number, y: number): boolean => {
    let p = x * seenSize;
    let q = y * seenSize;
    for (let k = 0; k < used; k += 3) {
      const lightness = (seenAs[p++]! - seenAs[q++]!) * perL;
      const a = (seenAs[p++]! - seenAs[q++]!) * perA;
      const b = (seenAs[p++]! - seenAs[q++]!) * perB;
      if (lightness * lightness + a * a + b * b < limit) return false;
    }
    return true;
  };
}
