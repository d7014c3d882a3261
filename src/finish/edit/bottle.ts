/**
 * Which bottle does a film come from? A new one, one that stands in the rack already, or none; a
 * bottle shared by several films and finishes is told the same way in all of them.
 *
 * A finish in, a finish out in which no bottle is told in two ways. Who else uses a bottle is
 * counted over the finishes given.
 */
import { freeId, freeName } from '../../ground/id.ts';
import { type Bottle, bottlesOf, type Finish, withBottles } from '../finish.ts';

/** Which film of a finish: the paint itself, the clear coat, or the undercoat at a position. */
export type FilmPlace = 'paint' | 'clear' | number;

/** The bottle a film comes from. */
export function bottleAt(finish: Finish, place: FilmPlace): Bottle | undefined {
  if (place === 'paint') return finish.bottle;
  return place === 'clear' ? finish.clear?.bottle : finish.undercoats[place]?.bottle;
}

/** Gives a film a bottle, told from then on as it is told here; or takes its bottle away. */
export function setBottle(finish: Finish, place: FilmPlace, bottle: Bottle | undefined): Finish {
  const put = <Film extends { bottle?: Bottle | undefined }>(film: Film): Film => {
    const { bottle: _before, ...rest } = film;
    return (bottle === undefined ? rest : { ...rest, bottle }) as Film;
  };
  const next: Finish =
    place === 'paint'
      ? put(finish)
      : place === 'clear'
        ? { ...finish, ...(finish.clear && { clear: put(finish.clear) }) }
        : {
            ...finish,
            undercoats: finish.undercoats.map((film, at) => (at === place ? put(film) : film)),
          };
  return bottle === undefined ? next : withBottles(next, new Map([[bottle.id, bottle]]));
}

/** A bottle of its own for a film named so, on hand. */
export const freshBottle = (name: string, shelf: readonly Bottle[]): Bottle => ({
  id: freeId(
    name,
    shelf.map(({ id }) => id),
    'bottle',
  ),
  name: freeName(
    name,
    shelf.map((bottle) => bottle.name),
  ),
  onHand: true,
  leadDays: 0,
});

/** Every bottle of these finishes, each once, by name. */
export const shelfOf = (finishes: readonly Finish[]): Bottle[] =>
  [...new Map(finishes.flatMap(bottlesOf).map((bottle) => [bottle.id, bottle])).values()].sort(
    (one, other) => (one.name < other.name ? -1 : 1),
  );

/** How many of the finishes other than this one use the bottle. */
export const othersUsing = (bottle: string, own: Finish, finishes: readonly Finish[]): number =>
  finishes.filter(
    (finish) => finish.id !== own.id && bottlesOf(finish).some(({ id }) => id === bottle),
  ).length;
