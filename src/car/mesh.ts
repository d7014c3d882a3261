/**
 * What does the car consist of, as bare geometry? One flat list of triangles with the part and the
 * node each belongs to: the only shape of a car that sight and outline know.
 * Full-size millimetres, +Y up, nose toward +Z, the car's left side toward +X.
 */
import { cross, lengthOf, scale, subtract, type Vector3 } from '../ground/vector.ts';
import type { Group, Role, SightPart } from './table.ts';

export interface MeshPart {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly group: Group;
  /** The finish of a given part where the build does not say: Lab D65 and GU60. */
  readonly given?: NonNullable<SightPart['given']>;
  /** Id of a part without which this one is not there. */
  readonly goesWith?: string;
  /** Seen through: left out of the sight table, drawn translucent in pictures. */
  readonly isGlass: boolean;
  /** Base colour of the part's material, sRGB hex; a picture's paint before a build is chosen. */
  readonly hex: string;
}

/** One placing of one part: the front left caliper and the rear right one are two nodes. */
export interface MeshNode {
  readonly name: string;
  /** Index into `parts`. */
  readonly part: number;
}

export interface Mesh {
  readonly parts: readonly MeshPart[];
  readonly nodes: readonly MeshNode[];
  /** Nine numbers a triangle: three corners of x, y, z, mm. */
  readonly positions: Float32Array;
  /** Nine numbers a triangle: a unit normal for each corner. */
  readonly normals: Float32Array;
  /** Index into `nodes` for each triangle. */
  readonly nodeOf: Uint16Array;
}

export interface Box {
  readonly low: Vector3;
  readonly high: Vector3;
}

/** Corner `corner` (0–2) of a triangle, mm. */
export function cornerOf(mesh: Mesh, triangle: number, corner: number): Vector3 {
  const at = triangle * 9 + corner * 3;
  const { positions } = mesh;
  return [positions[at]!, positions[at + 1]!, positions[at + 2]!];
}

/** Centre of gravity (mm) and area-weighted normal (mm², length = area) of a triangle. */
export function facetOf(mesh: Mesh, triangle: number): { centroid: Vector3; normal: Vector3 } {
  const [a, b, c] = [0, 1, 2].map((corner) => cornerOf(mesh, triangle, corner)) as [
    Vector3,
    Vector3,
    Vector3,
  ];
  return {
    centroid: [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3],
    normal: scale(cross(subtract(b, a), subtract(c, a)), 0.5),
  };
}

/** The part each triangle belongs to, as an index into `parts`. */
export const partOf = (mesh: Mesh, triangle: number): number =>
  mesh.nodes[mesh.nodeOf[triangle]!]!.part;

/** Smallest upright box round the triangles that `isMeant` picks; undefined where none is. */
export function boundsOf(
  mesh: Mesh,
  isMeant: (triangle: number) => boolean = () => true,
): Box | undefined {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let triangle = 0; triangle < mesh.nodeOf.length; triangle++) {
    if (!isMeant(triangle)) continue;
    for (let at = 0; at < 9; at++) {
      const value = mesh.positions[triangle * 9 + at]!;
      const axis = at % 3;
      if (value < low[axis]!) low[axis] = value;
      if (value > high[axis]!) high[axis] = value;
    }
  }
  if (low[0] === Infinity) return undefined;
  return { low: low as unknown as Vector3, high: high as unknown as Vector3 };
}

/** Middle of a box, mm. */
export const middleOf = ({ low, high }: Box): Vector3 => [
  (low[0] + high[0]) / 2,
  (low[1] + high[1]) / 2,
  (low[2] + high[2]) / 2,
];

/** Half the diagonal of a box, mm: the radius of a ball that holds it. */
export const radiusOf = ({ low, high }: Box): number => lengthOf(subtract(high, low)) / 2;

/**
 * The mesh without the triangles of these parts, by id; the same object where there are none. Parts
 * and nodes keep their places, so that indices mean the same in both.
 */
export function meshWithout(mesh: Mesh, ids: ReadonlySet<string>): Mesh {
  const isGone = mesh.nodes.map(({ part }) => ids.has(mesh.parts[part]!.id));
  const kept: number[] = [];
  mesh.nodeOf.forEach((node, triangle) => {
    if (!isGone[node]) kept.push(triangle);
  });
  if (kept.length === mesh.nodeOf.length) return mesh;
  const positions = new Float32Array(kept.length * 9);
  const normals = new Float32Array(kept.length * 9);
  kept.forEach((triangle, at) => {
    positions.set(mesh.positions.subarray(triangle * 9, triangle * 9 + 9), at * 9);
    normals.set(mesh.normals.subarray(triangle * 9, triangle * 9 + 9), at * 9);
  });
  const nodeOf = Uint16Array.from(kept, (triangle) => mesh.nodeOf[triangle]!);
  return { ...mesh, positions, normals, nodeOf };
}
