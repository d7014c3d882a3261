/** Draws every view of a car from the bytes of its GLB, as SVG text by view id. */
import { readGlb } from '../src/car/glb.ts';
import { traceView, views } from '../src/car/outline.ts';

/** The car's pictures: view id and SVG text. */
export async function picturesOfGlb(
  bytes: Uint8Array,
): Promise<readonly { id: string; svg: string }[]> {
  const mesh = await readGlb(bytes);
  return views.map((view) => ({ id: view.id, svg: traceView(mesh, view) }));
}
