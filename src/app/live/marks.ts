/** Which parts of the mesh are lit or marked now, as the stage wants them: indices. */
import { useMemo } from 'react';
import { assignmentOf, type Build } from '../../build/build.ts';
import type { Mesh } from '../../car/mesh.ts';
import type { Marks } from '../../stage/view/ring.ts';
import { usePointing } from '../pointing.ts';
import { useViewing } from './viewing.ts';

/** Build part ids whose finish differs between alternatives. */
export function differingParts(build: Build): readonly string[] {
  const assignments = build.alternatives.map((alternative) => assignmentOf(build, alternative));
  return build.parts
    .map(({ id }) => id)
    .filter((id) => new Set(assignments.map((assignment) => assignment.get(id))).size > 1);
}

/** What is pointed out on the cars. */
export function useMarks(build: Build, mesh: Mesh): Marks {
  const lit = usePointing(({ parts }) => parts);
  const isGentle = usePointing((pointing) => pointing.isGentle);
  const isMarking = useViewing((viewing) => viewing.isMarking);
  return useMemo(() => {
    const at = new Map(mesh.parts.map(({ id }, index) => [id, index]));
    const indices = (parts: readonly string[]): ReadonlySet<number> =>
      new Set(
        build.parts
          .filter(({ id }) => parts.includes(id))
          .flatMap(({ covers }) => covers.flatMap((id) => at.get(id) ?? [])),
      );
    return {
      lit: indices(lit),
      marked: isMarking ? indices(differingParts(build)) : new Set<number>(),
      isGentle,
    };
  }, [build, mesh, lit, isGentle, isMarking]);
}
