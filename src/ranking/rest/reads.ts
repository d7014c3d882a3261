/**
 * How well can accents read? For a family the readings of its features against what is not of it,
 * weighed as on the sheet (`score/terms`); one that is not decided may yet turn out to read in full.
 */
import { type Reading, readsWell } from '../../score/six/contrast.ts';
import type { Terms } from '../../score/terms.ts';
import type { Variables } from '../problem/variables.ts';
import { type Outlook, undecided } from './outlook.ts';

/** A feature, and each reading of it. */
interface Feature {
  readonly at: number;
  readonly readings: readonly Reading[];
  /** The surface each reading is against, and its weight. */
  readonly neighbours: Int32Array;
  readonly weights: Float64Array;
  /** How well reading k reads by values of feature and neighbour, at [k][a][b]; filled as first asked. */
  readonly rows: (Float32Array | undefined)[][];
}

export class Reads {
  readonly #terms: Terms;
  readonly #variables: Variables;
  readonly #features: readonly Feature[];
  /** Weight of all readings of the features that each variable decides. */
  readonly #weightOf: Float64Array;

  constructor(terms: Terms, variables: Variables) {
    const { of, candidateOf } = variables;
    this.#terms = terms;
    this.#variables = variables;
    const all = terms.pairs.flatMap(({ reading }) => (reading === undefined ? [] : [reading]));
    this.#features = [...new Set(all.map(({ feature }) => feature))].map((at): Feature => {
      const readings = all.filter(({ feature }) => feature === at);
      return {
        at,
        readings,
        neighbours: Int32Array.from(readings, ({ neighbour }) => neighbour),
        weights: Float64Array.from(readings, ({ weight }) => weight),
        rows: readings.map(() => Array.from(candidateOf[at]!, () => undefined)),
      };
    });
    this.#weightOf = new Float64Array(variables.slots.length);
    for (const { at, weights } of this.#features) {
      if (of[at]! >= 0) for (const weight of weights) this.#weightOf[of[at]!]! += weight;
    }
  }

  /**
   * How well a family can read at most, 0–1, under the assignment that the outlook has been shown,
   * whether or not anything comes to wear it; 1 where nothing is seen against it.
   */
  best(family: number, values: Int32Array, outlook: Outlook, mayChange: boolean): number {
    const { familyAt } = outlook;
    let well = 0;
    let decided = 0;
    let open = 0;
    for (let f = 0; f < this.#features.length; f++) {
      const feature = this.#features[f]!;
      if (familyAt[feature.at] !== family) continue;
      const { neighbours, weights } = feature;
      for (let k = 0; k < neighbours.length; k++) {
        const beside = familyAt[neighbours[k]!]!;
        if (beside === family) continue;
        const weight = weights[k]!;
        if (beside === undecided) open += weight;
        else {
          well += weight * this.#readsWell(feature, k, values);
          decided += weight;
        }
      }
    }
    if (decided === 0) return 1;
    if (mayChange) open += outlook.sumWhereOpen(family, this.#weightOf);
    return (well + open) / (decided + open);
  }

  #readsWell(feature: Feature, k: number, values: Int32Array): number {
    const { of } = this.#variables;
    const variable = of[feature.at]!;
    const other = of[feature.neighbours[k]!]!;
    const a = variable < 0 ? 0 : values[variable]!;
    const b = other < 0 ? 0 : values[other]!;
    const known = feature.rows[k]![a]?.[b] ?? Number.NaN;
    return Number.isNaN(known) ? this.#fill(feature, k, a, b) : known;
  }

  #fill({ at, readings, neighbours, rows }: Feature, k: number, a: number, b: number): number {
    const { candidates } = this.#terms;
    const { candidateOf } = this.#variables;
    const neighbour = neighbours[k]!;
    const row = rows[k]![a] ?? new Float32Array(candidateOf[neighbour]!.length).fill(Number.NaN);
    rows[k]![a] = row;
    const one = candidates[at]![candidateOf[at]![a]!]!.worn;
    const other = candidates[neighbour]![candidateOf[neighbour]![b]!]!.worn;
    row[b] = readsWell(readings[k]!, one, other);
    return row[b]!;
  }
}
