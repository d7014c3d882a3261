/**
 * How much of a piece of a part is in sight from a pose? Counted in a little picture of the whole
 * car against one of the piece alone, as seen from outside the car in the pose's direction, so that
 * an eye within the bodywork sees nothing; glass does not hide. Some 5 ms for the roadster.
 *
 * In: a mesh, a lump, a pose, the aspect of the view. Out: a share, 0–1; 0 outside the view.
 */
import type { Mesh } from '../../car/mesh.ts';
import { rasterise } from '../../car/raster.ts';
import { outsideMmOf } from './frame.ts';
import type { Lump } from './lump.ts';
import { halfTangentOf, type Pose, viewFrame } from './pose.ts';

/** Side of the little picture that tells what is seen, pixels. */
const lookPx = 56;

/** Share of a lump's own picture, alone, that is in sight on the whole car. */
export function seenShare(mesh: Mesh, lump: Lump, pose: Pose, aspect: number): number {
  const wide = Math.max(8, Math.round(lookPx * Math.sqrt(aspect)));
  const tall = Math.max(8, Math.round(lookPx / Math.sqrt(aspect)));
  const distanceMm = Math.max(pose.distanceMm, outsideMmOf(mesh));
  const narrowed = pose.distanceMm / distanceMm;
  const halfTangent = (halfTangentOf(pose) * narrowed * wide) / tall;
  const camera = { ...viewFrame({ ...pose, distanceMm }), halfTangent };
  const isOfLump = new Set(lump.triangles);
  const count = (of: Mesh, isSeen: (triangle: number) => boolean): number =>
    rasterise(of, camera, wide, tall, isDrawn).triangle.reduce(
      (sum, triangle) => sum + (isSeen(triangle) ? 1 : 0),
      0,
    );
  const isDrawn = (node: number): boolean =>
    node === lump.node || !mesh.parts[mesh.nodes[node]!.part]!.isGlass;
  const alone = count(onlyOf(mesh, lump), (triangle) => triangle >= 0);
  return alone === 0 ? 0 : count(mesh, (triangle) => isOfLump.has(triangle)) / alone;
}

/** A lump as a mesh of its own. */
function onlyOf(mesh: Mesh, { triangles }: Lump): Mesh {
  const nine = (from: Float32Array): Float32Array =>
    Float32Array.from(triangles.flatMap((one) => [...from.subarray(one * 9, one * 9 + 9)]));
  return {
    ...mesh,
    positions: nine(mesh.positions),
    normals: nine(mesh.normals),
    nodeOf: Uint16Array.from(triangles, (one) => mesh.nodeOf[one]!),
  };
}
