/**
 * Builds that this tab has deleted: what it takes to put each back as itself, so that neither undo
 * nor the list makes a copy of it, whoever else has it open.
 */
import { type Kept, putBack } from './builds.ts';
import { type Known, knowAs, knownAs } from './known.ts';

interface Deleted {
  readonly kept: Kept;
  /** What this tab knew to be kept; undefined where it never had it open. */
  readonly known: Known | undefined;
}
const deleted = new Map<string, Deleted>();

/** A build was deleted here; from now on nothing is known to be kept under its key. */
export function noteGone(kept: Kept): void {
  const { key } = kept.card;
  deleted.set(key, { kept, known: knownAs(key) });
  knowAs(key, undefined);
}

/** What was deleted here under this key and has not been put back. */
export const deletedHere = (key: string): Kept | undefined => deleted.get(key)?.kept;

/** Puts it back as it was, and knows it again, unless another tab has kept it afresh meanwhile. */
export async function putBackAsItWas(kept: Kept): Promise<void> {
  const { key } = kept.card;
  const isBack = await putBack(kept);
  const known = deleted.get(key)?.known;
  deleted.delete(key);
  if (isBack && known !== undefined && knownAs(key) === undefined) knowAs(key, known);
}
