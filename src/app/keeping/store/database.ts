/**
 * Where does this browser keep builds and racks? In one database: what a build is (`builds`), what
 * its line in the list needs (`cards`, `pictures`), and the racks. Documents are kept as they are,
 * so that those of a newer Testspoon, or damaged ones, stay untouched.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** What the list tells of a build, without reading it. */
export interface Card {
  readonly key: string;
  readonly name: string;
  /** Version of the document; undefined where it has none that is a number. */
  readonly version: number | undefined;
  readonly car: string;
  /** 24 for 1:24. */
  readonly scale: number;
  readonly openParts: number;
  /** When it was changed last, ms since 1970. */
  readonly changed: number;
  /** Goes up by one with every change that is kept. */
  readonly revision: number;
  /** The revision that was last saved to a file. */
  readonly saved?: number;
}
export interface BuildRecord {
  readonly key: string;
  readonly document: unknown;
}
export interface RackRecord {
  readonly key: string;
  readonly rack: unknown;
}
/** A rack among the others, in their order; every change gives it another revision. */
export interface RackStamp {
  readonly id: string;
  readonly revision: string;
}
export interface Shelves extends DBSchema {
  builds: { key: string; value: BuildRecord };
  cards: { key: string; value: Card };
  /** Small pictures as data addresses, by the key of their build. */
  pictures: { key: string; value: string };
  racks: { key: string; value: RackRecord };
  /** Under `racks`, which racks there are; nothing until one was changed. */
  notes: { key: string; value: readonly RackStamp[] };
}

const name = 'testspoon';
const version = 1;

let opened: Promise<IDBPDatabase<Shelves>> | undefined;

/** The database; rejects where this browser has none, or a newer Testspoon has made it. */
export function database(): Promise<IDBPDatabase<Shelves>> {
  opened ??= openedNow().catch((error: unknown) => {
    // Asked for again later, a browser may be more willing.
    opened = undefined;
    throw error;
  });
  return opened;
}

async function openedNow(): Promise<IDBPDatabase<Shelves>> {
  const forget = (): void => {
    opened = undefined;
  };
  const shelves = await openDB<Shelves>(name, version, {
    upgrade(fresh) {
      fresh.createObjectStore('builds', { keyPath: 'key' });
      fresh.createObjectStore('cards', { keyPath: 'key' });
      fresh.createObjectStore('pictures');
      fresh.createObjectStore('racks', { keyPath: 'key' });
      fresh.createObjectStore('notes');
    },
    // A newer Testspoon in another tab waits for this one to let go.
    blocking(_current, _wanted, { target }) {
      (target as IDBDatabase).close();
      forget();
    },
    terminated: forget,
  });
  return shelves;
}

/** Why nothing can be kept: `full`, `newer` (a newer Testspoon's database), `closed` to us. */
export function refusalOf(error: unknown): 'full' | 'newer' | 'closed' {
  const names = [error, (error as { cause?: unknown } | undefined)?.cause].map(
    (one) => (one as { name?: unknown } | undefined)?.name,
  );
  if (names.includes('QuotaExceededError')) return 'full';
  return names.includes('VersionError') ? 'newer' : 'closed';
}
