/** What lies in the store, followed while the list is open, here and in other tabs. */
import { useEffect, useState } from 'react';
import { create } from 'zustand';
import { useStatus } from '../keeping/status.ts';
import { type Kept, type Listed, listBuilds } from '../keeping/store/builds.ts';
import { hearTabs } from '../keeping/tabs/channel.ts';
import { heldKeys } from '../keeping/tabs/holding.ts';
import { refusalText } from '../keeping/trouble.ts';

export interface Row extends Listed {
  /** What it takes to put it back, where it was deleted while the list is open. */
  readonly deleted: Kept | undefined;
}
interface Shelf {
  readonly listed: readonly Listed[] | undefined;
  readonly deleted: readonly Kept[];
  /** Keys of builds that some tab holds. */
  readonly elsewhere: ReadonlySet<string>;
  readonly refusal: string | undefined;
}
const bare: Shelf = { listed: undefined, deleted: [], elsewhere: new Set(), refusal: undefined };
const useListing = create<Shelf>()(() => bare);

/** Reads the list afresh. */
export async function listAfresh(): Promise<void> {
  try {
    const [listed, elsewhere] = await Promise.all([listBuilds(), heldKeys()]);
    useListing.setState({ listed, elsewhere, refusal: undefined });
  } catch (error) {
    useListing.setState({ listed: [], refusal: refusalText(error) });
  }
}

/** A build was deleted; its line offers to put it back. */
export function noteDeleted(kept: Kept): void {
  useListing.setState(({ deleted }) => ({ deleted: [...deleted, kept] }));
  void listAfresh();
}

/** It was put back. */
export function noteBack(key: string): void {
  useListing.setState(({ deleted }) => ({
    deleted: deleted.filter((one) => one.card.key !== key),
  }));
  void listAfresh();
}

/** The lines of the list, the build changed last first; undefined until they have been read. */
export function useShelf(): Pick<Shelf, 'refusal' | 'elsewhere'> & {
  readonly rows: readonly Row[] | undefined;
} {
  const { listed, deleted, elsewhere, refusal } = useListing();
  const [isFresh, setFresh] = useState(false);
  useEffect(() => {
    useListing.setState(bare);
    setFresh(true);
    void listAfresh();
    const deaf = hearTabs(({ kind }) => {
      if (kind === 'kept' || kind === 'removed') void listAfresh();
    });
    const unwatched = useStatus.subscribe(({ state }, before) => {
      if (state === 'kept' && before.state !== 'kept') void listAfresh();
    });
    return () => {
      deaf();
      unwatched();
      // Deleted builds are had back here only, and may be large.
      useListing.setState(bare);
    };
  }, []);
  if (!isFresh || listed === undefined) return { rows: undefined, elsewhere, refusal };
  const keys = new Set(listed.map(({ card }) => card.key));
  const gone = deleted.filter(({ card }) => !keys.has(card.key));
  const rows = [
    ...listed.map((one): Row => ({ ...one, deleted: undefined })),
    ...gone.map((kept): Row => ({ card: kept.card, picture: kept.picture, deleted: kept })),
  ].sort((one, other) => other.card.changed - one.card.changed);
  return { rows, elsewhere, refusal };
}
