/**
 * The sum behind `recovery.ts`: the smoothest curve with three given weighted sums.
 *
 * With ρ = (tanh z + 1) / 2 it minimises Σ (z[i+1] − z[i])² subject to A ρ = target, where the rows
 * of A are the D65 weights divided by white (so each row sums to 1). [Burns2020] Newton's method
 * on the 41 values and 3 multipliers. The matrix is tridiagonal but for its last three rows and
 * columns, so bands are eliminated one by one and a 4 × 4 remainder is solved with pivoting: some
 * thousand operations a step instead of the 57,000 of a dense solve.
 */
import { d65White } from '../illuminant.ts';
import { weightsOf } from '../table/weights.ts';

/** Where Newton's method stands: z of each band and the three multipliers. Changed in place. */
export interface Stand {
  readonly z: Float64Array;
  readonly multipliers: Float64Array;
}

// Three weights of each band side by side, each axis relative to white.
const weights = Float64Array.from(
  weightsOf.D65.x.flatMap((x, band) => [
    x / d65White[0],
    weightsOf.D65.y[band]! / d65White[1],
    weightsOf.D65.z[band]! / d65White[2],
  ]),
);

const mostSteps = 60;
const sumTolerance = 1e-11;
const slopeTolerance = 1e-8;
// A longer step in z leaves the range in which the tangent says anything about the curve.
const longestStep = 1;

/** An even start: the grey of a luminance between 0 and 1, multipliers at rest. */
export const startFrom = (luminance: number): Stand => ({
  z: new Float64Array(weights.length / 3).fill(Math.atanh(2 * luminance - 1)),
  multipliers: new Float64Array(3),
});

/** Moves `stand` to the solution for three sums (each relative to white); false if none is found. */
export function solveSmoothest(target: readonly number[], stand: Stand): boolean {
  for (let step = 0; step < mostSteps; step++) {
    const system = linearised(target, stand);
    if (system.sumError < sumTolerance && system.slopeError < slopeTolerance) return true;
    const move = solveBordered(system);
    let longest = 0;
    for (const change of move.z) longest = Math.max(longest, Math.abs(change));
    if (!Number.isFinite(longest)) return false;
    const share = Math.min(1, longestStep / longest);
    for (let band = 0; band < stand.z.length; band++) stand.z[band]! += share * move.z[band]!;
    for (let axis = 0; axis < 3; axis++)
      stand.multipliers[axis]! += share * move.multipliers[axis]!;
  }
  return false;
}

/** The linear system of one Newton step: tridiagonal part, border and right-hand sides. */
interface Bordered {
  readonly diagonal: Float64Array;
  /** Three columns, one after another for each band. */
  readonly border: Float64Array;
  readonly right: Float64Array;
  readonly rightSums: Float64Array;
  readonly sumError: number;
  readonly slopeError: number;
}

function linearised(target: readonly number[], { z, multipliers }: Stand): Bordered {
  const count = z.length;
  const diagonal = new Float64Array(count);
  const border = new Float64Array(3 * count);
  const right = new Float64Array(count);
  const rightSums = Float64Array.from(target);
  let slopeError = 0;
  for (let band = 0; band < count; band++) {
    const hyperbolic = Math.tanh(z[band]!);
    const value = (hyperbolic + 1) / 2;
    const first = (1 - hyperbolic * hyperbolic) / 2;
    let pull = 0;
    for (let axis = 0; axis < 3; axis++) {
      const weight = weights[3 * band + axis]!;
      pull += weight * multipliers[axis]!;
      border[3 * band + axis] = weight * first;
      rightSums[axis]! -= weight * value;
    }
    const before = band > 0 ? z[band]! - z[band - 1]! : 0;
    const after = band < count - 1 ? z[band]! - z[band + 1]! : 0;
    const slope = 2 * (before + after) + first * pull;
    right[band] = -slope;
    slopeError = Math.max(slopeError, Math.abs(slope));
    const ends = band === 0 || band === count - 1;
    diagonal[band] = (ends ? 2 : 4) - 2 * hyperbolic * first * pull;
  }
  const sumError = Math.max(...rightSums.map(Math.abs));
  return { diagonal, border, right, rightSums, sumError, slopeError };
}

// Neighbouring bands are coupled by −2 everywhere: the second difference of z.
const coupling = -2;

/** Eliminates band after band, solves the last band with the multipliers, substitutes back. */
function solveBordered({ diagonal, border, right, rightSums }: Bordered): Stand {
  const last = diagonal.length - 1;
  const corner = new Float64Array(9);
  for (let band = 0; band < last; band++) {
    const pivot = diagonal[band]!;
    const factor = coupling / pivot;
    diagonal[band + 1]! -= factor * coupling;
    right[band + 1]! -= factor * right[band]!;
    for (let axis = 0; axis < 3; axis++) {
      const edge = border[3 * band + axis]!;
      border[3 * (band + 1) + axis]! -= factor * edge;
      rightSums[axis]! -= (edge / pivot) * right[band]!;
      for (let other = 0; other < 3; other++) {
        corner[3 * axis + other]! -= (edge / pivot) * border[3 * band + other]!;
      }
    }
  }
  const edges = border.subarray(3 * last);
  const small = [[diagonal[last]!, edges[0]!, edges[1]!, edges[2]!, right[last]!]];
  for (let axis = 0; axis < 3; axis++) {
    const [p, q, r] = corner.subarray(3 * axis);
    small.push([edges[axis]!, p!, q!, r!, rightSums[axis]!]);
  }
  const [end, ...multipliers] = solveSmall(small);
  const z = new Float64Array(diagonal.length);
  z[last] = end!;
  for (let band = last - 1; band >= 0; band--) {
    let rest = right[band]! - coupling * z[band + 1]!;
    for (let axis = 0; axis < 3; axis++) rest -= border[3 * band + axis]! * multipliers[axis]!;
    z[band] = rest / diagonal[band]!;
  }
  return { z, multipliers: Float64Array.from(multipliers) };
}

/** Gaussian elimination with row pivoting of a few equations, each row ending in its right side. */
function solveSmall(equations: number[][]): number[] {
  const count = equations.length;
  for (let column = 0; column < count; column++) {
    let best = column;
    for (let row = column + 1; row < count; row++) {
      if (Math.abs(equations[row]![column]!) > Math.abs(equations[best]![column]!)) best = row;
    }
    const pivot = equations[best]!;
    equations[best] = equations[column]!;
    equations[column] = pivot;
    for (let row = column + 1; row < count; row++) {
      const factor = equations[row]![column]! / pivot[column]!;
      for (let cell = column; cell <= count; cell++) {
        equations[row]![cell]! -= factor * pivot[cell]!;
      }
    }
  }
  const solution = new Array<number>(count).fill(0);
  for (let row = count - 1; row >= 0; row--) {
    let rest = equations[row]![count]!;
    for (let cell = row + 1; cell < count; cell++) rest -= equations[row]![cell]! * solution[cell]!;
    solution[row] = rest / equations[row]![row]!;
  }
  return solution;
}
