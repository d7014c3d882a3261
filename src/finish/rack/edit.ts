/**
 * What can a builder do to a rack? Put a finish in, change one, take one out, give the rack another
 * name. A rack in, a rack out that `parseRack` accepts, save that a finish is taken as it comes:
 * check it with `finishFaults` first. A bottle shared by several finishes is told alike in all: what is
 * on hand stays on hand, unless the finish put in was there and says otherwise of it than before.
 */
import { type Bottle, type Finish, withBottles } from '../finish.ts';
import { mostEntries } from '../parse.ts';
import { type Retold, shelfFrom, withRetold, withShelved } from '../shelf.ts';
import { type Rack, rackVersion } from './rack.ts';

/** A rack without finishes. */
export const emptyRack = (id: string, name: string): Rack => ({
  format: 'testspoon-rack',
  version: rackVersion,
  id,
  name,
  finishes: [],
});

/**
 * Puts a finish into the rack: in the place of the one with id `replacing`, of one with its own id,
 * or at the end. A full rack (20,000) stays as it is.
 */
export function putFinish(rack: Rack, finish: Finish, replacing: string = finish.id): Rack {
  const others = rack.finishes.filter(({ id }) => id !== finish.id || id === replacing);
  const at = others.findIndex(({ id }) => id === replacing);
  if (at < 0 && others.length >= mostEntries) return rack;
  const finishes = at < 0 ? [...others, finish] : others.with(at, finish);
  const before = rack.finishes.find(({ id }) => id === finish.id);
  return { ...rack, finishes: withShelved(finishes, shelfFrom(rack.finishes), finish, before) };
}

/** The rack after somebody said otherwise of bottles; the same rack where none is of it. */
export function withBottlesRetoldOn(rack: Rack, retold: Retold): Rack {
  const finishes = rack.finishes.map((one) => withRetold(one, retold));
  return finishes.every((one, at) => one === rack.finishes[at]) ? rack : { ...rack, finishes };
}

/** Every finish of the rack with these bottles told like this. */
export const withBottlesOn = (rack: Rack, told: ReadonlyMap<string, Bottle>): Rack => ({
  ...rack,
  finishes: rack.finishes.map((finish) => withBottles(finish, told)),
});

/** Takes a finish out. */
export const removeFinish = (rack: Rack, id: string): Rack => ({
  ...rack,
  finishes: rack.finishes.filter((finish) => finish.id !== id),
});
