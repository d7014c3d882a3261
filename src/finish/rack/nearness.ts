/**
 * Which finishes are nearest to this colour, and would anybody see the difference? By CIEDE2000 of
 * every one of them, so the order is exact. [Sharma2005]
 *
 * In: Lab of each finish (D65 or adapted to it), flat: L*, a*, b* after each other, NaN where it is
 * not known yet. Out: ΔE2000 and the positions in its order. Words: half of 175 observers saw a
 * difference of 0.8 and half would not put up with one of 1.8 [Paravina2015], on ceramics lying
 * side by side; the bounds above that are our judgement, 8 being the width of a colour family.
 */
import { ciede2000 } from '../../colour/difference.ts';
import { asLab, type Lab } from '../../ground/unit.ts';

export interface Nearness {
  /** ΔE2000 of each finish; NaN where its Lab is not known yet. */
  readonly deltaE: Float64Array;
  /** Positions of those known, nearest first; of equal ones the earlier first. */
  readonly order: Int32Array;
}

/** Room for the Lab values of so many finishes, none of them known yet. */
export const unknownLabs = (count: number): Float64Array => new Float64Array(3 * count).fill(NaN);

/** Notes the Lab of the finish at a position. */
export function noteLab(labs: Float64Array, at: number, lab: Lab): void {
  labs.set(lab, 3 * at);
}

/** How near every finish is to a colour. */
export function nearnessTo(target: Lab, labs: Float64Array): Nearness {
  const count = labs.length / 3;
  const deltaE = new Float64Array(count);
  const knownAt: number[] = [];
  for (let at = 0; at < count; at++) {
    const lightness = labs[3 * at]!;
    if (Number.isNaN(lightness)) {
      deltaE[at] = NaN;
      continue;
    }
    deltaE[at] = ciede2000(target, asLab(lightness, labs[3 * at + 1]!, labs[3 * at + 2]!));
    knownAt.push(at);
  }
  const order = Int32Array.from(knownAt);
  order.sort((one, other) => deltaE[one]! - deltaE[other]! || one - other);
  return { deltaE, order };
}

/** Up to so many ΔE2000, seen side by side, and what a builder would say. */
const steps: readonly (readonly [below: number, words: string])[] = [
  [0.8, 'looks the same'],
  [1.8, 'hard to tell apart'],
  [4, 'close'],
  [8, 'of one family'],
  [20, 'different'],
];

/** A colour difference in words. */
export const differenceInWords = (deltaE: number): string =>
  steps.find(([below]) => deltaE < below)?.[1] ?? 'far off';
