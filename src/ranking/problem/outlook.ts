/**
 * How do the colour families stand under an assignment, complete or not? Which family each surface
 * wears, and what each family can still come to. Prospects are kept by who wears the family and who
 * may: they are asked for again and again, and change with nothing else.
 */
import type { Terms } from '../../score/terms.ts';
import { mayWear, type Prospect, prospectOf, wears, wearsNot } from './prospect.ts';
import type { Variables } from './variables.ts';

/** Family of a surface that is not decided yet. */
export const undecided = -2;
/** Variables up to which a state of all of them, three ways each, is one exact number. */
const mostVariables = 33;
/** Prospects kept before beginning anew: some 20 MB. */
const mostKept = 200_000;

export class Outlook {
  /** Family of each surface; -1 where it is given, or `undecided`. */
  readonly familyAt: Int32Array;
  /** Whether prospects are kept; else asking for them takes its time. */
  readonly isQuick: boolean;
  readonly #terms: Terms;
  readonly #variables: Variables;
  /** Family of value a of variable i at [i][a]; -1 where the variable decides no surface. */
  readonly #familyOf: readonly Int32Array[];
  /** Families of the values of each variable. */
  readonly #able: readonly Int32Array[];
  /** Whether variable i may wear family f, at [i][f]. */
  readonly #isAble: readonly Uint8Array[];
  readonly #surfacesOf: readonly Int32Array[];
  readonly #isWornAnyway: Uint8Array;
  readonly #powers: Float64Array;
  /** Of each family: 2 × 3^i for every variable that wears it and 3^i for every one that may. */
  readonly #keys: Float64Array;
  readonly #kept: readonly Map<number, Prospect>[];
  #keptCount = 0;
  #values: Int32Array = new Int32Array(0);

  constructor(terms: Terms, variables: Variables) {
    const { slots, of, candidateOf } = variables;
    this.#terms = terms;
    this.#variables = variables;
    this.#surfacesOf = slots.map((_, i) =>
      Int32Array.from(Array.from(of.keys()).filter((at) => of[at] === i)),
    );
    this.#familyOf = slots.map(({ refs }, i) => {
      const at = this.#surfacesOf[i]![0];
      return Int32Array.from(refs, (_, a) =>
        at === undefined ? -1 : terms.familyOf[at]![candidateOf[at]![a]!]!,
      );
    });
    this.#able = this.#familyOf.map((all) => Int32Array.from(new Set(all)).filter((f) => f >= 0));
    this.#isAble = this.#able.map((all) => {
      const isAble = new Uint8Array(terms.families.length);
      for (const family of all) isAble[family] = 1;
      return isAble;
    });
    this.familyAt = Int32Array.from(of, (variable, at) =>
      variable < 0 ? terms.familyOf[at]![candidateOf[at]![0]!]! : undecided,
    );
    this.#isWornAnyway = new Uint8Array(terms.families.length);
    for (const family of this.familyAt) if (family >= 0) this.#isWornAnyway[family] = 1;
    this.isQuick = slots.length <= mostVariables;
    this.#powers = Float64Array.from(slots, (_, i) => 3 ** i);
    this.#keys = new Float64Array(terms.families.length);
    this.#kept = terms.families.map(() => new Map());
  }

  /** Looks at an assignment, -1 standing for values not chosen yet. */
  look(values: Int32Array): void {
    this.#values = values;
    const keys = this.#keys;
    keys.fill(0);
    for (let i = 0; i < values.length; i++) {
      const value = values[i]!;
      const family = value < 0 ? undecided : this.#familyOf[i]![value]!;
      const power = this.#powers[i]!;
      if (family >= 0) keys[family]! += 2 * power;
      else if (value < 0) for (const able of this.#able[i]!) keys[able]! += power;
      for (const at of this.#surfacesOf[i]!) this.familyAt[at] = family;
    }
  }

  /** Whether anything wears, or may wear, a family. */
  isPossible(family: number): boolean {
    return this.#keys[family]! > 0 || this.#isWornAnyway[family] === 1;
  }

  /** Sum over the variables that are not decided and may come to wear a family. */
  sumWhereOpen(family: number, amounts: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < this.#values.length; i++) {
      if (this.#values[i]! < 0 && this.#isAble[i]![family] === 1) sum += amounts[i]!;
    }
    return sum;
  }

  /** Whether a surface may come to wear a family, or wears it. */
  mayWear(at: number, family: number): boolean {
    const now = this.familyAt[at]!;
    return now === undecided
      ? this.#isAble[this.#variables.of[at]!]![family] === 1
      : now === family;
  }

  /** What a family can still come to. */
  prospect(family: number): Prospect {
    const key = this.#keys[family]!;
    const kept = this.isQuick ? this.#kept[family]!.get(key) : undefined;
    return kept ?? this.#found(family, key);
  }

  #found(family: number, key: number): Prospect {
    const stateOf = (i: number): number => {
      const value = this.#values[i]!;
      if (value < 0) return this.#isAble[i]![family] === 1 ? mayWear : wearsNot;
      return this.#familyOf[i]![value] === family ? wears : wearsNot;
    };
    const found = prospectOf(this.#terms, this.#variables, family, stateOf);
    if (!this.isQuick) return found;
    if (++this.#keptCount > mostKept) {
      for (const map of this.#kept) map.clear();
      this.#keptCount = 1;
    }
    this.#kept[family]!.set(key, found);
    return found;
  }
}
