/**
 * Does the build cover its car? Parts of the car covered twice, parts the car does not have, and
 * those nobody covers yet, by the ids of the car's sight table.
 */
import type { SightTable } from '../car/table.ts';
import { type Problem, shown } from '../ground/problem.ts';
import type { Build, Part } from './build.ts';
import { didYouMean } from './nearest.ts';

/** Every part of the car that a second part of the build covers; unreadable parts are undefined. */
export function coverProblems(parts: readonly (Part | undefined)[]): Problem[] {
  const coveredBy = new Map<string, string>();
  const readable = parts.filter((part) => part !== undefined);
  return readable.flatMap((part) =>
    part.covers.flatMap((carPart, position): Problem[] => {
      const earlier = coveredBy.get(carPart);
      coveredBy.set(carPart, part.name);
      if (earlier === undefined) return [];
      return [
        {
          place: `parts › ${part.id} › covers › ${position + 1}`,
          found: `${shown(carPart)}, which ${shown(earlier)} covers already`,
          expected: 'each part of the car covered once',
          mend: 'Take it out of one of the two.',
        },
      ];
    }),
  );
}

/** What the build says of its car that the car's sight table does not bear out. */
export function checkAgainstCar(build: Build, sight: SightTable): Problem[] {
  if (build.car !== sight.car) {
    return [
      {
        place: 'car',
        found: shown(build.car),
        expected: `the car this sight table measures, ${shown(sight.car)}`,
        mend: 'Name that car, or open the build with the sight table of its own car.',
      },
    ];
  }
  const roleOf = new Map(sight.parts.map(({ id, role }) => [id, role]));
  return build.parts.flatMap((part) =>
    part.covers.flatMap((carPart, position): Problem[] => {
      const role = roleOf.get(carPart);
      if (role !== undefined && role !== 'gap') return [];
      return [
        {
          place: `parts › ${part.id} › covers › ${position + 1}`,
          found: role === 'gap' ? `${shown(carPart)}, a gap between parts` : shown(carPart),
          expected: `a part of ${shown(sight.name)} that wears a finish`,
          mend: `Take it out or correct the name.${
            role === 'gap' ? '' : didYouMean(carPart, roleOf.keys())
          }`,
        },
      ];
    }),
  );
}

/** Ids of the car's feature and ground parts that no part of the build covers. */
export function uncoveredParts(build: Build, sight: SightTable): string[] {
  const covered = new Set(build.parts.flatMap((part) => part.covers));
  return sight.parts
    .filter(({ id, role }) => (role === 'feature' || role === 'ground') && !covered.has(id))
    .map(({ id }) => id);
}
