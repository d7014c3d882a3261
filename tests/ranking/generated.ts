/**
 * Seeded cost networks that look like cars: an invented rack, parts with candidates from it, what
 * neighbours cost together by CIEDE2000, hue and gloss, rules, and the costs and limits of bottles.
 * Costs are whole numbers (hundredths of a ΔE), so that optima can be compared exactly.
 */
import { ciede2000 } from '../../src/colour/difference.ts';
import { type Draw, drawFrom } from '../../src/ground/draw.ts';
import { asLab, type Lab } from '../../src/ground/unit.ts';
import {
  type Edge,
  type Network,
  never,
  type Rest,
  type Things,
} from '../../src/ranking/network.ts';

export interface Paint {
  readonly lab: Lab;
  readonly gloss60: number;
  readonly onHand: boolean;
}

/** What two neighbours are compared for: wanted apart, wanted in harmony, wanted near. */
export const kinds = ['apart', 'hue', 'near'] as const;
export interface Neighbours {
  readonly i: number;
  readonly j: number;
  readonly weight: number;
  readonly kind: (typeof kinds)[number];
  /** Positions among the candidates of i and j that must not meet. */
  readonly forbidden: readonly (readonly [number, number])[];
  /** With the first at i, j must wear the second. */
  readonly implied: readonly [number, number] | undefined;
}

/** Costs per finish and per bottle to buy, most bottles to buy, and the part whose finish must show twice. */
export interface Globals {
  readonly perFinish: number;
  readonly perBottle: number;
  readonly mostBottles: number;
  readonly echo: number;
}

export interface Instance {
  readonly rack: readonly Paint[];
  /** Positions in the rack, by part. */
  readonly candidates: readonly (readonly number[])[];
  /** Position in the rack of the colour each part would like to be near. */
  readonly wish: readonly number[];
  readonly strength: number;
  readonly neighbours: readonly Neighbours[];
  readonly globals: Globals | undefined;
}

export interface Shape {
  readonly parts: number;
  readonly candidates: number;
  /** `car`: the body beside all, a chain, a few more; `fan` without those; `full`: every pair. */
  readonly graph: 'car' | 'fan' | 'full';
  readonly unary: 'strong' | 'mid' | 'weak';
  readonly seed: number;
  readonly finishes?: number;
  readonly withRules?: boolean;
  readonly withGlobals?: boolean;
}

const strengths = { strong: 1, mid: 0.4, weak: 0.1 } as const;

/** The instance of a shape and its seed. */
export function generated(shape: Shape): Instance {
  const { parts, candidates: count, graph, unary, seed } = shape;
  const finishes = shape.finishes ?? Math.max(count + 20, 12);
  const draw = drawFrom(seed * 7919 + parts * 31 + finishes);
  const rack = Array.from({ length: finishes }, () => paintFrom(draw));
  const candidates = Array.from({ length: parts }, () =>
    shuffled(finishes, draw)
      .slice(0, count)
      .sort((a, b) => a - b),
  );
  const pairs = pairsOf(graph, parts, draw);
  return {
    rack,
    candidates,
    wish: candidates.map(() => draw.below(finishes)),
    strength: strengths[unary],
    neighbours: pairs.map(([i, j, weight]): Neighbours => {
      const place = (): [number, number] => [draw.below(count), draw.below(count)];
      const chance = draw.uniform();
      const withRules = shape.withRules ?? true;
      return {
        i,
        j,
        weight,
        kind: chance < 0.4 ? 'apart' : chance < 0.8 ? 'hue' : 'near',
        forbidden: withRules ? Array.from({ length: 5 }, place) : [],
        implied: withRules && draw.uniform() < 0.3 ? place() : undefined,
      };
    }),
    globals:
      shape.withGlobals === true
        ? { perFinish: 300, perBottle: 500, mostBottles: 2, echo: parts - 1 }
        : undefined,
  };
}

function paintFrom(draw: Draw): Paint {
  const lab = asLab(
    15 + 82 * draw.uniform(),
    120 * (draw.uniform() - 0.5),
    120 * (draw.uniform() - 0.5),
  );
  const gloss60 = [5, 35, 55, 85][draw.below(4)]! + 6 * (draw.uniform() - 0.5);
  return { lab, gloss60, onHand: draw.uniform() < 0.6 };
}

function shuffled(count: number, draw: Draw): number[] {
  const order = Array.from({ length: count }, (_, k) => k);
  for (let k = count - 1; k > 0; k--) {
    const other = draw.below(k + 1);
    [order[k], order[other]] = [order[other]!, order[k]!];
  }
  return order;
}

function pairsOf(graph: Shape['graph'], parts: number, draw: Draw): [number, number, number][] {
  const pairs = new Map<string, [number, number, number]>();
  const add = (one: number, other: number, weight: number): void => {
    const [i, j] = one < other ? [one, other] : [other, one];
    if (i !== j && !pairs.has(`${i} ${j}`)) pairs.set(`${i} ${j}`, [i, j, weight]);
  };
  for (let p = 1; p < parts; p++) add(0, p, 0.5 + 0.5 * draw.uniform());
  for (let p = 1; p + 1 < parts; p++) add(p, p + 1, 0.4 + 0.5 * draw.uniform());
  if (graph !== 'fan') {
    for (let k = 0; k < Math.floor(parts / 5); k++) {
      add(1 + draw.below(parts - 1), 1 + draw.below(parts - 1), 0.4 + 0.5 * draw.uniform());
    }
  }
  if (graph === 'full') {
    for (let i = 0; i < parts; i++) {
      for (let j = i + 1; j < parts; j++) add(i, j, 0.1 + 0.2 * draw.uniform());
    }
  }
  return [...pairs.values()];
}

const inHundredths = (cost: number): number => Math.round(100 * cost);

/** What a part in a paint costs that would like to be near another. */
export const wishCost = (strength: number, deltaE: number): number =>
  inHundredths(strength * Math.min(60, deltaE));

/** What two neighbours cost together, by their ΔE2000, hues and gloss. */
export function pairCost(
  { kind, weight }: Pick<Neighbours, 'kind' | 'weight'>,
  deltaE: number,
  one: Paint,
  other: Paint,
): number {
  const chroma = ({ lab }: Paint): number => Math.hypot(lab[1], lab[2]);
  const hue = ({ lab }: Paint): number => (Math.atan2(lab[2], lab[1]) * 180) / Math.PI;
  if (kind === 'apart') return inHundredths(weight * Math.abs(Math.min(deltaE, 80) - 40));
  if (kind === 'near') {
    const gloss = Math.abs(one.gloss60 - other.gloss60);
    return inHundredths(weight * (0.6 * Math.min(deltaE, 40) + 0.2 * gloss));
  }
  if (one === other) return 0;
  const turned = Math.abs(hue(one) - hue(other));
  const apart = turned > 180 ? 360 - turned : turned;
  const off = Math.min(...[0, 30, 120, 180].map((wanted) => Math.abs(apart - wanted))) / 30;
  const loud = Math.min(chroma(one), chroma(other), 50) / 50;
  return inHundredths(weight * (2 * Math.max(0, 12 - deltaE) + 15 * Math.min(1.5, off) * loud));
}

/** The instance as a cost network. */
export function networkOf(instance: Instance): Network {
  const { rack, candidates, wish, strength, neighbours, globals } = instance;
  const deltaE = rack.map((one) =>
    Float64Array.from(rack, (other) => ciede2000(one.lab, other.lab)),
  );
  const edges = neighbours.map((pair): Edge => {
    const [own, others] = [candidates[pair.i]!, candidates[pair.j]!];
    const table = new Float32Array(own.length * others.length);
    own.forEach((v, a) => {
      others.forEach((w, b) => {
        table[a * others.length + b] = pairCost(pair, deltaE[v]![w]!, rack[v]!, rack[w]!);
      });
    });
    for (const [a, b] of pair.forbidden) table[a * others.length + b] = never;
    if (pair.implied !== undefined) {
      const [a, b] = pair.implied;
      for (let other = 0; other < others.length; other++) {
        if (other !== b) table[a * others.length + other] = never;
      }
    }
    return { i: pair.i, j: pair.j, table };
  });
  return {
    sizes: candidates.map((list) => list.length),
    base: 0,
    unary: candidates.map((list, i) =>
      Float64Array.from(list, (v) => wishCost(strength, deltaE[wish[i]!]![v]!)),
    ),
    edges,
    ...(globals && { things: thingsOf(instance, globals), rest: echoOf(instance, globals) }),
  };
}

function thingsOf({ rack, candidates }: Instance, globals: Globals): Things {
  const { perFinish, perBottle, mostBottles } = globals;
  return {
    cost: Float64Array.from(rack, ({ onHand }) => perFinish + (onHand ? 0 : perBottle)),
    usedBy: candidates.map((list) => list.map((v) => [v])),
    always: [],
    limits: [
      { counts: Uint8Array.from(rack, ({ onHand }) => (onHand ? 0 : 1)), most: mostBottles },
    ],
  };
}

/** The finish of one part must show on another. */
function echoOf({ candidates }: Instance, { echo }: Globals): Rest {
  const least = (values: Int32Array): number => {
    if (values[echo]! < 0) return 0;
    const worn = candidates[echo]![values[echo]!]!;
    const shows = candidates.some(
      (list, i) =>
        i !== echo && (values[i]! < 0 ? list.includes(worn) : list[values[i]!]! === worn),
    );
    return shows ? 0 : never;
  };
  return { cost: least, bound: least };
}
