/**
 * A skin that can be scored and cut like sheet metal. Every vertex is a ray that meets one
 * smooth surface; scoring along an outline splits the triangles it crosses and drops the new
 * vertices back onto that surface, so arches, lamps, doors and stripes get clean curved edges
 * while normals, taken from the surface itself, never show the cuts. Metres.
 * Vertices nearer to an outline than a tenth of their edge slide onto it, which keeps slivers
 * away. Limits: an outline must not cross the same edge twice, so it needs features wider than
 * a cell.
 */
import {
  add,
  dot,
  interpolate3,
  lengthOf,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../src/ground/vector.ts';
import type { Facet } from './solid.ts';

export interface Ray {
  readonly from: Vector3;
  readonly along: Vector3;
}
/** The smooth surface: where a ray meets it and its unit normal there. */
export interface Surface {
  readonly hit: (ray: Ray) => Vector3;
  readonly normal: (point: Vector3) => Vector3;
}
/** Signed distance-like value of an outline at a surface point: below 0 inside. */
export type Outline = (point: Vector3) => number;
export interface Cell {
  readonly corners: readonly [number, number, number];
  readonly part: string;
}

const slide = 0.14;
const onOutline = 2e-5;

export class Shell {
  readonly surface: Surface;
  readonly rays: Ray[] = [];
  readonly points: Vector3[] = [];
  cells: Cell[] = [];
  readonly #scored = new Set<number>();
  readonly #normals = new Map<number, { point: Vector3; normal: Vector3 }>();

  constructor(surface: Surface) {
    this.surface = surface;
  }

  /** A vertex on `ray`; its index. */
  vertex(ray: Ray): number {
    this.rays.push(ray);
    this.points.push(this.surface.hit(ray));
    return this.points.length - 1;
  }

  /** Splits every triangle that `outline` crosses, so that none lies on both sides of it. */
  score(outline: Outline): void {
    const value = this.points.map(outline);
    this.#slideOnto(outline, value);
    const middles = new Map<string, number>();
    const middle = (a: number, b: number): number => {
      const [low, high] = a < b ? [a, b] : [b, a];
      const key = `${low},${high}`;
      const known = middles.get(key);
      if (known !== undefined) return known;
      const made = this.vertex(this.#crossing(outline, low, high, value[low]!, value[high]!));
      this.#scored.add(made);
      middles.set(key, made);
      return made;
    };
    const side = (k: number): number =>
      Math.abs(value[k]!) < onOutline ? 0 : Math.sign(value[k]!);
    this.cells = this.cells.flatMap((cell) => split(cell, side, middle));
  }

  /** Halves the edges that `isLong` picks by their ends, and fits the triangles beside them. */
  refine(isLong: (a: number, b: number) => boolean): void {
    const middles = new Map<string, number | undefined>();
    const key = (a: number, b: number): string => (a < b ? `${a},${b}` : `${b},${a}`);
    for (const { corners } of this.cells) {
      for (const k of [0, 1, 2]) {
        const [a, b] = [corners[k]!, corners[(k + 1) % 3]!];
        if (middles.has(key(a, b))) continue;
        const [low, high] = a < b ? [a, b] : [b, a];
        const middle = isLong(low, high) ? this.vertex(this.#blend(low, high, 0.5)) : undefined;
        middles.set(key(a, b), middle);
      }
    }
    this.cells = this.cells.flatMap((cell) => halved(cell, (a, b) => middles.get(key(a, b))));
  }

  /**
   * How far a straight edge is from the surface: the angle between the normal at its middle and
   * the mean of its ends' normals (radians), which is what bends a mirrored line, and its sagitta.
   */
  strayOf(a: number, b: number): { angle: number; sagitta: number; turn: number } {
    const middle = this.surface.hit(this.#blend(a, b, 0.5));
    const mean = normalize(add(this.normalOf(a), this.normalOf(b)));
    const [p, q] = [this.points[a]!, this.points[b]!];
    return {
      angle: Math.acos(Math.min(1, dot(mean, this.surface.normal(middle)))),
      turn: Math.acos(Math.min(1, dot(this.normalOf(a), this.normalOf(b)))),
      sagitta: lengthOf(subtract(middle, scale(add(p, q), 0.5))),
    };
  }

  /** The surface's unit normal at a vertex. */
  normalOf(k: number): Vector3 {
    const point = this.points[k]!;
    const known = this.#normals.get(k);
    if (known?.point === point) return known.normal;
    const normal = this.surface.normal(point);
    this.#normals.set(k, { point, normal });
    return normal;
  }

  /** Gives each triangle the part that `partOf` names for its middle, given the part it has. */
  paint(partOf: (centre: Vector3, part: string) => string): void {
    this.cells = this.cells.map((cell) => ({
      ...cell,
      part: partOf(this.centre(cell), cell.part),
    }));
  }

  lengthOf(a: number, b: number): number {
    return lengthOf(subtract(this.points[a]!, this.points[b]!));
  }

  middle(a: number, b: number): Vector3 {
    return scale(add(this.points[a]!, this.points[b]!), 0.5);
  }

  centre({ corners: [a, b, c] }: Cell): Vector3 {
    const sum = add(add(this.points[a]!, this.points[b]!), this.points[c]!);
    return [sum[0] / 3, sum[1] / 3, sum[2] / 3];
  }

  /** The triangles of the parts that `keep` accepts, with the surface's own normals. */
  facets(keep: (part: string) => boolean): Facet[] {
    return this.cells
      .filter(({ part }) => keep(part))
      .map(({ part, corners: [a, b, c] }) => ({
        part,
        corners: [this.points[a]!, this.points[b]!, this.points[c]!] as const,
        normals: [this.normalOf(a), this.normalOf(b), this.normalOf(c)] as const,
      }));
  }

  /** The directed edges of kept triangles along a hole, as vertex pairs. */
  edges(isHole: (part: string) => boolean, isKept: (part: string) => boolean): [number, number][] {
    const inside = new Set<string>();
    for (const { corners, part } of this.cells) {
      if (!isHole(part)) continue;
      for (const k of [0, 1, 2]) inside.add(`${corners[k]},${corners[(k + 1) % 3]}`);
    }
    const found: [number, number][] = [];
    for (const { corners, part } of this.cells) {
      if (isHole(part) || !isKept(part)) continue;
      for (const k of [0, 1, 2]) {
        const [a, b] = [corners[k]!, corners[(k + 1) % 3]!];
        if (inside.has(`${b},${a}`)) found.push([a, b]);
      }
    }
    return found;
  }

  // The half shell meets its mirrored twin at x = 0: nothing there may leave that plane.
  #isOnSeam(k: number): boolean {
    return Math.abs(this.points[k]![0]) < 1e-9;
  }

  #blend(a: number, b: number, t: number): Ray {
    const [from, to] = [this.rays[a]!, this.rays[b]!];
    return {
      from: interpolate3(from.from, to.from, t),
      along: normalize(interpolate3(from.along, to.along, t)),
    };
  }

  // Where the outline crosses the edge: bisection on the surface itself.
  #crossing(outline: Outline, a: number, b: number, atA: number, atB: number): Ray {
    let [low, high] = [0, 1];
    let [lowValue, highValue] = [atA, atB];
    for (let step = 0; step < 30 && high - low > 1e-6; step++) {
      const even = low + (high - low) / 2;
      const aimed = low + ((high - low) * lowValue) / (lowValue - highValue);
      const t = step % 3 === 2 ? even : Math.min(high - 1e-7, Math.max(low + 1e-7, aimed));
      const value = outline(this.surface.hit(this.#blend(a, b, t)));
      if (Math.abs(value) < 1e-7) return this.#blend(a, b, t);
      if (Math.sign(value) === Math.sign(lowValue)) [low, lowValue] = [t, value];
      else [high, highValue] = [t, value];
    }
    return this.#blend(a, b, (low + high) / 2);
  }

  // Vertices close to the outline move onto it, unless an earlier outline already holds them.
  #slideOnto(outline: Outline, value: number[]): void {
    const edges = new Set<string>();
    for (const { corners } of this.cells) {
      for (const k of [0, 1, 2]) {
        const [a, b] = [corners[k]!, corners[(k + 1) % 3]!];
        edges.add(a < b ? `${a},${b}` : `${b},${a}`);
      }
    }
    for (const edge of edges) {
      const [a, b] = edge.split(',').map(Number) as [number, number];
      for (const [near, far] of [
        [a, b],
        [b, a],
      ] as const) {
        const [atNear, atFar] = [value[near]!, value[far]!];
        if (atNear * atFar >= 0 || this.#scored.has(near)) continue;
        if (this.#isOnSeam(near) && !this.#isOnSeam(far)) continue;
        if (Math.abs(atNear) / (Math.abs(atNear) + Math.abs(atFar)) > slide) continue;
        const ray = this.#crossing(outline, near, far, atNear, atFar);
        this.rays[near] = ray;
        this.points[near] = this.surface.hit(ray);
        value[near] = 0;
        this.#scored.add(near);
      }
    }
  }
}

function split(
  cell: Cell,
  side: (k: number) => number,
  middle: (a: number, b: number) => number,
): Cell[] {
  const { corners, part } = cell;
  const sides = corners.map(side);
  if (!(sides.includes(1) && sides.includes(-1))) return [cell];
  const make = (a: number, b: number, c: number): Cell => ({ corners: [a, b, c], part });
  const lone = sides.includes(0)
    ? sides.indexOf(0)
    : sides.findIndex((here) => sides.filter((other) => other === here).length === 1);
  const a = corners[lone]!;
  const b = corners[(lone + 1) % 3]!;
  const c = corners[(lone + 2) % 3]!;
  if (sides.includes(0)) {
    const across = middle(b, c);
    return [make(a, b, across), make(a, across, c)];
  }
  const ab = middle(a, b);
  const ac = middle(a, c);
  return [make(a, ab, ac), make(ab, b, c), make(ab, c, ac)];
}

// One, two or three halved edges give two, three or four triangles.
function halved(cell: Cell, middle: (a: number, b: number) => number | undefined): Cell[] {
  const { part } = cell;
  const make = (x: number, y: number, z: number): Cell => ({ corners: [x, y, z], part });
  for (let turn = 0; turn < 3; turn++) {
    const [a, b, c] = [0, 1, 2].map((k) => cell.corners[(k + turn) % 3]!) as [
      number,
      number,
      number,
    ];
    const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
    if (ab === undefined) continue;
    if (bc !== undefined && ca !== undefined) {
      return [make(a, ab, ca), make(ab, b, bc), make(ca, bc, c), make(ab, bc, ca)];
    }
    if (bc !== undefined) return [make(ab, b, bc), make(a, ab, bc), make(a, bc, c)];
    if (ca === undefined) return [make(a, ab, c), make(ab, b, c)];
  }
  return [cell];
}
