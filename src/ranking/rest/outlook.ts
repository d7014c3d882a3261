/**
 * How do the colour families stand under an assignment, complete or not? Which family each surface
 * wears, and what each family can still come to. Prospects are kept by who wears the family and who
 * may: they are asked for again and again, and change with nothing else.
 */
import type { Terms } from '../../score/terms.ts';
import type { Variables } from '../problem/variables.ts';
import { mayWear, type Prospect, prospectOf, wears, wearsNot } from './prospect.ts';

/** Family of a surface that is not decided yet. */
export const undecided = -2;
/** Variables up to which a state of all of them, three ways each, is one exact number. */
const mostVariables = 33;
/** Prospects kept before beginning anew: some 20 MB. */
const mostKept = 200_000;

export class Outlook {
  /** Family of each surface; -1 where it is given, or `undecided`. */
  readonly familyAt: Int32Array;
  /** Families that are worn or may be, of those looked at: the first `possibleCount`. */
  readonly possible: Int32Array;
  possibleCount = 0;
  /** Variables not decided that decide surfaces: no more families than that can change. */
  openCount = 0;
  /** Whether prospects are kept; else asking for them takes its time. */
  readonly isQuick: boolean;
  readonly #terms: Terms;
  readonly #variables: Variables;
  /** Family of value a of variable i at [i][a]; -1 where the variable decides no surface. */
  readonly #familyOf: readonly Int32Array[];
  /** Families looked at that values of each variable are of, and whether family f is, at [i][f]. */
  readonly #able: readonly Int32Array[];
  readonly #isAble: readonly Uint8Array[];
  readonly #surfacesOf: readonly Int32Array[];
  /** Families looked at that surfaces wear whatever is chosen. */
  readonly #wornAnyway: Int32Array;
  readonly #isWornAnyway: Uint8Array;
  readonly #isLookedAt: Uint8Array;
  readonly #isPossible: Uint8Array;
  readonly #powers: Float64Array;
  /** Of each family: 2 × 3^i for every variable that wears it, and with 3^i for every one that may. */
  readonly #keysNow: Float64Array;
  readonly #keys: Float64Array;
  readonly #kept: readonly Map<number, Prospect>[];
  #keptCount = 0;
  /** The latest prospect of each family as it stands, and with all that may come; and their keys. */
  readonly #latestNow: Latest;
  readonly #latest: Latest;
  #values: Int32Array = new Int32Array(0);

  /** Looks at the families that pass. */
  constructor(terms: Terms, variables: Variables, isLookedAt: (family: number) => boolean) {
    const { slots, of, candidateOf } = variables;
    const count = terms.families.length;
    const flags = (families: Iterable<number>): Uint8Array => {
      const flagged = new Uint8Array(count);
      for (const family of families) flagged[family] = 1;
      return flagged;
    };
    this.#terms = terms;
    this.#variables = variables;
    this.#isLookedAt = Uint8Array.from(terms.families, (_, f) => (isLookedAt(f) ? 1 : 0));
    this.#surfacesOf = slots.map((_, i) =>
      Int32Array.from(Array.from(of.keys()).filter((at) => of[at] === i)),
    );
    this.#familyOf = slots.map(({ refs }, i) => {
      const at = this.#surfacesOf[i]![0];
      return Int32Array.from(refs, (_, a) =>
        at === undefined ? -1 : terms.familyOf[at]![candidateOf[at]![a]!]!,
      );
    });
    const looked = (families: Int32Array): Int32Array =>
      Int32Array.from(new Set(families)).filter((f) => f >= 0 && isLookedAt(f));
    this.#able = this.#familyOf.map(looked);
    this.#isAble = this.#able.map(flags);
    this.familyAt = Int32Array.from(of, (variable, at) =>
      variable < 0 ? terms.familyOf[at]![candidateOf[at]![0]!]! : undecided,
    );
    this.#wornAnyway = looked(this.familyAt);
    this.#isWornAnyway = flags(this.#wornAnyway);
    this.possible = new Int32Array(count);
    this.#isPossible = new Uint8Array(count);
    this.isQuick = slots.length <= mostVariables;
    this.#powers = Float64Array.from(slots, (_, i) => 3 ** i);
    this.#keysNow = new Float64Array(count);
    this.#keys = new Float64Array(count);
    this.#kept = terms.families.map(() => new Map());
    this.#latestNow = latestOf(count);
    this.#latest = latestOf(count);
  }

  /** Looks at an assignment, -1 standing for values not chosen yet. */
  look(values: Int32Array): void {
    this.#values = values;
    for (let k = 0; k < this.possibleCount; k++) {
      const family = this.possible[k]!;
      this.#keysNow[family] = 0;
      this.#keys[family] = 0;
      this.#isPossible[family] = 0;
    }
    this.possibleCount = 0;
    this.openCount = 0;
    for (let k = 0; k < this.#wornAnyway.length; k++) this.#add(this.#wornAnyway[k]!, 0);
    for (let i = 0; i < values.length; i++) {
      const value = values[i]!;
      const power = this.#powers[i]!;
      const family = value < 0 ? undecided : this.#familyOf[i]![value]!;
      const surfaces = this.#surfacesOf[i]!;
      if (value < 0) {
        const able = this.#able[i]!;
        for (let k = 0; k < able.length; k++) this.#add(able[k]!, power);
        if (surfaces.length > 0) this.openCount++;
      } else if (family >= 0 && this.#isLookedAt[family] === 1) {
        this.#add(family, 2 * power);
        this.#keysNow[family]! += 2 * power;
      }
      for (let k = 0; k < surfaces.length; k++) this.familyAt[surfaces[k]!] = family;
    }
  }

  #add(family: number, amount: number): void {
    this.#keys[family]! += amount;
    if (this.#isPossible[family] === 1) return;
    this.#isPossible[family] = 1;
    this.possible[this.possibleCount++] = family;
  }

  /** Sum over the variables that are not decided and may come to wear a family. */
  sumWhereOpen(family: number, amounts: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < this.#values.length; i++) {
      if (this.#values[i]! < 0 && this.#isAble[i]![family] === 1) sum += amounts[i]!;
    }
    return sum;
  }

  /** Whether a surface that is not decided may come to wear a family. */
  mayCome(at: number, family: number): boolean {
    return this.familyAt[at] === undecided && this.#isAble[this.#variables.of[at]!]![family] === 1;
  }

  /** Whether a surface that is decided wears a family. */
  isWorn(family: number): boolean {
    return this.#keysNow[family]! > 0 || this.#isWornAnyway[family] === 1;
  }

  /** Whether what is not decided may come to wear a family. */
  mayChange(family: number): boolean {
    return this.#keys[family]! > this.#keysNow[family]!;
  }

  /** What a family that is looked at can still come to. */
  prospect(family: number): Prospect {
    return this.#prospect(family, this.#keys[family]!, this.#latest, mayWear);
  }

  /** What a family comes to should nothing that is not decided wear it: least and most are one. */
  asItStands(family: number): Prospect {
    return this.#prospect(family, this.#keysNow[family]!, this.#latestNow, wearsNot);
  }

  #prospect(family: number, key: number, latest: Latest, whereAble: number): Prospect {
    const before = latest.prospects[family];
    if (before !== undefined && latest.keys[family] === key) return before;
    const prospect = this.#kept[family]!.get(key) ?? this.#found(family, key, whereAble);
    if (this.isQuick) {
      latest.prospects[family] = prospect;
      latest.keys[family] = key;
    }
    return prospect;
  }

  #found(family: number, key: number, whereAble: number): Prospect {
    const stateOf = (i: number): number => {
      const value = this.#values[i]!;
      if (value < 0) return this.#isAble[i]![family] === 1 ? whereAble : wearsNot;
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

/** The latest prospect of each family and the key it was found under. */
interface Latest {
  readonly prospects: (Prospect | undefined)[];
  readonly keys: Float64Array;
}

const latestOf = (count: number): Latest => ({
  prospects: new Array<Prospect | undefined>(count).fill(undefined),
  keys: new Float64Array(count),
});
