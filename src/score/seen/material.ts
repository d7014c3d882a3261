/**
 * Which material goes on which part? Ribbon, flock and leather are stuck down in a cabin; nobody
 * lays them over bodywork or wheels. Lens material and rubber have their own places. Paint, foil
 * and metal go anywhere, though foil over a whole body takes a very steady hand.
 *
 * In: a kind of surface and the group of the part. Out: whether it has no business there.
 * Common practice, no source.
 */
import type { Group } from '../../car/table.ts';
import type { Effect } from '../../finish/finish.ts';

/** Groups of parts each material is used on; kinds not named here go anywhere. */
const places: { readonly [Kind in Effect]?: readonly Group[] } = {
  ribbon: ['cabin'],
  flock: ['cabin'],
  leather: ['cabin', 'trim'],
  rubber: ['cabin', 'wheels', 'trim'],
  lens: ['trim'],
};

/** Whether nobody would put this kind of surface on a part of this group. */
export const isOutOfPlace = (effect: Effect, group: Group): boolean =>
  places[effect]?.includes(group) === false;
