/**
 * Takes out of a scored shell the vertices that nothing would miss: those within one part where
 * the surface hardly bends, and those along a straight run of an outline. Each vertex is drawn
 * into a neighbour, shortest edge first, unless that would turn a triangle over, squeeze it to a
 * sliver, or leave the surface or the outline by more than is allowed. Metres and radians.
 * Edge collapse is common practice; the limits are our own judgement.
 */
import {
  add,
  cross,
  dot,
  lengthOf,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../src/ground/vector.ts';
import type { Cell, Shell } from './shell.ts';

export interface Thinning {
  /** Most that a mirrored line may bend within an edge, radians. */
  readonly bend: number;
  /** The same where the surface is flat, as even a small bend there shifts a reflection far. */
  readonly bendFlat: number;
  /** Added to that, as a share of the turn between the edge's ends. */
  readonly bendShare: number;
  /** Distance of an edge from the surface. */
  readonly stray: number;
  /** Distance of an outline from its own vertices. */
  readonly line: number;
  readonly longest: number;
  /** Parts whose inner vertices must stay, or are not worth the work. */
  readonly isKept: (part: string) => boolean;
}

/** Thins the shell's cells in place. */
export function thin(shell: Shell, limits: Thinning): void {
  const net = new Net(shell, limits);
  for (let pass = 0; pass < 30; pass++) if (net.pass() === 0) break;
  shell.cells = net.cells.filter((cell): cell is Cell => cell !== undefined);
}

class Net {
  readonly cells: (Cell | undefined)[];
  readonly #shell: Shell;
  readonly #limits: Thinning;
  readonly #around = new Map<number, Set<number>>();
  readonly #close = new Map<string, boolean>();
  /** How often the triangles round each vertex have changed, and at what count an edge was tried. */
  readonly #changes: number[] = [];
  readonly #tried = new Map<string, number>();
  /** How far each vertex's outline has strayed so far. */
  readonly #lost = new Map<number, number>();

  constructor(shell: Shell, limits: Thinning) {
    this.#shell = shell;
    this.#limits = limits;
    this.cells = [...shell.cells];
    this.cells.forEach((cell, index) => {
      for (const k of cell!.corners) this.#about(k).add(index);
    });
  }

  /** Tries every edge once, shortest first; how many vertices went. */
  pass(): number {
    const edges = new Map<string, readonly [number, number, number]>();
    for (const cell of this.cells) {
      if (cell === undefined) continue;
      for (const k of [0, 1, 2]) {
        const [a, b] = [cell.corners[k]!, cell.corners[(k + 1) % 3]!];
        const length = this.#shell.lengthOf(a, b);
        if (length < this.#limits.longest)
          edges.set(a < b ? `${a},${b}` : `${b},${a}`, [a, b, length]);
      }
    }
    let gone = 0;
    const touched = new Set<number>();
    for (const [a, b] of [...edges.values()].sort((p, q) => p[2] - q[2])) {
      if (touched.has(a) || touched.has(b) || !this.#isNews(a, b)) continue;
      const [from, to] = this.#draw(a, b) ? [a, b] : this.#draw(b, a) ? [b, a] : [-1, -1];
      if (from < 0) continue;
      gone++;
      touched.add(from);
      for (const k of this.#neighbours(to)) touched.add(k);
    }
    return gone;
  }

  // Whether anything about either end has changed since this edge was last tried.
  #isNews(a: number, b: number): boolean {
    const edge = a < b ? `${a},${b}` : `${b},${a}`;
    const now = (this.#changes[a] ?? 0) + (this.#changes[b] ?? 0);
    if (this.#tried.get(edge) === now) return false;
    this.#tried.set(edge, now);
    return true;
  }

  #about(k: number): Set<number> {
    const known = this.#around.get(k) ?? new Set<number>();
    this.#around.set(k, known);
    return known;
  }

  #neighbours(k: number): Set<number> {
    const found = new Set<number>();
    for (const index of this.#about(k)) for (const j of this.cells[index]!.corners) found.add(j);
    found.delete(k);
    return found;
  }

  // The neighbours to which an outline or the rim of the shell leads from `k`.
  #lines(k: number): number[] {
    const parts = new Map<number, string[]>();
    for (const index of this.#about(k)) {
      const { corners, part } = this.cells[index]!;
      for (const j of corners) if (j !== k) parts.set(j, [...(parts.get(j) ?? []), part]);
    }
    return [...parts].filter(([, two]) => two.length < 2 || two[0] !== two[1]).map(([j]) => j);
  }

  /** Draws vertex `from` into `to` where that harms nothing; whether it did. */
  #draw(from: number, to: number): boolean {
    const { points } = this.#shell;
    const lines = this.#lines(from);
    let lost = 0;
    if (lines.length === 2 && lines.includes(to)) {
      const other = lines[0] === to ? lines[1]! : lines[0]!;
      lost = (this.#lost.get(from) ?? 0) + offLine(points[from]!, points[to]!, points[other]!);
      const isSeam = points[from]![0] === 0;
      if (isSeam !== (points[to]![0] === 0) || isSeam !== (points[other]![0] === 0)) return false;
      if (lost > this.#limits.line) return false;
      if (this.#shell.lengthOf(to, other) > this.#limits.longest) return false;
    } else if (lines.length !== 0) return false;
    const own = [...this.#about(from)].map((index) => [index, this.cells[index]!] as const);
    if (lines.length === 0 && this.#limits.isKept(own[0]![1].part)) return false;
    const shared = own.filter(([, { corners }]) => corners.includes(to));
    const both = [...this.#neighbours(from)].filter((k) => this.#neighbours(to).has(k));
    if (both.length !== shared.length) return false;
    const moved = own
      .filter(([, { corners }]) => !corners.includes(to))
      .map(([index, cell]) => {
        const [a, b, c] = cell.corners.map((k) => (k === from ? to : k)) as [
          number,
          number,
          number,
        ];
        return [index, { part: cell.part, corners: [a, b, c] as const }] as const;
      });
    if (!moved.every(([index, cell]) => this.#isSound(cell, this.cells[index]!))) return false;
    if (
      !this.#isTrue(
        from,
        to,
        moved.map(([, cell]) => cell),
      )
    )
      return false;
    for (const [index, { corners }] of shared) {
      for (const k of corners) this.#about(k).delete(index);
      this.cells[index] = undefined;
    }
    for (const [index, cell] of moved) {
      this.cells[index] = cell;
      this.#about(to).add(index);
    }
    this.#around.delete(from);
    for (const [, { corners }] of own) {
      for (const k of corners) this.#changes[k] = (this.#changes[k] ?? 0) + 1;
    }
    if (lost > 0) this.#lost.set(to, Math.max(lost, this.#lost.get(to) ?? 0));
    return true;
  }

  // A triangle must still face outwards and keep some height over its longest edge.
  #isSound({ corners }: Cell, before: Cell): boolean {
    const height = this.#slimness(corners);
    if (height < 0.05 && height < this.#slimness(before.corners)) return false;
    const [a, b, c] = corners.map((k) => this.#shell.points[k]!) as [Vector3, Vector3, Vector3];
    const face = normalize(cross(subtract(b, a), subtract(c, a)));
    return corners.every((k) => dot(face, this.#shell.normalOf(k)) > 0.6);
  }

  // Height over the longest edge, as a share of that edge.
  #slimness(corners: Cell['corners']): number {
    const [a, b, c] = corners.map((k) => this.#shell.points[k]!) as [Vector3, Vector3, Vector3];
    const longest = Math.max(
      lengthOf(subtract(b, a)),
      lengthOf(subtract(c, b)),
      lengthOf(subtract(a, c)),
    );
    return lengthOf(cross(subtract(b, a), subtract(c, a))) / (longest * longest);
  }

  // The new edges and the lost vertex must lie close to the surface, and mirror alike.
  #isTrue(from: number, to: number, moved: readonly Cell[]): boolean {
    const { stray, longest, isKept } = this.#limits;
    if (moved.every(({ part }) => isKept(part))) return true;
    const point = this.#shell.points[from]!;
    let nearest = Number.POSITIVE_INFINITY;
    const known = this.#neighbours(to);
    for (const { corners } of moved) {
      const [a, b, c] = corners.map((k) => this.#shell.points[k]!) as [Vector3, Vector3, Vector3];
      const face = normalize(cross(subtract(b, a), subtract(c, a)));
      nearest = Math.min(nearest, Math.abs(dot(face, subtract(point, a))));
      for (const k of corners) {
        if (k === to || known.has(k)) continue;
        if (this.#shell.lengthOf(k, to) > longest) return false;
        if (!this.#isClose(k, to)) return false;
      }
    }
    return nearest <= stray;
  }

  // Vertices never move, so an edge once measured stays as close as it was.
  #isClose(a: number, b: number): boolean {
    const key = a < b ? `${a},${b}` : `${b},${a}`;
    const known = this.#close.get(key);
    if (known !== undefined) return known;
    const { angle, sagitta, turn } = this.#shell.strayOf(a, b);
    const { bend, bendFlat, bendShare, stray } = this.#limits;
    const isClose = angle <= Math.min(bend, bendFlat + bendShare * turn) && sagitta <= stray;
    this.#close.set(key, isClose);
    return isClose;
  }
}

function offLine(point: Vector3, from: Vector3, to: Vector3): number {
  const along = subtract(to, from);
  const t = dot(subtract(point, from), along) / Math.max(1e-12, dot(along, along));
  if (t <= 0 || t >= 1) return Number.POSITIVE_INFINITY;
  return lengthOf(subtract(point, add(from, scale(along, t))));
}
