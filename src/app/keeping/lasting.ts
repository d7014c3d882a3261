/**
 * Will the browser still have it next month? Browsers may clear what pages keep when space runs
 * short, unless they have agreed not to. Ours is asked after the first change that was kept, never
 * on arrival; where it does not agree, work that has long not been saved to a file is spoken of.
 */

import { say, unsay } from './status.ts';
import { database } from './store/database.ts';

/** Changes since the last file after which it is time for one; our judgement, an evening's work. */
export const manyChanges = 60;

let isAsked = false;
let mayEvict: boolean | undefined;

/** A change of this build was kept. */
export function afterKept(key: string): void {
  void look(key).catch(() => {});
}

async function look(key: string): Promise<void> {
  if (!isAsked) {
    isAsked = true;
    mayEvict = (await askToLast()) === false;
  }
  if (mayEvict !== true) return;
  const card = await (await database()).get('cards', key);
  if (card === undefined || card.revision - (card.saved ?? 0) < manyChanges) return;
  say({
    id: 'evict',
    text:
      `${card.revision - (card.saved ?? 0)} changes are kept in this browser only, and it may ` +
      'clear them when space runs short. A file is safe from that.',
    remedies: ['save'],
  });
}

/** Whether the browser has agreed to keep things until they are deleted; undefined if unknown. */
async function askToLast(): Promise<boolean | undefined> {
  const { storage } = navigator;
  if (storage?.persist === undefined || storage.persisted === undefined) return undefined;
  return (await storage.persisted()) || (await storage.persist());
}

/** It was saved to a file. */
export const noteLasting = (): void => unsay('evict');

export interface Room {
  /** Whether the browser keeps it until it is deleted; undefined if it does not say. */
  readonly isLasting: boolean | undefined;
  /** Bytes taken and bytes there are; undefined if it does not say. */
  readonly usedBytes: number | undefined;
  readonly mostBytes: number | undefined;
}

/** How much room there is, without asking the builder anything. */
export async function room(): Promise<Room> {
  const { storage } = navigator;
  const [isLasting, estimate] = await Promise.all([
    storage?.persisted?.().catch(() => undefined),
    storage?.estimate?.().catch(() => undefined),
  ]);
  return { isLasting, usedBytes: estimate?.usage, mostBytes: estimate?.quota };
}
