/** A store in memory with what the keeping asks of the browser's: shelves, keys, transactions. */

interface Shelf {
  readonly get: (key: string) => Promise<unknown>;
  readonly getAll: () => Promise<unknown[]>;
  readonly getAllKeys: () => Promise<string[]>;
  readonly put: (value: unknown, key?: string) => Promise<void>;
  readonly delete: (key: string) => Promise<void>;
}

/** The shelves by name, and what stands in for `database()`. */
export function shelvesInMemory() {
  const held = new Map<string, Map<string, unknown>>();
  const shelf = (name: string): Map<string, unknown> => {
    const there = held.get(name) ?? new Map<string, unknown>();
    held.set(name, there);
    return there;
  };
  const objectStore = (name: string): Shelf => ({
    get: async (key) => shelf(name).get(key),
    getAll: async () => [...shelf(name).values()],
    getAllKeys: async () => [...shelf(name).keys()],
    put: async (value, key) => {
      const { key: own } = Object(value) as { key?: string };
      shelf(name).set(key ?? own!, structuredClone(value));
    },
    delete: async (key) => {
      shelf(name).delete(key);
    },
  });
  const opened = {
    transaction: () => ({ objectStore, done: Promise.resolve(), abort: () => {} }),
    get: (name: string, key: string) => objectStore(name).get(key),
    getAll: (name: string) => objectStore(name).getAll(),
  };
  return { shelf, database: async () => opened };
}
