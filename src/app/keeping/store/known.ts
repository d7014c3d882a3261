/** What this tab last read from or wrote to the store, by key: a build that is the same is kept. */
import type { Build } from '../../../build/build.ts';

export interface Known {
  readonly build: Build;
  readonly revision: number;
}
const known = new Map<string, Known>();

/** What this tab knows to be kept under a key. */
export const knownAs = (key: string): Known | undefined => known.get(key);

/** Notes what is kept under a key; undefined where nothing is any more. */
export function knowAs(key: string, what: Known | undefined): void {
  if (what === undefined) known.delete(key);
  else known.set(key, what);
}
