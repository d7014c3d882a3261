/**
 * Damaged links are refused, or open as what was sent: twenty thousand here, a million by
 * `npm run fuzz`. Seeds fixed; oracle: the stock that they were made from, and Node's own zlib for
 * those that are packed and sealed again.
 */
import { describe, expect, it } from 'vitest';
import { batchLinks, fuzzInBatches, keptSeeds } from '../../fuzz/batches.ts';
import { stock } from './rounds.ts';

describe('a damaged link', () => {
  it('never crashes the reader and never opens as another round', () => {
    const { failures, refused, asSent, asWritten } = fuzzInBatches(stock, 20_000, 1948, () => 0);
    expect(failures).toEqual([]);
    const count = Object.values(refused)
      .flatMap((faults) => Object.values(faults))
      .reduce((sum, one) => sum + one, 0);
    expect(count + asSent + asWritten).toBe(20_000 + keptSeeds().length * batchLinks);
    // Every damage was met, and every one of them was refused at least at times.
    expect(Object.keys(refused).sort()).toEqual(
      ['cut', 'delete', 'flip', 'insert', 'packing', 'splice', 'swap', 'text'].sort(),
    );
    // Some changed texts are rounds of their own, so that the reader is not merely refusing all.
    expect(asWritten).toBeGreaterThan(0);
  });
});
