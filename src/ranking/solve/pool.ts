/** Which are the cheapest assignments found so far? At most so many, no two alike, cheapest first. */
import { type Assigned, never } from '../network.ts';

/** What is kept of what is found. */
export interface Keeping {
  /** Cheapest first. */
  readonly best: readonly Assigned[];
  /** What a further one must cost less than to be kept. */
  readonly ceiling: number;
  /** Keeps a copy where it is among the cheapest and new; whether it was kept. */
  add(cost: number, values: Int32Array): boolean;
}

export class Pool implements Keeping {
  readonly #count: number;
  readonly #best: Assigned[] = [];
  readonly #known = new Set<string>();

  constructor(count: number) {
    this.#count = count;
  }

  get best(): readonly Assigned[] {
    return this.#best;
  }

  /** Half of `never` while there is room. */
  get ceiling(): number {
    return this.#best.length < this.#count ? never / 2 : this.#best.at(-1)!.cost;
  }

  add(cost: number, values: Int32Array): boolean {
    if (!(cost < this.ceiling)) return false;
    const key = values.join();
    if (this.#known.has(key)) return false;
    this.#known.add(key);
    let at = this.#best.length;
    while (at > 0 && isBefore(cost, values, this.#best[at - 1]!)) at--;
    this.#best.splice(at, 0, { cost, values: values.slice() });
    if (this.#best.length > this.#count) this.#known.delete(this.#best.pop()!.values.join());
    return true;
  }
}

/** Cheaper, or as cheap with the earlier value at the first variable that differs. */
function isBefore(cost: number, values: Int32Array, other: Assigned): boolean {
  if (cost !== other.cost) return cost < other.cost;
  const at = values.findIndex((value, i) => value !== other.values[i]);
  return at >= 0 && values[at]! < other.values[at]!;
}
