/** The roadster in the demo's schemes, ready to be put on the test studio's stage. */
import { readFileSync } from 'node:fs';
import { parseBuild } from '../../../src/build/file.ts';
import { readGlb } from '../../../src/car/glb.ts';
import type { Mesh } from '../../../src/car/mesh.ts';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import type { StagedCar } from '../../../src/stage/Scene.tsx';
import type { Surface } from '../../../src/stage/surface/surface.ts';
import { wornBy } from '../../../src/stage/surface/worn.ts';

const at = (path: string): URL => new URL(`../../../${path}`, import.meta.url);

export const readRoadster = (): Promise<Mesh> =>
  readGlb(new Uint8Array(readFileSync(at('models/roadster.glb'))));

/** The demo's first `count` alternatives; begins again where there are fewer. */
export function demoCars(mesh: Mesh, count: number): StagedCar[] {
  const build = parseBuild(readFileSync(at('src/build/demo.json'), 'utf8'), 'demo.json');
  return Array.from({ length: count }, (_, k) => {
    const alternative = build.alternatives[k % build.alternatives.length]!;
    const worn = wornBy(build, alternative, mesh, (finish) => appearanceOf(finish, 'D65'));
    return { id: `car-${k}`, worn };
  });
}

/** The part of this name, as an index. */
export function partNamed(mesh: Mesh, id: string): number {
  const part = mesh.parts.findIndex((one) => one.id === id);
  if (part < 0) throw new Error(`the roadster has no part ${id}`);
  return part;
}

/** The same car with one part in another surface. */
export const wearing = (car: StagedCar, part: number, surface: Surface): StagedCar => ({
  ...car,
  worn: car.worn.map((own, k) => (k === part ? surface : own)),
});
