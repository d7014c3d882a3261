/**
 * A solid under construction: triangles, each wearing a part id, in metres. Builders add quads,
 * grids and fans; `facets` then gives every corner its normal, smooth across gentle folds and
 * sharp across folds over the crease angle, so highlights run cleanly and edges stay edges.
 * Corners are counter-clockwise seen from outside. Angle-weighted normals, our own judgement of
 * the crease angle (30–45°) by eye on rendered pictures.
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

export type Corners = readonly [Vector3, Vector3, Vector3];
/** One triangle ready to be stored: its part, its corners and the unit normal at each. */
export interface Facet {
  readonly part: string;
  readonly corners: Corners;
  readonly normals: Corners;
}
interface Triangle {
  part: string;
  corners: Corners;
}
/** The part of a whole surface, or of each cell (row, column) of a grid; '' leaves it open. */
export type PartOf = string | ((row: number, column: number) => string);

const smallestArea = 1e-9;
const weldPerMetre = 2e4;

export class Solid {
  readonly triangles: Triangle[] = [];
  readonly creaseDegrees: number;

  constructor(creaseDegrees = 35) {
    this.creaseDegrees = creaseDegrees;
  }

  triangle(part: string, a: Vector3, b: Vector3, c: Vector3): this {
    if (lengthOf(cross(subtract(b, a), subtract(c, a))) > smallestArea) {
      this.triangles.push({ part, corners: [a, b, c] });
    }
    return this;
  }

  /** Two triangles, split along the shorter diagonal. */
  quad(part: string, a: Vector3, b: Vector3, c: Vector3, d: Vector3): this {
    if (lengthOf(subtract(c, a)) <= lengthOf(subtract(d, b)) * 1.0001) {
      return this.triangle(part, a, b, c).triangle(part, a, c, d);
    }
    return this.triangle(part, a, b, d).triangle(part, b, c, d);
  }

  /** Quads between neighbouring rows; rows (or columns) may close on themselves. */
  grid(
    part: PartOf,
    rows: readonly (readonly Vector3[])[],
    closed: { rows?: boolean; columns?: boolean } = {},
  ): this {
    const height = rows.length;
    const width = rows[0]?.length ?? 0;
    for (let i = 0; i < height - (closed.rows ? 0 : 1); i++) {
      for (let j = 0; j < width - (closed.columns ? 0 : 1); j++) {
        const below = rows[i]!;
        const above = rows[(i + 1) % height]!;
        const k = (j + 1) % width;
        const name = typeof part === 'string' ? part : part(i, j);
        if (name !== '') this.quad(name, below[j]!, above[j]!, above[k]!, below[k]!);
      }
    }
    return this;
  }

  /** A lid over a closed loop, from its centre. */
  fan(part: string, loop: readonly Vector3[]): this {
    const centre = scale(loop.reduce(add, [0, 0, 0]), 1 / loop.length);
    loop.forEach((here, k) => {
      this.triangle(part, centre, here, loop[(k + 1) % loop.length]!);
    });
    return this;
  }

  /** Everything of `other`, moved by `move` (which must not mirror). */
  join(other: Solid, move: (point: Vector3) => Vector3 = (point) => point): this {
    for (const { part, corners } of other.triangles) {
      this.triangles.push({
        part,
        corners: [move(corners[0]), move(corners[1]), move(corners[2])],
      });
    }
    return this;
  }

  /** Adds the right-hand twin (x → −x); `rename` may give it parts of its own. */
  mirrored(rename: (part: string) => string = (part) => part): this {
    for (const { part, corners } of [...this.triangles]) {
      const [a, b, c] = corners;
      this.triangles.push({ part: rename(part), corners: [flip(a), flip(c), flip(b)] });
    }
    return this;
  }

  /** Turns the triangles from index `from` on, as one closed body, so that all face outwards. */
  closedFrom(from: number): this {
    const made = this.triangles.slice(from);
    const points = made.flatMap(({ corners }) => corners);
    const centre = scale(points.reduce(add, [0, 0, 0]), 1 / Math.max(1, points.length));
    let volume = 0;
    for (const { corners } of made) {
      const [a, b, c] = corners.map((corner) => subtract(corner, centre)) as [
        Vector3,
        Vector3,
        Vector3,
      ];
      volume += dot(a, cross(b, c));
    }
    if (volume < 0) for (const triangle of made) triangle.corners = reversed(triangle.corners);
    return this;
  }

  /** Turns each triangle from index `from` on to face the point that `eye` gives for its centre. */
  facingFrom(from: number, eye: (centre: Vector3) => Vector3): this {
    for (const triangle of this.triangles.slice(from)) {
      const [a, b, c] = triangle.corners;
      const centre = scale(add(add(a, b), c), 1 / 3);
      const outward = cross(subtract(b, a), subtract(c, a));
      if (dot(outward, subtract(eye(centre), centre)) < 0) {
        triangle.corners = reversed(triangle.corners);
      }
    }
    return this;
  }

  /** The triangles with their normals. */
  facets(): Facet[] {
    const areas = this.triangles.map(({ corners: [a, b, c] }) =>
      cross(subtract(b, a), subtract(c, a)),
    );
    const faces = areas.map(normalize);
    const meeting = new Map<string, [face: number, corner: number][]>();
    this.triangles.forEach(({ corners }, face) => {
      corners.forEach((point, corner) => {
        const key = weldKey(point);
        const there = meeting.get(key);
        if (there) there.push([face, corner]);
        else meeting.set(key, [[face, corner]]);
      });
    });
    const limit = Math.cos((this.creaseDegrees * Math.PI) / 180);
    const turned = this.triangles.map((): Vector3[] => []);
    for (const there of meeting.values()) {
      for (const cluster of clustersOf(there, faces, limit)) {
        let sum: Vector3 = [0, 0, 0];
        for (const [face, corner] of cluster) {
          sum = add(sum, scale(faces[face]!, this.#angle(face, corner)));
        }
        for (const [face, corner] of cluster) {
          turned[face]![corner] = lengthOf(sum) > 1e-6 ? normalize(sum) : faces[face]!;
        }
      }
    }
    return this.triangles.map(({ part, corners }, face) => {
      const [a, b, c] = turned[face]!;
      return { part, corners, normals: [a!, b!, c!] as const };
    });
  }

  #angle(face: number, corner: number): number {
    const { corners } = this.triangles[face]!;
    const here = corners[corner]!;
    const a = normalize(subtract(corners[(corner + 1) % 3]!, here));
    const b = normalize(subtract(corners[(corner + 2) % 3]!, here));
    return Math.acos(Math.max(-1, Math.min(1, dot(a, b))));
  }
}

type Meeting = readonly [face: number, corner: number];
/** Faces that meet at a point, in groups that folds gentler than the limit join. */
function clustersOf(there: readonly Meeting[], faces: readonly Vector3[], limit: number) {
  const left = new Set(there);
  const clusters: Meeting[][] = [];
  for (const first of there) {
    if (!left.delete(first)) continue;
    const cluster: Meeting[] = [first];
    for (const [face] of cluster) {
      for (const one of left) {
        if (dot(faces[one[0]]!, faces[face]!) < limit) continue;
        cluster.push(one);
        left.delete(one);
      }
    }
    clusters.push(cluster);
  }
  return clusters;
}

const flip = (point: Vector3): Vector3 => [-point[0], point[1], point[2]];
const reversed = ([a, b, c]: Corners): Corners => [a, c, b];
const weldKey = (point: Vector3): string =>
  point.map((value) => Math.round(value * weldPerMetre)).join();
