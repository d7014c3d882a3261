/**
 * What the program carries with it: racks, sight tables and the demo, embedded when it is built,
 * so that one file works from any folder. Each still passes the door that outside files pass.
 */
import demo from '../build/demo.json?raw';
import { type SightTable, sightTableSchema } from '../car/table.ts';
import { checkedAgainst, parseJson } from '../finish/parse.ts';
import { parseRack, type Rack } from '../finish/rack/rack.ts';
import { InputError, shown } from '../ground/problem.ts';

type Texts = Readonly<Record<string, string>>;
const rackTexts: Texts = import.meta.glob('../../palettes/*.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});
const sightTexts: Texts = import.meta.glob('../../models/*.sight.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** Text of the build the page opens with. */
export const demoText: string = demo;

const idOf = (path: string): string => path.replace(/^.*\//, '').replace(/(\.sight)?\.json$/, '');

/** Ids of the racks that come along. */
export const rackIds: readonly string[] = Object.keys(rackTexts).map(idOf);
/** Ids of the cars that come along. */
export const carIds: readonly string[] = Object.keys(sightTexts).map(idOf);

/** The rack that comes along under this id, or undefined. */
export function shelfRack(id: string): Rack | undefined {
  const found = Object.entries(rackTexts).find(([path]) => idOf(path) === id);
  return found === undefined ? undefined : parseRack(found[1], id);
}

/** A sight table from its text. Throws `InputError` with every fault. */
export const sightFrom = (text: string, source: string): SightTable =>
  checkedAgainst(sightTableSchema, parseJson(text, source), source);

/** Sight table of a car by id. Throws `InputError` where no such car comes along. */
export function sightOf(car: string, source: string): SightTable {
  const found = Object.entries(sightTexts).find(([path]) => idOf(path) === car);
  if (found !== undefined) return sightFrom(found[1], car);
  throw new InputError(
    [
      {
        place: 'car',
        found: shown(car),
        expected: `one of ${carIds.join(', ')}`,
        mend: 'Name a car that comes along.',
      },
    ],
    source,
  );
}

/** Name of a car that comes along, or undefined. */
export const carNameOf = (car: string): string | undefined =>
  carIds.includes(car) ? sightOf(car, car).name : undefined;
