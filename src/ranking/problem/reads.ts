/**
 * How well can accents read? For each family the readings of its features against what is not of it,
 * weighed as on the sheet (`score/terms`); one that is not decided may yet turn out to read in full.
 */
import { type Reading, readsWell } from '../../score/six/contrast.ts';
import type { Terms } from '../../score/terms.ts';
import { type Outlook, undecided } from './outlook.ts';
import type { Variables } from './variables.ts';

export class Reads {
  readonly #terms: Terms;
  readonly #variables: Variables;
  readonly #readings: readonly Reading[];
  /** How well a reading reads, by values of feature and neighbour; filled as first asked. */
  readonly #rows: readonly (Float32Array | undefined)[][];
  /** Sums over decided readings by family of the feature: weight × how well, and weight. */
  readonly #well: Float64Array;
  readonly #weight: Float64Array;
  /** Weight of readings whose feature wears the family and whose neighbour is open. */
  readonly #open: Float64Array;
  /** Weight of all readings of the features that each variable decides. */
  readonly #featureWeight: Float64Array;

  constructor(terms: Terms, variables: Variables) {
    const { families, pairs, familyOf } = terms;
    const { of, candidateOf } = variables;
    const mayBeAccent = ({ feature }: Reading): boolean =>
      candidateOf[feature]!.some((c) => {
        const family = families[familyOf[feature]![c]!];
        return family !== undefined && (family.isLoud || family.isQuiet);
      });
    this.#terms = terms;
    this.#variables = variables;
    this.#readings = pairs.flatMap(({ reading }) =>
      reading !== undefined && mayBeAccent(reading) ? [reading] : [],
    );
    this.#rows = this.#readings.map(({ feature }) =>
      Array.from(candidateOf[feature]!, (): Float32Array | undefined => undefined),
    );
    this.#well = new Float64Array(families.length);
    this.#weight = new Float64Array(families.length);
    this.#open = new Float64Array(families.length);
    this.#featureWeight = new Float64Array(variables.slots.length);
    for (const { feature, weight } of this.#readings) {
      if (of[feature]! >= 0) this.#featureWeight[of[feature]!]! += weight;
    }
  }

  /** Sums up the readings of an assignment that the outlook has been shown. */
  look(values: Int32Array, { familyAt }: Outlook): void {
    const { families } = this.#terms;
    this.#well.fill(0);
    this.#weight.fill(0);
    this.#open.fill(0);
    for (let k = 0; k < this.#readings.length; k++) {
      const { feature, neighbour, weight } = this.#readings[k]!;
      const family = familyAt[feature]!;
      if (family < 0 || !(families[family]!.isLoud || families[family]!.isQuiet)) continue;
      const beside = familyAt[neighbour]!;
      if (beside === family) continue;
      if (beside === undecided) this.#open[family]! += weight;
      else {
        this.#well[family]! += weight * this.#readsWell(k, values);
        this.#weight[family]! += weight;
      }
    }
  }

  /** How well a family can read at most, 0–1; 1 where nothing is seen against it. */
  best(family: number, outlook: Outlook): number {
    const decided = this.#weight[family]!;
    if (decided === 0) return 1;
    const open = this.#open[family]! + outlook.sumWhereOpen(family, this.#featureWeight);
    return (this.#well[family]! + open) / (decided + open);
  }

  #readsWell(k: number, values: Int32Array): number {
    const { of, candidateOf } = this.#variables;
    const reading = this.#readings[k]!;
    const { feature, neighbour } = reading;
    const a = of[feature]! < 0 ? 0 : values[of[feature]!]!;
    const b = of[neighbour]! < 0 ? 0 : values[of[neighbour]!]!;
    const row = this.#rows[k]![a] ?? this.#layRow(k, a);
    if (Number.isNaN(row[b]!)) {
      const { candidates } = this.#terms;
      const one = candidates[feature]![candidateOf[feature]![a]!]!.worn;
      const other = candidates[neighbour]![candidateOf[neighbour]![b]!]!.worn;
      row[b] = readsWell(reading, one, other);
    }
    return row[b]!;
  }

  #layRow(k: number, a: number): Float32Array {
    const { neighbour } = this.#readings[k]!;
    const row = new Float32Array(this.#variables.candidateOf[neighbour]!.length).fill(Number.NaN);
    this.#rows[k]![a] = row;
    return row;
  }
}
