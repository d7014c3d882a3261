/**
 * What does every part of the car wear on one alternative? From a build, an alternative, the car's
 * mesh and the look of each finish to a surface for each part, in the mesh's order. Parts that
 * nobody chooses wear what the car gives them; gaps are shadow; trim that the build leaves out is
 * bare dark plastic.
 */
import { type Alternative, assignmentOf, type Build, finishesByRef } from '../../build/build.ts';
import type { Mesh, MeshPart } from '../../car/mesh.ts';
import type { Appearance } from '../../finish/appearance.ts';
import type { Finish } from '../../finish/finish.ts';
import { type Given, type Surface, surfaceOf, surfaceOfGiven } from './surface.ts';

const gap: Given = { lab: [5, 0, 0], gloss60: 2 };
const bareTrim: Given = { lab: [29, 0, 0], gloss60: 8 };

/** Surfaces of all parts of the mesh; `lookOf` gives a finish's appearance under the light. */
export function wornBy(
  build: Build,
  alternative: Alternative,
  mesh: Mesh,
  lookOf: (finish: Finish) => Appearance,
): readonly Surface[] {
  const finishes = finishesByRef(build);
  const assignment = assignmentOf(build, alternative);
  const chosen = new Map<string, Finish>();
  for (const part of build.parts) {
    const finish = finishes.get(assignment.get(part.id) ?? '');
    if (finish === undefined) continue;
    for (const id of part.covers) chosen.set(id, finish);
  }
  return mesh.parts.map((part) => {
    const finish = chosen.get(part.id);
    return finish === undefined ? bareOf(part) : surfaceOf(finish, lookOf(finish), build.scale);
  });
}

const bareOf = ({ role, given, isGlass }: MeshPart): Surface =>
  surfaceOfGiven(given ?? (role === 'gap' ? gap : bareTrim), isGlass);
