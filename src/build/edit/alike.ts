/**
 * A finish was changed in its rack: what becomes of the copy that a build holds? The same change.
 * What the copy says otherwise than the rack stays, a bottle bought since for example; of a bottle
 * only what was said anew is taken over.
 *
 * In: the copy, and the finish before and after. Out: the copy with every field that was changed;
 * where such a copy could not stand, all that the finish says after. The same copy where nothing
 * was changed.
 */
import { faultsOf } from '../../finish/edit/admit.ts';
import { type Finish, withBottles } from '../../finish/finish.ts';
import { retoldBetween, shelfFrom, withRetold } from '../../finish/shelf.ts';
import type { EmbeddedFinish } from '../build.ts';

/** The copy after the same change. */
export function changedAlike(copy: EmbeddedFinish, before: Finish, after: Finish): EmbeddedFinish {
  const fields = [...new Set([...fieldsOf(before), ...fieldsOf(after)])];
  const changed = fields.filter((field) => before[field] !== after[field]);
  if (changed.length === 0) return copy;
  const { rack, ...held } = copy;
  const kept = Object.entries(held).filter(([field]) => !changed.includes(field as keyof Finish));
  const put = changed.flatMap((field) =>
    after[field] === undefined ? [] : [[field, after[field]] as const],
  );
  const taken = Object.fromEntries([...kept, ...put]) as Finish;
  const next = faultsOf(taken).length === 0 ? taken : after;
  return {
    rack,
    ...withRetold(withBottles(next, shelfFrom([copy])), retoldBetween(before, after)),
  };
}

const fieldsOf = (finish: Finish): (keyof Finish)[] => Object.keys(finish) as (keyof Finish)[];
