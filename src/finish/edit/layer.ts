/**
 * In which order does the paint go on, does each film get along with the one beneath, and which
 * sorts of paint are opened for it?
 *
 * A finish in; its films out from the plastic up, each with the usual verdict on what lies beneath
 * (`chemistry.ts`), and every chemistry class once. What is not painted has no films.
 */
import { type Layering, layeringOf } from '../chemistry.ts';
import type { Chemistry, Finish } from '../finish.ts';
import { isPaint } from './effect.ts';

export interface Layer {
  /** Place from the plastic up, from 1. */
  readonly place: number;
  readonly name: string;
  readonly chemistry: Chemistry;
  readonly coats: number;
  /** What is usually said of it over the film beneath; undefined on the plastic. */
  readonly over: Layering | undefined;
}

/** Films of a finish from the plastic up. */
export function layersOf(finish: Finish): Layer[] {
  if (!isPaint(finish)) return [];
  const films = [...finish.undercoats, finish, ...(finish.clear ? [finish.clear] : [])];
  return films.map(({ name, chemistry, coats }, at) => {
    const under = films[at - 1];
    return {
      place: at + 1,
      name,
      chemistry,
      coats,
      over: under === undefined ? undefined : layeringOf(chemistry, under.chemistry),
    };
  });
}

/** Chemistry classes that are opened for a finish, in the order they go on. */
export const chemistriesOf = (finish: Finish): Chemistry[] => [
  ...new Set(layersOf(finish).map(({ chemistry }) => chemistry)),
];
