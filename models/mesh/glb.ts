/**
 * Facets to a binary glTF: corners welded into indexed vertices, one mesh for each part of an
 * assembly, stored once and placed by as many nodes as the assembly has places, mirrored ones too.
 * Metres.
 * Quantised with KHR_mesh_quantization on one grid per assembly, so that neighbouring parts keep
 * sharing their edges exactly, and triangles that the grid would flatten are dropped; the
 * library's own quantiser fits a grid to each mesh or to the whole file and does neither.
 * glTF 2.0 (Khronos). Lab to linear sRGB by culori.
 */
import {
  type Accessor,
  Document,
  type Material,
  type Mesh,
  VertexLayout,
  WebIO,
} from '@gltf-transform/core';
import { KHRMeshQuantization } from '@gltf-transform/extensions';
import { converter } from 'culori';
import type { Vector3 } from '../../src/ground/vector.ts';
import { curveThrough } from './curve.ts';
import { ordered } from './order.ts';
import type { Facet } from './solid.ts';

/** What a part is called, is for, and looks like until a build says otherwise. */
export interface PartLine {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly group: string;
  /** CIE L*a*b*, D65. */
  readonly lab: readonly [L: number, a: number, b: number];
  /** 60° gloss, GU. */
  readonly gloss60: number;
  readonly isMetal?: true;
  readonly isGlass?: true;
  /** Id of a part without which this one is not there. */
  readonly goesWith?: string;
}
export interface Place {
  /** Added to the part id to name the node; '' where there is one place. */
  readonly name: string;
  readonly at: Vector3;
  /** Unit quaternion x, y, z, w. */
  readonly turn: readonly [number, number, number, number];
  /** Drawn as its own mirror image, x → −x before the turn; readers turn the winding back. */
  readonly isMirrored?: true;
  /** One of two halves: what reaches the middle (x = 0) is one thing, and both nodes take its name. */
  readonly isHalf?: true;
  /** Which part stands here instead of another: the right stripe is the left one mirrored. */
  readonly partHere?: (part: string) => string;
}
export interface Assembly {
  readonly facets: readonly Facet[];
  readonly places: readonly Place[];
  /** Half the side of the cube that holds the assembly; a power of two halves cleanly. */
  readonly reach: number;
  /** Parts whose large panels mirror their surroundings and need fine normals. */
  readonly isGlossy?: (part: string) => boolean;
}

export const stillHere: Place = { name: '', at: [0, 0, 0], turn: [0, 0, 0, 1] };

const positionSteps = 32767;
// Every fourth step: 0.26 mm on the whole car, 0.01 mm at 1:24, and a file a tenth smaller.
const positionStride = 4;
// Normals of glossy panels keep a tenth of a degree; elsewhere a byte, half a degree, will do.
const normalSteps = 32767;
const normalStride = 64;
const coarseSteps = 127;

// 60° gloss to microfacet roughness for the default look only, by eye.
const roughnessOf = curveThrough([
  [0, 0.95],
  [5, 0.6],
  [20, 0.42],
  [50, 0.25],
  [85, 0.1],
  [100, 0.03],
]);

const toRgb = converter('lrgb');

/** The GLB of `assemblies`; throws where a facet wears a part that `parts` does not list. */
export async function glbOf(
  name: string,
  assemblies: readonly Assembly[],
  parts: readonly PartLine[],
): Promise<Uint8Array> {
  const document = new Document();
  document.getRoot().getAsset().generator = 'Testspoon models';
  document.createExtension(KHRMeshQuantization).setRequired(true);
  const buffer = document.createBuffer();
  const root = document.createNode(name);
  document.createScene(name).addChild(root);
  const materials = new Map(parts.map((part) => [part.id, materialOf(document, part)]));
  for (const { facets, places, reach, isGlossy = () => false } of assemblies) {
    for (const part of parts) {
      const worn = facets.filter((facet) => facet.part === part.id);
      if (worn.length === 0) continue;
      const corners = cornersOf(document, worn, reach, isGlossy(part.id));
      for (const accessor of corners) accessor.setBuffer(buffer);
      const isAcross = worn.some((facet) => facet.corners.some(([x]) => Math.abs(x) < 1e-6));
      const meshes = new Map<string, Mesh>();
      for (const place of places) {
        const id = place.partHere?.(part.id) ?? part.id;
        const here = parts.find((one) => one.id === id);
        if (here === undefined) throw new RangeError(`The part list lacks “${id}”.`);
        const mesh = meshes.get(id) ?? meshOf(document, id, corners, materials.get(id)!);
        meshes.set(id, mesh);
        const side = place.isMirrored ? -reach : reach;
        const isWhole = place.name === '' || (place.isHalf && isAcross) || id !== part.id;
        const node = document
          .createNode(isWhole ? id : `${id}-${place.name}`)
          .setMesh(mesh)
          .setTranslation([...place.at])
          .setRotation([...place.turn])
          .setScale([side, reach, reach])
          .setExtras(extrasOf(here));
        root.addChild(node);
      }
    }
    const unknown = facets.find((facet) => !materials.has(facet.part));
    if (unknown) throw new RangeError(`The part list lacks “${unknown.part}”.`);
  }
  // One attribute after another, not interleaved: like beside like compresses better.
  return new WebIO()
    .setVertexLayout(VertexLayout.SEPARATE)
    .registerExtensions([KHRMeshQuantization])
    .writeBinary(document);
}

function extrasOf(line: PartLine) {
  const { id, role, group, name, lab, gloss60, isMetal, isGlass, goesWith } = line;
  const isFixed = role === 'given' || role === 'gap';
  return {
    part: id,
    role,
    group,
    name,
    ...(isFixed && !isGlass
      ? { given: { lab: [...lab], gloss60, ...(isMetal ? { isMetal } : {}) } }
      : {}),
    ...(isGlass ? { isGlass: true } : {}),
    ...(goesWith ? { goesWith } : {}),
  };
}

function materialOf(
  document: Document,
  { id, lab, gloss60, isMetal, isGlass }: PartLine,
): Material {
  const { r, g, b } = toRgb({ mode: 'lab65', l: lab[0], a: lab[1], b: lab[2] });
  const tidy = (value: number): number => Math.round(Math.min(1, Math.max(0, value)) * 1e4) / 1e4;
  return document
    .createMaterial(id)
    .setBaseColorFactor([tidy(r), tidy(g), tidy(b), isGlass ? 0.14 : 1])
    .setMetallicFactor(isMetal ? 1 : 0)
    .setRoughnessFactor(tidy(roughnessOf(gloss60)))
    .setAlphaMode(isGlass ? 'BLEND' : 'OPAQUE')
    .setDoubleSided(isGlass === true);
}

type CornerAccessors = readonly [positions: Accessor, normals: Accessor, indices: Accessor];

function cornersOf(
  document: Document,
  facets: readonly Facet[],
  reach: number,
  isGlossy: boolean,
): CornerAccessors {
  const positions: number[] = [];
  const normals: number[] = [];
  const indices: number[] = [];
  const known = new Map<string, number>();
  for (const { corners, normals: turned } of facets) {
    const spots = corners.map((corner) => corner.map((value) => snapped(value / reach)));
    if (isFlat(spots)) continue;
    spots.forEach((spot, k) => {
      const normal = turned[k]!.map((value) =>
        isGlossy
          ? Math.max(-normalSteps, Math.round((value * normalSteps) / normalStride) * normalStride)
          : Math.round(value * coarseSteps),
      ).map((value) => Math.min(normalSteps, value));
      const key = `${spot.join()}|${normal.join()}`;
      const index = known.get(key) ?? positions.length / 3;
      if (!known.has(key)) {
        known.set(key, index);
        positions.push(...spot);
        normals.push(...normal);
      }
      indices.push(index);
    });
  }
  const order = ordered(indices);
  const accessor = (from: readonly number[], isCoarse: boolean): Accessor => {
    const values = order.vertices.flatMap((k) => from.slice(k * 3, k * 3 + 3));
    return document
      .createAccessor()
      .setType('VEC3')
      .setNormalized(true)
      .setArray(isCoarse ? new Int8Array(values) : new Int16Array(values));
  };
  return [
    accessor(positions, false),
    accessor(normals, !isGlossy),
    document.createAccessor().setType('SCALAR').setArray(new Uint16Array(order.indices)),
  ];
}

function meshOf(
  document: Document,
  name: string,
  [positions, normals, indices]: CornerAccessors,
  material: Material,
): Mesh {
  const primitive = document
    .createPrimitive()
    .setMaterial(material)
    .setAttribute('POSITION', positions)
    .setAttribute('NORMAL', normals)
    .setIndices(indices);
  return document.createMesh(name).addPrimitive(primitive);
}

const snapped = (share: number): number => {
  const step = Math.round((share * positionSteps) / positionStride) * positionStride;
  if (Math.abs(step) > positionSteps) throw new RangeError('An assembly outgrows its reach.');
  return step;
};

// On whole steps the area is exact, so a triangle is flat when it is precisely zero.
function isFlat([a, b, c]: readonly (readonly number[])[]): boolean {
  const [u, v] = [a!.map((value, k) => b![k]! - value), a!.map((value, k) => c![k]! - value)];
  return (
    u[1]! * v[2]! === u[2]! * v[1]! &&
    u[2]! * v[0]! === u[0]! * v[2]! &&
    u[0]! * v[1]! === u[1]! * v[0]!
  );
}
