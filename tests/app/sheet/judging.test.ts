/** Weights in words, what they do to the order, and when a number says what it was. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isChangeOfFinish } from '../../../src/app/sheet/before.ts';
import {
  isUsual,
  orderInWords,
  shareOf,
  timesInWords,
  usualOrder,
  withTimes,
} from '../../../src/app/sheet/weights/balance.ts';
import { defaultWeights, type Weights } from '../../../src/build/build.ts';
import { settlePart, wearOn } from '../../../src/build/edit/part.ts';
import { parseBuild } from '../../../src/build/file.ts';
import type { SightTable } from '../../../src/car/table.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { scoreKeys } from '../../../src/score/evidence.ts';
import { compareAlternatives } from '../../../src/score/sheet.ts';

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const demo = parseBuild(read('../../../src/build/demo.json'));
const sight = JSON.parse(read('../../../models/roadster.sight.json')) as SightTable;
const sheetsWith = (weights: Weights) =>
  compareAlternatives({ ...demo, weights }, sight, { today: '2031-05-01', withoutCloseness: true })
    .alternatives;

describe('weights', () => {
  it('the usual order is told from any weights as the build with the usual ones has it', () => {
    // oracle: the whole comparison under the usual weights.
    const usual = [...sheetsWith(defaultWeights)]
      .sort((one, other) => other.overall - one.overall)
      .map(({ letter }) => letter)
      .join(', ');
    const draw = drawFrom(12);
    const orders = new Set<string>();
    for (let k = 0; k < 20; k++) {
      const weights = Object.fromEntries(
        scoreKeys.map((key) => [key, draw.below(3) * 10]),
      ) as Weights;
      if (scoreKeys.every((key) => weights[key] === 0)) continue;
      const sheets = sheetsWith(weights);
      orders.add(orderInWords(sheets).replace(/[^A-Z,]/g, ''));
      expect(usualOrder(sheets)).toBe(usual);
    }
    // Guards against weights that change nothing.
    expect(orders.size).toBeGreaterThan(1);
  });

  it('never all come to nothing, and their shares come to the whole', () => {
    let weights: Weights = defaultWeights;
    for (const key of scoreKeys.slice(1)) weights = withTimes(weights, key, 0)!;
    expect(withTimes(weights, 'contrast', 0)).toBeUndefined();
    expect(shareOf(weights, 'contrast')).toBe(100);
    const shares = scoreKeys.map((key) => shareOf(defaultWeights, key));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 9);
    expect(isUsual(weights)).toBe(false);
    expect(isUsual({ ...defaultWeights })).toBe(true);
  });

  it('are told in plain words, rising with the weight', () => {
    const words = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2].map(timesInWords);
    expect([...new Set(words)]).toEqual([
      'not at all',
      'a little',
      'less',
      'as usual',
      'more',
      'a lot',
    ]);
  });
});

describe('what a number was', () => {
  const tried = wearOn(demo, 'thread', 'mirrors', 'corner-shop/marigold');
  it('is told of the alternative whose finish was changed, and of no other', () => {
    expect(isChangeOfFinish(demo, tried, 'thread')).toBe(true);
    expect(isChangeOfFinish(demo, tried, 'slate')).toBe(false);
  });
  it('is not told after another lamp, distance or weight, even with a finish changed as well', () => {
    const viewing = { ...demo.viewing, distanceMm: 2000 };
    expect(isChangeOfFinish(demo, { ...demo, viewing }, 'thread')).toBe(false);
    expect(isChangeOfFinish(demo, { ...tried, viewing }, 'thread')).toBe(false);
    const weights = { ...demo.weights, sheen: 0 };
    expect(isChangeOfFinish(demo, { ...tried, weights }, 'thread')).toBe(false);
  });
  it('is not told where a part is settled as it was', () => {
    expect(isChangeOfFinish(demo, settlePart(demo, 'wheels', false), 'thread')).toBe(false);
  });
});
