/**
 * Builds in the browser's store: kept, read, listed, copied, deleted, put back. A change is kept
 * only over the revision it was made from; where another tab has kept one since, nothing is
 * written. Every function rejects where the browser refuses; see `refusalOf`.
 */
import type { IDBPTransaction } from 'idb';
import type { Build } from '../../../build/build.ts';
import { tellTabs } from '../tabs/channel.ts';
import { cardOf } from './card.ts';
import { type Card, database, type Shelves } from './database.ts';

type Shelf = 'builds' | 'cards' | 'pictures';
type Change = IDBPTransaction<Shelves, Shelf[], 'readwrite'>;

/** A build as it is kept. */
export interface Kept {
  readonly card: Card;
  readonly document: unknown;
  readonly picture: string | undefined;
}
/** A line of the list. */
export interface Listed {
  readonly card: Card;
  readonly picture: string | undefined;
}

/** Runs a change as one transaction: all of it, or nothing where any of it fails. */
async function changed<T>(to: (change: Change) => Promise<T>): Promise<T> {
  const change = (await database()).transaction(['builds', 'cards', 'pictures'], 'readwrite');
  try {
    const answer = await to(change);
    await change.done;
    return answer;
  } catch (error) {
    // Its own end says nothing more than the error that is on its way already.
    change.done.catch(() => {});
    try {
      change.abort();
    } catch {
      // The browser has ended it itself.
    }
    throw change.error ?? error;
  }
}

/**
 * Keeps a build over revision `over` (undefined where this tab has not kept or read it yet). The
 * answer is its revision now, or `elsewhere` where another tab has kept it meanwhile. One that was
 * deleted meanwhile is kept afresh.
 */
export async function keepBuild(
  key: string,
  build: Build,
  over: number | undefined,
): Promise<number | 'elsewhere'> {
  const revision = await changed(async (change) => {
    const before = await change.objectStore('cards').get(key);
    if (before !== undefined && before.revision !== over) return 'elsewhere';
    const next = (before?.revision ?? over ?? 0) + 1;
    await change.objectStore('builds').put({ key, document: build });
    const card = cardOf(key, build, Date.now(), next);
    await change
      .objectStore('cards')
      .put(before?.saved === undefined ? card : { ...card, saved: before.saved });
    return next;
  });
  if (revision !== 'elsewhere') tellTabs({ kind: 'kept', key, revision });
  return revision;
}

/** Puts a document into the store under a key that is new, as it is; for copies and older work. */
export async function addBuild(key: string, document: unknown, picture?: string): Promise<void> {
  await changed(async (change) => {
    await change.objectStore('builds').put({ key, document });
    await change.objectStore('cards').put(cardOf(key, document, Date.now(), 1));
    if (picture !== undefined) await change.objectStore('pictures').put(picture, key);
  });
  tellTabs({ kind: 'kept', key, revision: 1 });
}

/** What is kept under this key; undefined where nothing is. */
export async function readBuild(key: string): Promise<Kept | undefined> {
  const read = (await database()).transaction(['builds', 'cards', 'pictures']);
  const [build, card, picture] = await Promise.all([
    read.objectStore('builds').get(key),
    read.objectStore('cards').get(key),
    read.objectStore('pictures').get(key),
  ]);
  await read.done;
  return build === undefined || card === undefined
    ? undefined
    : { card, document: build.document, picture };
}

/** Revision of a build; undefined where it is not kept. */
export const revisionOf = async (key: string): Promise<number | undefined> =>
  (await (await database()).get('cards', key))?.revision;

/** Every build, the one changed last first. */
export async function listBuilds(): Promise<readonly Listed[]> {
  const read = (await database()).transaction(['cards', 'pictures']);
  const [cards, keys, pictures] = await Promise.all([
    read.objectStore('cards').getAll(),
    read.objectStore('pictures').getAllKeys(),
    read.objectStore('pictures').getAll(),
  ]);
  await read.done;
  const pictured = new Map(keys.map((key, at) => [key, pictures[at]]));
  return cards
    .sort((one, other) => other.changed - one.changed)
    .map((card) => ({ card, picture: pictured.get(card.key) }));
}

/** Names of all builds but one. */
export async function namesBeside(key: string): Promise<string[]> {
  const cards = await (await database()).getAll('cards');
  return cards.filter((card) => card.key !== key).map(({ name }) => name);
}

/** Deletes a build; the answer is what it takes to put it back. */
export async function removeBuild(key: string): Promise<Kept | undefined> {
  const kept = await readBuild(key);
  await changed(async (change) => {
    await change.objectStore('builds').delete(key);
    await change.objectStore('cards').delete(key);
    await change.objectStore('pictures').delete(key);
  });
  tellTabs({ kind: 'removed', key });
  return kept;
}

/** Puts a deleted build back, and whether it did: one kept afresh meanwhile is left as it is. */
export async function putBack({ card, document, picture }: Kept): Promise<boolean> {
  const { key, revision } = card;
  const isBack = await changed(async (change) => {
    if ((await change.objectStore('cards').get(key)) !== undefined) return false;
    await change.objectStore('builds').put({ key, document });
    await change.objectStore('cards').put(card);
    if (picture !== undefined) await change.objectStore('pictures').put(picture, key);
    return true;
  });
  if (isBack) tellTabs({ kind: 'kept', key, revision });
  return isBack;
}

/** Keeps the picture of a build that is kept. */
export const keepPicture = (key: string, picture: string): Promise<void> =>
  changed(async (change) => {
    if ((await change.objectStore('cards').get(key)) === undefined) return;
    await change.objectStore('pictures').put(picture, key);
  });

/** Notes that a build as it is kept now was saved to a file; the answer is its card, if any. */
export const noteSaved = (key: string): Promise<void> =>
  changed(async (change) => {
    const card = await change.objectStore('cards').get(key);
    if (card === undefined) return;
    await change.objectStore('cards').put({ ...card, saved: card.revision });
  });
