/**
 * What can be done to the films of a paint: put an undercoat in, take it out, move it up or down,
 * change it; put a clear coat on, or take it off?
 *
 * A finish in, a finish out; undercoats run from the plastic up, six at most. Finishes that are not
 * painted have no films and stay as they are. What a film says is checked at the door (`admit`).
 */
import type { Finish, Undercoat } from '../finish.ts';
import { isDyed, isPaint } from './effect.ts';

export const mostUndercoats = 6;
export type ClearCoat = NonNullable<Finish['clear']>;

/** A usual undercoat to begin with: silver under a dye, grey primer under anything else. */
function usualUndercoat(finish: Finish): Undercoat {
  const chemistry = finish.chemistry;
  const isOverPrimer = finish.undercoats.length > 0;
  if (isOverPrimer && isDyed(finish)) {
    const colour = { lab: [78, 0, -1] as [number, number, number], light: 'D65' as const };
    return { name: 'Silver base', role: 'base', effect: 'metallic', colour, chemistry, coats: 2 };
  }
  const colour = { lab: [62, 0, -1] as [number, number, number], light: 'D65' as const };
  return isOverPrimer
    ? { name: 'Base', role: 'base', effect: 'solid', colour, chemistry, coats: 2 }
    : { name: 'Grey primer', role: 'primer', effect: 'solid', colour, chemistry, coats: 1 };
}

/** Lays a film over the undercoats, right beneath the paint itself; a given one, or a usual one. */
export const addUndercoat = (finish: Finish, film?: Undercoat): Finish =>
  !isPaint(finish) || finish.undercoats.length >= mostUndercoats
    ? finish
    : { ...finish, undercoats: [...finish.undercoats, film ?? usualUndercoat(finish)] };

/** Takes the film at `position` (0 next to the plastic) out. */
export const removeUndercoat = (finish: Finish, position: number): Finish => ({
  ...finish,
  undercoats: finish.undercoats.filter((_, at) => at !== position),
});

/** Moves the film at `position` up (1) or down (−1) by one; at an end it stays. */
export function moveUndercoat(finish: Finish, position: number, by: 1 | -1): Finish {
  const [one, other] = [finish.undercoats[position], finish.undercoats[position + by]];
  if (one === undefined || other === undefined) return finish;
  return {
    ...finish,
    undercoats: finish.undercoats.with(position, other).with(position + by, one),
  };
}

/** Changes what the film at `position` says. */
export const changeUndercoat = (
  finish: Finish,
  position: number,
  changes: Partial<Undercoat>,
): Finish => ({
  ...finish,
  undercoats: finish.undercoats.map((film, at) =>
    at === position ? { ...film, ...changes } : film,
  ),
});

/** Puts a clear coat on, or takes it off; a new one is of the paint's own chemistry. */
export function setClear(finish: Finish, isOn: boolean): Finish {
  if (!isOn) {
    const { clear: _off, ...rest } = finish;
    return rest;
  }
  if (!isPaint(finish) || finish.clear !== undefined) return finish;
  const clear: ClearCoat = { name: 'Clear', chemistry: finish.chemistry, coats: 2 };
  return { ...finish, clear };
}

/** Changes what the clear coat says; nothing where there is none. */
export const changeClear = (finish: Finish, changes: Partial<ClearCoat>): Finish =>
  finish.clear === undefined ? finish : { ...finish, clear: { ...finish.clear, ...changes } };

/** Gives the clear coat a tint, or takes it away. */
export function setTint(finish: Finish, tint: ClearCoat['tint']): Finish {
  if (finish.clear === undefined) return finish;
  const { tint: _before, ...plain } = finish.clear;
  return { ...finish, clear: tint === undefined ? plain : { ...plain, tint } };
}
