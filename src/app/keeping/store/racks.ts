/**
 * Racks in the browser's store: read, and changed within one transaction, so that what two tabs
 * change at once comes together rack by rack and finish by finish. What cannot be read stays as it
 * is, and gives way to a new rack of its name without being lost; a change that would make a rack
 * such is put beside it and reported, and the rack stays kept as it was.
 */
import type { Finish } from '../../../finish/finish.ts';
import { parseRack, type Rack } from '../../../finish/rack/rack.ts';
import { InputError, type Problem } from '../../../ground/problem.ts';
import { newKey } from '../../store.ts';
import { type Changes, changesBetween, inOrder, withChanges } from '../merge.ts';
import { textOfDocument } from './card.ts';
import { database, type RackStamp } from './database.ts';

/** Racks as the store has them. */
export interface Shelf {
  readonly racks: readonly Rack[];
  /** Revision of each; undefined while none was ever changed, so that nothing is kept yet. */
  readonly revisions: ReadonlyMap<string, string> | undefined;
}

/** A kept value as a rack, or what is wrong with it. */
function readRack(value: unknown, id: string): Rack | readonly Problem[] {
  try {
    return parseRack(JSON.stringify(value), id);
  } catch (error) {
    return error instanceof InputError ? error.problems : [];
  }
}

/** A kept value as a rack; undefined where it cannot be read. */
function rackIn(value: unknown, id: string): Rack | undefined {
  const read = readRack(value, id);
  return 'id' in read ? read : undefined;
}

/** A rack that cannot be read, or is not kept because it could not be. */
export interface Unreadable {
  readonly name: string;
  /** What is wrong; nothing where that is not known. */
  readonly problem: Problem | undefined;
}

/** Racks that could not be read if kept, by id; each is read whole before it is kept again. */
const refused = new Map<string, Unreadable>();

/**
 * What would be wrong with the rack if it were kept like this: its own fields and the finishes that
 * have changed, so that a large rack does not hold up every change.
 */
function faultsIn(rack: Rack, put: readonly Finish[] | undefined): readonly Problem[] {
  const isWhole = refused.has(rack.id);
  const read = readRack(isWhole ? rack : { ...rack, finishes: put ?? [] }, rack.id);
  return 'id' in read ? [] : read;
}

const nameOf = (value: unknown, id: string): string => {
  const { name } = (value ?? {}) as { name?: unknown };
  return typeof name === 'string' && name !== '' ? name : id;
};

/** The kept racks, and those that cannot be read; undefined where none were kept. */
export async function keptRacks(): Promise<
  { readonly shelf: Shelf; readonly unreadable: readonly Unreadable[] } | undefined
> {
  const read = (await database()).transaction(['racks', 'notes']);
  const [stamps, records] = await Promise.all([
    read.objectStore('notes').get('racks'),
    read.objectStore('racks').getAll(),
  ]);
  await read.done;
  if (stamps === undefined) return undefined;
  const kept = new Map(records.map(({ key, rack }) => [key, rack]));
  const racks: Rack[] = [];
  const unreadable: Unreadable[] = [];
  for (const { id } of stamps) {
    const read = readRack(kept.get(id), id);
    if ('id' in read) racks.push(read);
    else unreadable.push({ name: nameOf(kept.get(id), id), problem: read[0] });
  }
  return { shelf: { racks, revisions: revisionsIn(stamps, racks) }, unreadable };
}

/** Every kept rack that cannot be read, also one that gave way, as text just as it is kept. */
export async function unreadableRacks(): Promise<
  readonly { readonly name: string; readonly text: string }[]
> {
  const records = await (await database()).getAll('racks');
  return records
    .filter(({ key, rack }) => rackIn(rack, key) === undefined)
    .map(({ key, rack }) => ({ name: nameOf(rack, key), text: textOfDocument(rack) }));
}

const revisionsIn = (
  stamps: readonly RackStamp[],
  racks: readonly Rack[],
): ReadonlyMap<string, string> => {
  const readable = new Set(racks.map(({ id }) => id));
  return new Map(
    stamps.flatMap(({ id, revision }) => (readable.has(id) ? [[id, revision] as const] : [])),
  );
};

/**
 * Keeps changes made over `before`, which led to `after`. The answer is what the store holds then:
 * `after` itself, unless other tabs have changed something too.
 */
export async function keepRackChanges(
  before: Shelf,
  after: Shelf,
  changes: Changes,
): Promise<Shelf & { readonly refused: readonly Unreadable[] }> {
  const change = (await database()).transaction(['racks', 'notes'], 'readwrite');
  try {
    const racks = change.objectStore('racks');
    const notes = change.objectStore('notes');
    const stamps = await notes.get('racks');
    const stored = new Map((stamps ?? []).map(({ id, revision }) => [id, revision]));
    // Nothing is kept yet: with the first change all of them are the builder's own.
    const touched =
      stamps === undefined ? after.racks.map(({ id }) => id) : [...changes.changed.keys()];
    const met = new Map(after.racks.map((rack) => [rack.id, rack]));
    const revisions = new Map(before.revisions);
    for (const id of changes.removed.keys()) {
      revisions.delete(id);
      refused.delete(id);
    }
    for (const id of touched) {
      const revision = stored.get(id);
      const own = met.get(id)!;
      let next = own;
      if (revision !== undefined && revision !== before.revisions?.get(id)) {
        const record = await racks.get(id);
        const there = rackIn(record?.rack, id);
        if (there !== undefined) next = withChanges([there], onlyOf(changes, id))[0] ?? own;
        else if (record !== undefined) await racks.put({ ...record, key: `${id} ${newKey()}` });
      }
      met.set(id, next);
      const faults = faultsIn(next, changes.changed.get(id)?.put);
      if (faults.length > 0) {
        refused.set(id, { name: next.name, problem: faults[0] });
        // Nothing that opens gives way to it; where nothing is kept yet, it is kept as it is.
        if (revision !== undefined) {
          await racks.put({ key: `${id} beside`, rack: next });
          continue;
        }
      } else refused.delete(id);
      const fresh = newKey();
      revisions.set(id, fresh);
      stored.set(id, fresh);
      await racks.put({ key: id, rack: next });
    }
    for (const id of changes.removed.keys()) {
      // Changed elsewhere since, it stays, and is taken in again.
      if (stored.get(id) !== before.revisions?.get(id)) continue;
      stored.delete(id);
      await racks.delete(id);
    }
    const order = inOrder(
      [...stored].map(([id, revision]) => ({ id, revision })),
      changes.order,
    );
    await notes.put(order, 'racks');
    await change.done;
    // Racks of others that this tab has not met yet are taken in next.
    const racksNow = likeBefore(after.racks, [...met.values()]);
    return { racks: racksNow, revisions, refused: [...refused.values()] };
  } catch (error) {
    change.done.catch(() => {});
    try {
      change.abort();
    } catch {
      // The browser has ended it itself.
    }
    throw change.error ?? error;
  }
}

const onlyOf = ({ changed }: Changes, id: string): Changes => ({
  changed: new Map([...changed].filter(([one]) => one === id)),
  removed: new Map(),
  order: undefined,
});

/** `next`, with the identity of everything in `before` that is the same. */
const likeBefore = (before: readonly Rack[], next: readonly Rack[]): readonly Rack[] =>
  withChanges(before, changesBetween(before, next));

/** What the store holds now, where other tabs have changed it; `known` itself where not. */
export async function takeInRacks(known: Shelf): Promise<Shelf> {
  const read = (await database()).transaction(['racks', 'notes']);
  const stamps = await read.objectStore('notes').get('racks');
  if (stamps === undefined) return known;
  const racks = new Map(known.racks.map((rack) => [rack.id, rack]));
  const met: Rack[] = [];
  for (const { id, revision } of stamps) {
    const own = racks.get(id);
    if (own !== undefined && known.revisions?.get(id) === revision) {
      met.push(own);
      continue;
    }
    const there = rackIn((await read.objectStore('racks').get(id))?.rack, id);
    if (there !== undefined) met.push(there);
  }
  await read.done;
  return { racks: likeBefore(known.racks, met), revisions: revisionsIn(stamps, met) };
}
