/**
 * Which car lies in this file? Reads the bytes of a binary glTF 2.0 (metres, +Y up) into a `Mesh`
 * in full-size millimetres. Each node that carries a mesh says in its `extras` which part it is:
 * `{part, role, group, name, given?, isGlass?}`; a car from elsewhere names its parts through
 * `labelOf` instead. Nodes of one name and part are one placing, as the two halves of a bonnet are.
 * Quantized meshes are read; compressed ones (meshopt, Draco) are refused.
 */
import { type Document, Extension, type Node, type Primitive, WebIO } from '@gltf-transform/core';
import * as v from 'valibot';
import { InputError, type Problem, shown } from '../ground/problem.ts';
import type { Mesh, MeshNode, MeshPart } from './mesh.ts';
import { groups, roles } from './table.ts';

const labelSchema = v.object({
  part: v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)),
  role: v.picklist(roles),
  group: v.picklist(groups),
  name: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
  given: v.optional(
    v.object({
      lab: v.tuple([v.number(), v.number(), v.number()]),
      gloss60: v.pipe(v.number(), v.minValue(0)),
      isMetal: v.optional(v.boolean()),
    }),
  ),
  isGlass: v.optional(v.boolean()),
  /** Part without which this one is not there. */
  goesWith: v.optional(v.string()),
});
/** What a node says of itself: its part, role, group and everyday name. */
export type PartLabel = v.InferOutput<typeof labelSchema>;

/** Names the part of a node in a car made elsewhere; undefined leaves the node out. */
export type LabelOf = (nodeName: string, materialName: string) => PartLabel | undefined;

/** KHR_mesh_quantization only widens the number types allowed; the accessors already read them. */
class MeshQuantization extends Extension {
  static override readonly EXTENSION_NAME = 'KHR_mesh_quantization';
  override readonly extensionName = 'KHR_mesh_quantization';
  override read(): this {
    return this;
  }
  override write(): this {
    return this;
  }
}

const triangleMode = 4;
const mmPerMetre = 1000;

/**
 * The car in a GLB's bytes as one list of triangles.
 * @throws InputError where the bytes are no GLB, hold no triangles, or a node names no part.
 */
export async function readGlb(bytes: Uint8Array, labelOf?: LabelOf): Promise<Mesh> {
  const scene = await openGlb(bytes);
  const problems: Problem[] = [];
  const partIndex = new Map<string, number>();
  const parts: MeshPart[] = [];
  const nodes: MeshNode[] = [];
  const positions: number[] = [];
  const normals: number[] = [];
  const nodeOf: number[] = [];

  for (const node of scene.getRoot().listNodes()) {
    const mesh = node.getMesh();
    if (mesh === null) continue;
    const material = mesh.listPrimitives()[0]?.getMaterial();
    const label = labelFrom(node, material?.getName() ?? '', labelOf, problems);
    if (label === undefined) continue;
    let part = partIndex.get(label.part);
    if (part === undefined) {
      part = parts.length;
      partIndex.set(label.part, part);
      const { part: id, role, group, name, given, isGlass = false, goesWith } = label;
      const hex = hexFromLinear(material?.getBaseColorFactor() ?? [0.5, 0.5, 0.5]);
      parts.push({
        id,
        name,
        role,
        group,
        isGlass,
        hex,
        ...(given && { given }),
        ...(goesWith && { goesWith }),
      });
    }
    const name = node.getName();
    const known = nodes.findIndex((one) => one.name === name && one.part === part);
    const placing = name === '' || known < 0 ? nodes.length : known;
    if (placing === nodes.length) nodes.push({ name, part });
    for (const primitive of mesh.listPrimitives()) {
      const count = appendTriangles(primitive, node.getWorldMatrix(), positions, normals);
      for (let triangle = 0; triangle < count; triangle++) nodeOf.push(placing);
    }
  }
  if (problems.length > 0) throw new InputError(problems);
  if (nodeOf.length === 0) throw new InputError([noTriangles]);
  return {
    parts,
    nodes,
    positions: Float32Array.from(positions),
    normals: Float32Array.from(normals),
    nodeOf: Uint16Array.from(nodeOf),
  };
}

const noTriangles: Problem = {
  place: 'car',
  found: 'no triangles',
  expected: 'a binary glTF with at least one triangle mesh',
  mend: 'Export the car as triangles, not as points, lines or an empty scene.',
};

async function openGlb(bytes: Uint8Array): Promise<Document> {
  try {
    return await new WebIO().registerExtensions([MeshQuantization]).readBinary(bytes);
  } catch (cause) {
    const found = cause instanceof Error ? shown(cause.message) : 'something else';
    const problem: Problem = {
      place: 'car',
      found,
      expected: 'the bytes of a binary glTF 2.0 file (.glb), uncompressed or quantized',
      mend: 'Export the car again as .glb without mesh compression.',
    };
    throw new InputError([problem]);
  }
}

function labelFrom(
  node: Node,
  material: string,
  labelOf: LabelOf | undefined,
  problems: Problem[],
): PartLabel | undefined {
  if (labelOf !== undefined) return labelOf(node.getName(), material);
  const parsed = v.safeParse(labelSchema, node.getExtras());
  if (parsed.success) return parsed.output;
  const issue = parsed.issues[0];
  problems.push({
    place: `node ${shown(node.getName())} › extras › ${v.getDotPath(issue) ?? ''}`,
    found: shown(issue.input),
    expected: issue.expected ?? 'a part label',
    mend: 'Give the node extras with part, role, group and name, or map its name to a part.',
  });
  return undefined;
}

/** Appends a primitive's triangles in world space, mm; returns how many there were. */
function appendTriangles(
  primitive: Primitive,
  world: readonly number[],
  positions: number[],
  normals: number[],
): number {
  const place = primitive.getAttribute('POSITION');
  if (primitive.getMode() !== triangleMode || place === null) return 0;
  const lean = primitive.getAttribute('NORMAL');
  const indices = primitive.getIndices();
  const count = Math.floor((indices?.getCount() ?? place.getCount()) / 3);
  const [a, b, c, , d, e, f, , g, h, i, , x, y, z] = world as number[] & { length: 16 };
  // Normals turn with the cofactors of the matrix, which also holds for uneven scales.
  const [A, B, C] = [e! * i! - f! * h!, f! * g! - d! * i!, d! * h! - e! * g!];
  const [D, E, F] = [h! * c! - i! * b!, i! * a! - g! * c!, g! * b! - h! * a!];
  const [G, H, I] = [b! * f! - c! * e!, c! * d! - a! * f!, a! * e! - b! * d!];
  const sense = Math.sign(a! * A + b! * B + c! * C) || 1;
  // A mirrored node turns its triangles round, as glTF 2.0 § 3.7.4 says; turn them back.
  const turned = [0, 2, 1];
  const point: number[] = [];
  for (let corner = 0; corner < count * 3; corner++) {
    const there = sense < 0 ? corner - (corner % 3) + turned[corner % 3]! : corner;
    const index = indices === null ? there : indices.getScalar(there);
    const [p = 0, q = 0, r = 0] = place.getElement(index, point);
    positions.push(
      mmPerMetre * (a! * p + d! * q + g! * r + x!),
      mmPerMetre * (b! * p + e! * q + h! * r + y!),
      mmPerMetre * (c! * p + f! * q + i! * r + z!),
    );
    if (lean === null) continue;
    const [s = 0, t = 0, u = 0] = lean.getElement(index, point);
    pushUnit(
      normals,
      sense * (A * s + D * t + G * u),
      sense * (B * s + E * t + H * u),
      sense * (C * s + F * t + I * u),
    );
  }
  if (lean === null) appendFlatNormals(positions, normals, count);
  return count;
}

function appendFlatNormals(positions: readonly number[], normals: number[], count: number): void {
  const start = positions.length - count * 9;
  for (let triangle = 0; triangle < count; triangle++) {
    const at = (k: number): number => positions[start + triangle * 9 + k]!;
    const [ux, uy, uz] = [at(3) - at(0), at(4) - at(1), at(5) - at(2)];
    const [vx, vy, vz] = [at(6) - at(0), at(7) - at(1), at(8) - at(2)];
    for (let corner = 0; corner < 3; corner++) {
      pushUnit(normals, uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
    }
  }
}

function pushUnit(normals: number[], x: number, y: number, z: number): void {
  const length = Math.hypot(x, y, z) || 1;
  normals.push(x / length, y / length, z / length);
}

/** Linear 0–1 base colour to sRGB hex (IEC 61966-2-1). */
function hexFromLinear(linear: readonly number[]): string {
  const byte = (value: number): string => {
    const encoded = value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055;
    return Math.round(255 * Math.min(1, Math.max(0, encoded)))
      .toString(16)
      .padStart(2, '0');
  };
  return `#${byte(linear[0] ?? 0)}${byte(linear[1] ?? 0)}${byte(linear[2] ?? 0)}`;
}
