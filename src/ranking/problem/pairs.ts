/**
 * What do two surfaces cost under every two finishes? The pair costs of the sheet (`score/six`), summed
 * by weight, for tables of whole racks: hundreds of thousands of pairs.
 *
 * Finishes are numbered once. What does not depend on the surfaces is worked out once for every two
 * finishes; and where two colours are farther apart than anything is charged for, in every light and to
 * all eyes, contrast and steadiness are not asked. Costs in halvings.
 */
import type { Lab } from '../../ground/unit.ts';
import type { Worn } from '../../score/seen/worn.ts';
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
  const { candidates } = terms;
  const numbers = new Map<string, number>();
  const worn: Worn[] = [];
  const numbered = candidates.map((list) =>
    Int32Array.from(list, ({ worn: one }) => {
      const known = numbers.get(one.ref);
      if (known !== undefined) return known;
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
  return ({ a, b, reading, delicate, sheen, group }) => {
    const [inA, inB] = [numbered[a]!, numbered[b]!];
    const isRead = reading !== undefined && !reading.isTooSmall;
    const isFar = isRead ? farApart(worn, reading, delicate) : () => true;
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

/**
 * Whether two finishes are so far apart that a reading costs nothing: beyond the end of its curve as
 * the build is judged and, where it is delicate, in every other light and to all eyes.
 */
function farApart(worn: readonly Worn[], { curve, thresholds }: Reading, isDelicate: boolean) {
  const [end, costThere] = curve.at(-1)!;
  if (costThere > 0) return () => false;
  const seenAs = ({ lab, underLights, toEyes }: Worn): Lab[] =>
    isDelicate ? [lab, ...underLights, ...toEyes] : [lab];
  const steps = Float64Array.from(
    worn.flatMap((one) =>
      seenAs(one).flatMap(([lightness, a, b]) => [
        lightness / thresholds.lightness,
        a / thresholds.a,
        b / thresholds.b,
      ]),
    ),
  );
  const width = steps.length / worn.length;
  // A hair beyond the end, so that rounding charges rather than forgives.
  const limit = end * end * (1 + 1e-9);
  return (x: number, y: number): boolean => {
    let p = x * width;
    let q = y * width;
    for (let k = 0; k < width; k += 3) {
      const lightness = steps[p++]! - steps[q++]!;
      const a = steps[p++]! - steps[q++]!;
      const b = steps[p++]! - steps[q++]!;
      if (lightness * lightness + a * a + b * b < limit) return false;
    }
    return true;
  };
}
