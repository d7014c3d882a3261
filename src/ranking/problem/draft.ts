/**
 * A cost network being written: costs of single values and of pairs come in from scores and rules, by
 * surface or by part, and add up to base, unary costs and one table for each pair of variables.
 */
import { type Edge, never } from '../network.ts';
import type { Place } from './variables.ts';

export class Draft {
  readonly sizes: readonly number[];
  readonly unary: readonly Float64Array[];
  base = 0;
  readonly #tables = new Map<number, Float32Array>();

  constructor(sizes: readonly number[]) {
    this.sizes = sizes;
    this.unary = sizes.map((size) => new Float64Array(size));
  }

  /** Adds what each value of a variable costs; of -1, to every assignment. */
  add(variable: number, costOf: (value: number) => number): void {
    const own = this.unary[variable];
    if (own === undefined) this.base += costOf(0);
    else for (let a = 0; a < own.length; a++) own[a]! += costOf(a);
  }

  /** Adds what each two values of two variables cost together, either of which may be -1. */
  addPair(i: number, j: number, costOf: (a: number, b: number) => number): void {
    if (i === j) this.add(i, (a) => costOf(a, a));
    else if (j < 0) this.add(i, (a) => costOf(a, 0));
    else if (i < 0) this.add(j, (b) => costOf(0, b));
    else if (i > j) this.addPair(j, i, (b, a) => costOf(a, b));
    else {
      const table = this.#tableOf(i, j);
      const [rows, columns] = [this.sizes[i]!, this.sizes[j]!];
      for (let a = 0, at = 0; a < rows; a++) {
        for (let b = 0; b < columns; b++) table[at++]! += costOf(a, b);
      }
    }
  }

  /** Forbids what two parts must not wear together. */
  forbid(one: Place, other: Place, isForbidden: (ref: string, another: string) => boolean): void {
    this.addPair(one.variable, other.variable, (a, b) =>
      isForbidden(one.refs[a]!, other.refs[b]!) ? never : 0,
    );
  }

  get edges(): Edge[] {
    return [...this.#tables].map(([key, table]) => {
      const i = Math.floor(key / this.sizes.length);
      return { i, j: key % this.sizes.length, table };
    });
  }

  #tableOf(i: number, j: number): Float32Array {
    const key = i * this.sizes.length + j;
    const known = this.#tables.get(key) ?? new Float32Array(this.sizes[i]! * this.sizes[j]!);
    this.#tables.set(key, known);
    return known;
  }
}
