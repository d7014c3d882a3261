/**
 * Where on the car is one piece of a part? A part may lie in several places: four calipers, a badge
 * on nose and tail, a mirror on either side. A lump is what lies together: triangles that share
 * corners, and others of the same node whose boxes come within 150 mm of theirs (our judgement).
 *
 * In: a mesh and a part, as an index. Out: its lumps, full-size mm, worked out once for each car.
 */
import {
  type Box,
  boundsOf,
  cornerOf,
  facetOf,
  type Mesh,
  middleOf,
  partOf,
} from '../../car/mesh.ts';
import {
  add,
  dot,
  lengthOf,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../ground/vector.ts';
import { cellOf } from './fit.ts';

export interface Lump {
  readonly part: number;
  readonly node: number;
  readonly triangles: readonly number[];
  readonly middle: Vector3;
  readonly areaMm2: number;
  /** The way it faces as a whole, unit vector; undefined for what is round or faces many ways. */
  readonly outward: Vector3 | undefined;
}

const togetherMm = 150;
/** A lump faces one way when its areas, as vectors, add up to this share of their plain sum. */
const oneWay = 0.5;
/** A plate has this share of its area on its two sides; it faces away from the car's middle. */
const plate = 0.75;

const known = new WeakMap<Mesh, Map<number, readonly Lump[]>>();

/** Every lump of a part. */
export function lumpsOf(mesh: Mesh, part: number): readonly Lump[] {
  const ofMesh = known.get(mesh) ?? new Map<number, readonly Lump[]>();
  known.set(mesh, ofMesh);
  const met = ofMesh.get(part);
  if (met !== undefined) return met;
  const byNode = new Map<number, number[]>();
  for (let triangle = 0; triangle < mesh.nodeOf.length; triangle++) {
    if (partOf(mesh, triangle) !== part) continue;
    const node = mesh.nodeOf[triangle]!;
    const some = byNode.get(node);
    if (some === undefined) byNode.set(node, [triangle]);
    else some.push(triangle);
  }
  const wholeCar = boundsOf(mesh)!;
  const lumps = [...byNode].flatMap(([node, triangles]) =>
    gathered(mesh, joined(mesh, triangles)).map((one) => lumpFrom(mesh, part, node, one, wholeCar)),
  );
  ofMesh.set(part, lumps);
  return lumps;
}

/** Triangles that hang together by their corners. */
function joined(mesh: Mesh, triangles: readonly number[]): number[][] {
  const leader = new Map<number, number>();
  const find = (cell: number): number => {
    let at = cell;
    for (let next = leader.get(at); next !== undefined; next = leader.get(at)) at = next;
    // Later walks from here go straight to the end.
    if (at !== cell) leader.set(cell, at);
    return at;
  };
  const first = (triangle: number, corner: number): number =>
    cellOf(...cornerOf(mesh, triangle, corner));
  for (const triangle of triangles) {
    const root = find(first(triangle, 0));
    for (const corner of [1, 2]) {
      const other = find(first(triangle, corner));
      if (other !== root) leader.set(other, root);
    }
  }
  const pieces = new Map<number, number[]>();
  for (const triangle of triangles) {
    const root = find(first(triangle, 0));
    const piece = pieces.get(root);
    if (piece === undefined) pieces.set(root, [triangle]);
    else piece.push(triangle);
  }
  return [...pieces.values()];
}

const areNear = (a: Box, b: Box): boolean =>
  [0, 1, 2].every(
    (axis) =>
      a.low[axis]! - b.high[axis]! < togetherMm && b.low[axis]! - a.high[axis]! < togetherMm,
  );

const boxOf = (mesh: Mesh, triangles: readonly number[]): Box => {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const triangle of triangles) {
    for (const corner of [0, 1, 2]) {
      cornerOf(mesh, triangle, corner).forEach((value, axis) => {
        low[axis] = Math.min(low[axis]!, value);
        high[axis] = Math.max(high[axis]!, value);
      });
    }
  }
  return { low, high };
};

/** Pieces that lie close together, put together. */
function gathered(mesh: Mesh, pieces: readonly number[][]): number[][] {
  let lumps: { box: Box; triangles: number[] }[] = [];
  for (const piece of pieces) {
    let grown = { box: boxOf(mesh, piece), triangles: piece };
    // A lump that grew may reach others it did not reach before.
    for (let near = lumps.filter(({ box }) => areNear(box, grown.box)); near.length > 0; ) {
      lumps = lumps.filter((one) => !near.includes(one));
      grown = {
        box: near.reduce((all, { box }) => joinedBox(all, box), grown.box),
        triangles: [...near.flatMap(({ triangles }) => triangles), ...grown.triangles],
      };
      near = lumps.filter(({ box }) => areNear(box, grown.box));
    }
    lumps.push(grown);
  }
  return lumps.map(({ triangles }) => triangles);
}

const joinedBox = (a: Box, b: Box): Box => {
  const each = (choose: (p: number, q: number) => number, p: Vector3, q: Vector3): Vector3 => [
    choose(p[0], q[0]),
    choose(p[1], q[1]),
    choose(p[2], q[2]),
  ];
  return { low: each(Math.min, a.low, b.low), high: each(Math.max, a.high, b.high) };
};

function lumpFrom(
  mesh: Mesh,
  part: number,
  node: number,
  triangles: readonly number[],
  wholeCar: Box,
): Lump {
  const middle = middleOf(boxOf(mesh, triangles));
  const normals = triangles.map((triangle) => facetOf(mesh, triangle).normal);
  const areaMm2 = normals.reduce((sum, normal) => sum + lengthOf(normal), 0);
  const carMiddle = middleOf(wholeCar);
  const lump = { part, node, triangles, middle, areaMm2 };
  const { group } = mesh.parts[part]!;
  if (group === 'wheels') return { ...lump, outward: [middle[0] >= carMiddle[0] ? 1 : -1, 0, 0] };
  // Into the cabin one looks from above, whichever way a thing in it faces.
  if (group === 'cabin') return { ...lump, outward: undefined };
  const sum = normals.reduce(add, [0, 0, 0]);
  if (lengthOf(sum) >= oneWay * areaMm2) return { ...lump, outward: normalize(sum) };
  const { axis, share } = mainAxisOf(normals);
  if (share < plate) return { ...lump, outward: undefined };
  const isOutward = dot(axis, subtract(middle, carMiddle)) >= 0;
  return { ...lump, outward: isOutward ? axis : scale(axis, -1) };
}

/** Rounds of power iteration; a plate's axis stands out and is found in a few. */
const rounds = 20;

/** The line along which most area faces, either way, and the share (0–1) of area that does. */
function mainAxisOf(normals: readonly Vector3[]): { axis: Vector3; share: number } {
  const turned = (axis: Vector3): Vector3 =>
    normals.reduce<Vector3>(
      (sum, normal) => {
        const area = lengthOf(normal);
        return area === 0 ? sum : add(sum, scale(normal, dot(normal, axis) / area));
      },
      [0, 0, 0],
    );
  const whole = normals.reduce((sum, normal) => sum + lengthOf(normal), 0);
  // Sets out from the largest triangle: a start square to the axis would never find it.
  const largest = normals.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a), normals[0]!);
  let axis = normalize(largest);
  for (let round = 0; round < rounds; round++) axis = normalize(turned(axis));
  return { axis, share: whole === 0 ? 0 : lengthOf(turned(axis)) / whole };
}
