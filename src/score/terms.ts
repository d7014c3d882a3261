/**
 * The score of a scheme as sums over parts and pairs, so that one alternative costs a few hundred
 * look-ups and a ranking can be exact.
 *
 * In: a scene, and for every surface the finishes it may wear. Out: `costs(choice)`: the six costs
 * in halvings, choice[k] being the position of surface k's finish among its candidates. Pair
 * tables are laid out and filled row by row as they are first used. Contrast, sheen, nearly-same and steadiness are pair sums;
 * accent is a leaf scorer over families; readiness counts bottles and the slowest part.
 */

import type { ScoreKey } from './evidence.ts';
import { scoreKeys } from './evidence.ts';
import { kappa } from './judgement.ts';
import type { Candidate } from './seen/candidate.ts';
import { type Family, familiesOf } from './seen/family.ts';
import type { Scene } from './seen/scene.ts';
import type { Worn } from './seen/worn.ts';
import { type AccentBalance, accentBalance, paintedZones } from './six/accent.ts';
import { contrastCost, type Reading, readingsOf, readsWell } from './six/contrast.ts';
import { type GroupPair, groupPairsOf, nearlySameCost } from './six/harmony.ts';
import { readinessCost } from './six/readiness.ts';
import {
  outOfPlaceCost,
  type SheenPair,
  sheenCost,
  sheenPairsOf,
  unclearedFlakeCost,
} from './six/sheen.ts';
import { isDelicate, steadinessCost } from './six/steadiness.ts';

export interface TermsInput {
  readonly scene: Scene;
  /** Candidates of each surface, in the order choices count them. */
  readonly candidates: readonly (readonly Candidate[])[];
  readonly tonal: boolean;
  readonly mustRead: readonly string[];
  /** Days from today to the date wanted; undefined where there is none. */
  readonly daysWanted: number | undefined;
}

/** Everything two surfaces are compared for. */
export interface PairTerm {
  readonly a: number;
  readonly b: number;
  readonly reading: Reading | undefined;
  readonly delicate: boolean;
  readonly sheen: SheenPair | undefined;
  readonly group: GroupPair | undefined;
}

/** Costs of a scheme, in halvings, by score; and the tables behind them. */
export interface Terms extends TermsInput {
  readonly families: readonly Family[];
  /** Family of candidate c of surface k at familyOf[k][c]; -1 for given surfaces. */
  readonly familyOf: readonly Int32Array[];
  readonly pairs: readonly PairTerm[];
  readonly painted: Float64Array;
  /** Six costs in the order of `scoreKeys`, written into `into`. */
  costs(choice: ArrayLike<number>, into: Float64Array): Float64Array;
  /** The accent balance with its findings. */
  balance(choice: ArrayLike<number>): AccentBalance;
  wornBy(choice: ArrayLike<number>): Worn[];
}

/** Values kept per pair of candidates: four costs, and how well the reading reads (0–1). */
const cellSize = 5;

/** The terms of a scene and its candidates; what others of that scene have found may be handed in. */
export function termsOf(
  input: TermsInput,
  known?: Partial<Pick<Terms, 'families' | 'pairs' | 'painted'>>,
): Terms {
  const { scene, candidates, tonal, mustRead } = input;
  const isGiven = (at: number): boolean => scene.surfaces[at]!.given !== undefined;
  const chosen = candidates.flatMap((list, at) =>
    isGiven(at) ? [] : list.map(({ worn }) => worn),
  );
  const families = known?.families ?? familiesOf(chosen);
  const familyByRef = new Map(
    families.flatMap((family, f) => family.members.map((member) => [member.ref, f] as const)),
  );
  const familyOf = candidates.map((list, at) =>
    Int32Array.from(list, ({ worn }) => (isGiven(at) ? -1 : familyByRef.get(worn.ref)!)),
  );
  const painted = known?.painted ?? paintedZones(scene);
  const pairs = known?.pairs ?? pairTermsOf(scene, tonal, mustRead);
  const tables = pairs.map(({ a }) =>
    candidates[a]!.map((): Float64Array | undefined => undefined),
  );
  const layRow = (k: number, ca: number): Float64Array => {
    const row = new Float64Array(candidates[pairs[k]!.b]!.length * cellSize).fill(Number.NaN);
    tables[k]![ca] = row;
    return row;
  };
  const filled = new Float64Array(cellSize);
  const fill = (row: Float64Array, k: number, ca: number, cb: number): void => {
    const pair = pairs[k]!;
    const one = candidates[pair.a]![ca]!.worn;
    const other = candidates[pair.b]![cb]!.worn;
    const isOneFamily = familyOf[pair.a]![ca] === familyOf[pair.b]![cb];
    row.set(pairCosts(pair, one, other, isOneFamily, filled), cb * cellSize);
  };
  const byItself = candidates.map((list, at) =>
    Float64Array.from(list, ({ worn }) => costByItself(scene, at, worn)),
  );
  const familyAt = new Int32Array(scene.surfaces.length);
  const readSum = new Float64Array(families.length);
  const readWeight = new Float64Array(families.length);
  const readsOf = (family: number): number =>
    readWeight[family]! > 0 ? readSum[family]! / readWeight[family]! : 1;
  const balanceNow = (): AccentBalance =>
    accentBalance({ scene, families, familyAt, readsOf, tonal }, painted);

  const sumPairs = (choice: ArrayLike<number>, into: Float64Array): void => {
    into.fill(0);
    readSum.fill(0);
    readWeight.fill(0);
    for (let at = 0; at < familyAt.length; at++) {
      familyAt[at] = familyOf[at]![choice[at]!]!;
      into[2]! += byItself[at]![choice[at]!]!;
    }
    for (let k = 0; k < pairs.length; k++) {
      const pair = pairs[k]!;
      const ca = choice[pair.a]!;
      const cb = choice[pair.b]!;
      const cell = cb * cellSize;
      const row = tables[k]![ca] ?? layRow(k, ca);
      if (Number.isNaN(row[cell]!)) fill(row, k, ca, cb);
      into[0]! += row[cell]!;
      into[2]! += row[cell + 1]!;
      into[3]! += row[cell + 2]!;
      into[4]! += row[cell + 3]!;
      if (pair.reading !== undefined) {
        const family = familyAt[pair.reading.feature]!;
        if (family >= 0 && family !== familyAt[pair.reading.neighbour]!) {
          readSum[family]! += pair.reading.weight * row[cell + 4]!;
          readWeight[family]! += pair.reading.weight;
        }
      }
    }
  };
  const scratch = new Float64Array(scoreKeys.length);
  return {
    ...input,
    families,
    familyOf,
    pairs,
    painted,
    costs: (choice, into) => {
      sumPairs(choice, into);
      into[1] = balanceNow().cost;
      into[5] = readinessCost(candidates, choice, input.daysWanted);
      return into;
    },
    balance: (choice) => {
      sumPairs(choice, scratch);
      return balanceNow();
    },
    wornBy: (choice) => candidates.map((list, at) => list[choice[at]!]!.worn),
  };
}

/** Cost in halvings, to the sheen score, of a finish on a surface whatever its neighbours wear. */
export const costByItself = (scene: Scene, at: number, worn: Worn): number =>
  unclearedFlakeCost(scene, at, worn) + outOfPlaceCost(scene, at, worn);

/** What two surfaces cost under two finishes, written into the `cellSize` places of `cell`. */
function pairCosts(
  pair: PairTerm,
  one: Worn,
  other: Worn,
  isOneFamily: boolean,
  cell: Float64Array,
): Float64Array {
  cell.fill(0);
  const { reading } = pair;
  if (reading !== undefined) {
    const isFeatureA = reading.feature === pair.a;
    const feature = isFeatureA ? one : other;
    const neighbour = isFeatureA ? other : one;
    cell[0] = contrastCost(reading, feature, neighbour);
    if (pair.delicate) cell[3] = steadinessCost(reading, feature, neighbour);
    cell[4] = readsWell(reading, feature, neighbour);
  }
  if (pair.sheen !== undefined) cell[1] = sheenCost(pair.sheen, one, other, isOneFamily);
  if (pair.group !== undefined) cell[2] = nearlySameCost(pair.group, one, other);
  return cell;
}

function pairTermsOf(scene: Scene, tonal: boolean, mustRead: readonly string[]): PairTerm[] {
  const readings = readingsOf(scene, { tonal, mustRead });
  const sheens = sheenPairsOf(scene);
  const groups = groupPairsOf(scene);
  const key = (a: number, b: number): number =>
    Math.min(a, b) * scene.surfaces.length + Math.max(a, b);
  const by = <T>(list: readonly T[], keyOf: (one: T) => number): Map<number, T> =>
    new Map(list.map((one) => [keyOf(one), one]));
  const readingBy = by(readings, ({ feature, neighbour }) => key(feature, neighbour));
  const sheenBy = by(sheens, ({ a, b }) => key(a, b));
  const groupBy = by(groups, ({ a, b }) => key(a, b));
  const keys = new Set([...readingBy.keys(), ...sheenBy.keys(), ...groupBy.keys()]);
  return [...keys]
    .sort((a, b) => a - b)
    .map((pairKey) => {
      const reading = readingBy.get(pairKey);
      return {
        a: Math.floor(pairKey / scene.surfaces.length),
        b: pairKey % scene.surfaces.length,
        reading,
        delicate: reading !== undefined && isDelicate(scene, reading),
        sheen: sheenBy.get(pairKey),
        group: groupBy.get(pairKey),
      };
    });
}

/** Score 0–100 of a cost in halvings. */
export const scoreOfCost = (cost: number): number => 100 * 2 ** (-kappa * cost);

/** Weighted geometric mean of scores from their costs; scores in `without` are left out. */
export function overallOf(
  costs: ArrayLike<number>,
  weights: Readonly<Record<ScoreKey, number>>,
  without?: ScoreKey,
): number {
  let sum = 0;
  let total = 0;
  scoreKeys.forEach((key, k) => {
    if (key === without) return;
    sum += weights[key] * costs[k]!;
    total += weights[key];
  });
  return total === 0 ? 100 : scoreOfCost(sum / total);
}
