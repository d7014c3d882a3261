/** What the browser's store holds, read past the page, and changed where a journey needs it so. */
import type { Page } from 'playwright-core';

export interface Stored {
  readonly key: string;
  readonly document: {
    readonly name: string;
    readonly version: number;
    readonly alternatives: readonly { readonly choices: Readonly<Record<string, string>> }[];
  };
}

/** Everything in one of the store's shelves; nothing where there is no store yet. */
async function shelfOf(page: Page, shelf: 'builds' | 'cards' | 'pictures'): Promise<unknown[]> {
  return page.evaluate(async (name) => {
    // Opening a store that is not there would make an empty one.
    const there = await indexedDB.databases();
    if (!there.some((one) => one.name === 'testspoon')) return [];
    return new Promise<unknown[]>((resolve, reject) => {
      const opening = indexedDB.open('testspoon');
      opening.onerror = () => reject(opening.error);
      opening.onsuccess = () => {
        const reading = opening.result.transaction(name).objectStore(name).getAll();
        reading.onerror = () => reject(reading.error);
        reading.onsuccess = () => {
          opening.result.close();
          resolve(reading.result);
        };
      };
    });
  }, shelf);
}

/** The builds that are kept. */
export const keptBuilds = async (page: Page): Promise<Stored[]> =>
  (await shelfOf(page, 'builds')) as Stored[];

/** The pictures that are kept, as data addresses. */
export const keptPictures = async (page: Page): Promise<string[]> =>
  (await shelfOf(page, 'pictures')) as string[];

/** Names of the builds that are kept, in order. */
export const keptNames = async (page: Page): Promise<string[]> =>
  (await keptBuilds(page)).map(({ document }) => document.name).sort();

/** Makes the first rack that is kept one of a newer Testspoon; the answer is what is kept then. */
export const ageRack = (page: Page): Promise<unknown> =>
  page.evaluate(
    () =>
      new Promise<unknown>((resolve, reject) => {
        const opening = indexedDB.open('testspoon');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const change = opening.result.transaction('racks', 'readwrite');
          const racks = change.objectStore('racks');
          const first = racks.openCursor();
          let aged: unknown;
          first.onsuccess = () => {
            const record = first.result?.value as { key: string; rack: object };
            aged = { ...record.rack, version: 99 };
            racks.put({ ...record, rack: aged });
          };
          change.onerror = () => reject(change.error);
          change.oncomplete = () => {
            opening.result.close();
            resolve(aged);
          };
        };
      }),
  );

/** Puts `count` copies of the only kept build beside it, as old as they are many. */
export const fillShelf = (page: Page, count: number): Promise<void> =>
  page.evaluate(
    (many) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('testspoon');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const change = opening.result.transaction(['builds', 'cards', 'pictures'], 'readwrite');
          const [builds, cards, pictures] = ['builds', 'cards', 'pictures'].map((name) =>
            change.objectStore(name),
          );
          const build = builds!.getAll();
          const card = cards!.getAll();
          const picture = pictures!.getAll();
          picture.onsuccess = () => {
            for (let at = 1; at <= many; at++) {
              const key = `copy-${at}`;
              const name = `Shelf model ${at}`;
              const { document } = build.result[0] as { document: object };
              builds!.put({ key, document: { ...document, name } });
              cards!.put({ ...(card.result[0] as object), key, name, changed: at * 60_000 });
              pictures!.put(picture.result[0], key);
            }
          };
          change.onerror = () => reject(change.error);
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    count,
  );
