/**
 * From where are the cars seen? One view for all alternatives, since a view is the heaviest thing
 * a phone has to fetch: the one that shows most of what differs, parts asked about counted twice.
 * The whole car is seen unless a close view shows far more.
 *
 * In: a round and its car's sight table. Out: the id of a traced view. Limits: the views are told
 * by the nearest look of the table, our judgement.
 */
import { absentCarParts } from '../../build/fitted.ts';
import type { SightTable } from '../../car/table.ts';
import { differingParts, type Round } from '../../opinion/round.ts';

/**
 * The look nearest to each view, and what counts of what it shows: a close view of half the car has
 * to show twice as much. Of views that show as much, the first is taken.
 */
const lookOfView = [
  ['front', 'front-left', 1],
  ['rear', 'rear-left', 1],
  ['side', 'left', 1],
  ['cabin', 'cabin-rear', 0.5],
  ['wheel', 'wheel-front', 0.5],
] as const;

/** A part is well seen at this share of the largest area that any of these looks shows of it. */
const wellSeen = 0.4;

/** Id of the view that shows best what is asked. */
export function viewFor({ build, asks }: Round, sight: SightTable): string {
  const gone = absentCarParts(build, sight.parts);
  const looks = lookOfView.map(([, id]) => sight.looks.findIndex((look) => look.id === id));
  const shows = lookOfView.map(() => 0);
  const differing = new Set(differingParts(build));
  for (const part of build.parts.filter(({ id }) => differing.has(id))) {
    const covered = sight.parts.filter(({ id }) => part.covers.includes(id) && !gone.has(id));
    const areas = looks.map((look) =>
      covered.reduce((sum, one) => sum + areaIn(one.areaMm2, look), 0),
    );
    const well = Math.max(...areas) * wellSeen;
    if (well <= 0) continue;
    const counts = asks.includes(part.id) ? 2 : 1;
    areas.forEach((area, at) => {
      shows[at]! += counts * lookOfView[at]![2] * Math.min(1, area / well);
    });
  }
  return lookOfView[shows.indexOf(Math.max(...shows))]![0];
}

const areaIn = (zones: Readonly<Record<string, readonly number[]>>, look: number): number =>
  Object.values(zones).reduce((sum, areas) => sum + (areas[look] ?? 0), 0);
