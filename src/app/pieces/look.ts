/**
 * How a finish looks on screen under the chosen light, computed once per finish and light. Picture,
 * spoon and score all rest on `appearanceOf`, so what is shown is what is scored.
 */
import type { LightId } from '../../colour/illuminant.ts';
import { type Appearance, appearanceOf } from '../../finish/appearance.ts';
import type { Finish } from '../../finish/finish.ts';

const known = new WeakMap<Finish, Map<LightId, Appearance>>();

/** Appearance of a finish under a light; the same object for the same finish. */
export function lookOf(finish: Finish, light: LightId): Appearance {
  const perLight = known.get(finish) ?? new Map<LightId, Appearance>();
  known.set(finish, perLight);
  const look = perLight.get(light) ?? appearanceOf(finish, light);
  perLight.set(light, look);
  return look;
}

/** What a finish is, in the words beside its name: `metallic, gloss`. */
export const kindOf = (finish: Finish, look: Appearance): string => {
  const effect = finish.effect === 'solid' ? '' : `${finish.effect.replace('-', ' ')}, `;
  return `${effect}${look.sheen.name}`;
};
