/**
 * Which finishes does a car wear, and where? Largest first, by the mean area that all looks at the
 * whole car show of the parts in it, weighted as the looks are; full-size mm² from the sight table.
 * Parts that no such look shows are named all the same, last.
 */
import {
  type Alternative,
  assignmentOf,
  type Build,
  type EmbeddedFinish,
  finishesByRef,
  type Part,
} from '../../../build/build.ts';
import type { SightTable } from '../../../car/table.ts';

export interface Wear {
  readonly finish: EmbeddedFinish;
  readonly parts: readonly Part[];
  /** What is seen of them, full-size mm². */
  readonly mm2: number;
}

/** Mean area of every car part over the looks at the whole car, by id. */
const areas = new WeakMap<SightTable, ReadonlyMap<string, number>>();

function areasOf(sight: SightTable): ReadonlyMap<string, number> {
  const known = areas.get(sight);
  if (known !== undefined) return known;
  const weights = sight.looks.map(({ isWhole, weight }) => (isWhole ? weight : 0));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const area = new Map(
    sight.parts.map(({ id, areaMm2 }) => {
      const looks = Object.values(areaMm2).flatMap((perLook) =>
        perLook.map((mm2, look) => mm2 * (weights[look] ?? 0)),
      );
      return [id, looks.reduce((sum, mm2) => sum + mm2, 0) / whole] as const;
    }),
  );
  areas.set(sight, area);
  return area;
}

/** Finishes of an alternative with the parts that wear them. */
export function wearOf(
  build: Pick<Build, 'parts' | 'finishes'>,
  alternative: Alternative,
  sight: SightTable,
): Wear[] {
  const finishes = finishesByRef(build);
  const assignment = assignmentOf(build, alternative);
  const area = areasOf(sight);
  const shown = (part: Part): number =>
    part.covers.reduce((sum, id) => sum + (area.get(id) ?? 0), 0);
  const byRef = new Map<string, Part[]>();
  for (const part of build.parts) {
    const ref = assignment.get(part.id) ?? '';
    byRef.set(ref, [...(byRef.get(ref) ?? []), part]);
  }
  return [...byRef]
    .flatMap(([ref, parts]) => {
      const finish = finishes.get(ref);
      const mm2 = parts.reduce((sum, part) => sum + shown(part), 0);
      return finish === undefined ? [] : [{ finish, parts, mm2 }];
    })
    .sort((one, other) => other.mm2 - one.mm2);
}
