/**
 * Which cars can be opened, and what is fetched for each: its sight table and its traced views.
 * Everything is a file beside the page, from our own origin; a view that cannot be fetched is left
 * out rather than stopping the work.
 */
import type { SightTable } from '../../car/table.ts';
import { InputError, shown } from '../../ground/problem.ts';

/** One traced picture of a car: SVG text whose paths carry `data-part`. */
export interface View {
  readonly id: string;
  readonly name: string;
  readonly svg: string;
}
/** What the page needs of a car. */
export interface Car {
  readonly id: string;
  readonly sight: SightTable;
  readonly views: readonly View[];
  /** Address of its mesh. */
  readonly glb: string | undefined;
}

const tables = import.meta.glob<string>('../../../models/*.sight.json', {
  query: '?url',
  import: 'default',
  eager: true,
});
const meshes = import.meta.glob<string>('../../../models/*.glb', {
  query: '?url',
  import: 'default',
  eager: true,
});
const pictures = import.meta.glob<string>('../../../models/*.svg', {
  query: '?url',
  import: 'default',
  eager: true,
});

const viewNames: Readonly<Record<string, string>> = {
  front: 'Front',
  side: 'Side',
  rear: 'Rear',
  cabin: 'Cabin',
  wheel: 'Wheel',
  nose: 'Nose',
  tail: 'Tail',
  above: 'Above',
};
const viewOrder = Object.keys(viewNames);

/** The text of a file beside the page; throws with its name where it cannot be fetched. */
export async function textOf(url: string): Promise<string> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url} could not be fetched (${answer.status})`);
  return answer.text();
}

interface Wanting {
  /** Where the name of the car was found, for messages. */
  readonly source?: string | undefined;
  /** Ids of the views to fetch, chosen by the sight table; all where absent. */
  readonly views?: (sight: SightTable) => readonly string[];
}

/** The car with this id. Throws `InputError` where there is none. */
export async function carFrom(id: string, { source, views }: Wanting = {}): Promise<Car> {
  const known = Object.keys(tables).map((path) => path.replace(/^.*\/|\.sight\.json$/g, ''));
  const table = tables[`../../../models/${id}.sight.json`];
  if (table === undefined) {
    const expected = `a car this page has: ${known.join(', ')}`;
    const mend = 'Correct the name of the car.';
    throw new InputError([{ place: 'car', found: shown(id), expected, mend }], source);
  }
  const measured = textOf(table).then((text) => JSON.parse(text) as SightTable);
  const [sight, fetched] = await Promise.all([
    measured,
    views === undefined
      ? viewsOf(id, () => true)
      : measured.then((known) => viewsOf(id, (view) => views(known).includes(view))),
  ]);
  return { id, sight, views: fetched, glb: meshes[`../../../models/${id}.glb`] };
}

async function viewsOf(car: string, isWanted: (view: string) => boolean): Promise<View[]> {
  const ours = Object.entries(pictures).flatMap(([path, url]) => {
    const [owner, id] = path.replace(/^.*\//, '').split('.');
    return owner === car && id !== undefined && isWanted(id) ? [{ id, url }] : [];
  });
  const fetched = await Promise.all(
    ours.map(async ({ id, url }) => {
      const svg = await textOf(url).catch(() => undefined);
      return svg === undefined ? [] : [{ id, name: viewNames[id] ?? id, svg }];
    }),
  );
  const rank = ({ id }: View): number => (viewOrder.indexOf(id) + 100) % 100;
  return fetched.flat().sort((one, other) => rank(one) - rank(other));
}
