/** Plain bodies to measure, in full-size mm: their areas, widths and borders are known by geometry. */
import type { Mesh, MeshPart } from '../../src/car/mesh.ts';

type Corner = readonly [number, number, number];
export interface Piece {
  readonly part: string;
  readonly triangles: readonly (readonly [Corner, Corner, Corner])[];
  readonly label?: Partial<MeshPart>;
}

/** A flat four-sided piece, corners in order round it. */
export const quad = (
  part: string,
  [a, b, c, d]: readonly [Corner, Corner, Corner, Corner],
  label: Partial<MeshPart> = {},
): Piece => ({
  part,
  label,
  triangles: [
    [a, b, c],
    [a, c, d],
  ],
});

/** An upright box from its low to its high corner. */
export function box(part: string, low: Corner, high: Corner, label: Partial<MeshPart> = {}): Piece {
  const corner = (x: number, y: number, z: number): Corner => [
    x ? high[0] : low[0],
    y ? high[1] : low[1],
    z ? high[2] : low[2],
  ];
  const faces = [
    [corner(1, 0, 0), corner(1, 1, 0), corner(1, 1, 1), corner(1, 0, 1)],
    [corner(0, 0, 0), corner(0, 0, 1), corner(0, 1, 1), corner(0, 1, 0)],
    [corner(0, 1, 0), corner(0, 1, 1), corner(1, 1, 1), corner(1, 1, 0)],
    [corner(0, 0, 0), corner(1, 0, 0), corner(1, 0, 1), corner(0, 0, 1)],
    [corner(0, 0, 1), corner(1, 0, 1), corner(1, 1, 1), corner(0, 1, 1)],
    [corner(0, 0, 0), corner(0, 1, 0), corner(1, 1, 0), corner(1, 0, 0)],
  ] as const;
  return { part, label, triangles: faces.flatMap((face) => quad(part, face).triangles) };
}

/** A mesh of pieces; pieces of the same part are separate nodes of it. */
export function meshFrom(pieces: readonly Piece[]): Mesh {
  const parts: MeshPart[] = [];
  const nodes: { name: string; part: number }[] = [];
  const positions: number[] = [];
  const normals: number[] = [];
  const nodeOf: number[] = [];
  for (const { part: id, triangles, label } of pieces) {
    let part = parts.findIndex((one) => one.id === id);
    if (part < 0) {
      part = parts.length;
      const plain = { name: id, role: 'feature', group: 'skin', isGlass: false, hex: '#808080' };
      parts.push({ id, ...plain, ...label } as MeshPart);
    }
    for (const [a, b, c] of triangles) {
      const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
      const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
      const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      const length = Math.hypot(...n);
      for (const corner of [a, b, c]) {
        positions.push(...corner);
        normals.push(...n.map((value) => value / length));
      }
      nodeOf.push(nodes.length);
    }
    nodes.push({ name: `${id}-${nodes.length}`, part });
  }
  return {
    parts,
    nodes,
    positions: Float32Array.from(positions),
    normals: Float32Array.from(normals),
    nodeOf: Uint16Array.from(nodeOf),
  };
}
