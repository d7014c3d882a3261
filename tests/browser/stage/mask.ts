/** Regions of a picture of the roadster, and what light on a finish may turn its colour into. */
import { ciede2000 } from '../../../src/colour/difference.ts';
import { labFromXyz } from '../../../src/colour/lab.ts';
import { xyzFromLinearRgb } from '../../../src/colour/srgb.ts';
import { asLinearRgb } from '../../../src/ground/unit.ts';
import { linearOf, luminanceOf, type Rgb } from './colours.ts';
import type { Sent } from './page/bench.ts';
import { bytesOf } from './studio.ts';

/** Pixels whose neighbourhood of `reach` shows nothing but this part. */
export function within(parts: Sent, part: number, reach = 2): number[] {
  const ids = bytesOf(parts);
  const { width, height } = parts;
  const found: number[] = [];
  for (let y = reach; y < height - reach; y++) {
    for (let x = reach; x < width - reach; x++) {
      let isOwn = true;
      for (let dy = -reach; isOwn && dy <= reach; dy++) {
        for (let dx = -reach; isOwn && dx <= reach; dx++) {
          isOwn = ids[(y + dy) * width + x + dx] === part + 1;
        }
      }
      if (isOwn) found.push(y * width + x);
    }
  }
  return found;
}

/**
 * Pixels with nothing of this part within `reach`. `fine` tells parts at `times` the picture's size,
 * so that slivers are found that only smoothed edges show.
 */
export function without(fine: Sent, times: number, part: number, reach = 2): number[] {
  const ids = bytesOf(fine);
  const [width, height] = [fine.width / times, fine.height / times];
  const near = new Uint8Array(width * height);
  ids.forEach((id, at) => {
    if (id !== part + 1) return;
    const x = Math.floor((at % fine.width) / times);
    const y = Math.floor(at / fine.width / times);
    for (let ny = Math.max(0, y - reach); ny <= Math.min(height - 1, y + reach); ny++) {
      near.fill(
        1,
        ny * width + Math.max(0, x - reach),
        ny * width + Math.min(width, x + reach + 1),
      );
    }
  });
  return [...near.keys()].filter((at) => near[at] === 0);
}

/** Linear light of one pixel. */
export const lightAt = (bytes: Uint8Array, at: number): Rgb => [
  linearOf(bytes[at * 4]!),
  linearOf(bytes[at * 4 + 1]!),
  linearOf(bytes[at * 4 + 2]!),
];

/** Brightest hundredth of a region over its mean, in luminance. */
export function peakOverMean(picture: Sent, region: readonly number[]): number {
  const bytes = bytesOf(picture);
  const all = region.map((at) => luminanceOf(lightAt(bytes, at))).sort((a, b) => b - a);
  const mean = all.reduce((sum, one) => sum + one, 0) / all.length;
  const count = Math.ceil(all.length / 100);
  const peak = all.slice(0, count).reduce((sum, one) => sum + one, 0) / count;
  return peak / mean;
}

/**
 * How far is `met` from anything that neutral light makes of these reflectances: so much of one of
 * them, with so much plain reflection laid over? Least CIEDE2000 over a
 * grid of both; by the product's own conversions, which are quick and checked in tests/colour.
 */
export function farFromLit(met: Rgb, reflectances: readonly Rgb[]): number {
  const labOf = ([r, g, b]: Rgb) => labFromXyz(xyzFromLinearRgb(asLinearRgb(r, g, b)));
  const lab = labOf(met);
  const lightest = Math.max(...met);
  let least = Number.POSITIVE_INFINITY;
  for (const reflectance of reflectances) {
    const most = Math.max(1e-4, ...reflectance);
    for (let over = 0; over <= 24; over++) {
      const plain = (Math.min(...met) * over) / 24;
      for (let strength = 0; strength <= 24; strength++) {
        const light = ((lightest - plain) / most) * (0.7 + (0.6 * strength) / 24);
        const lit = reflectance.map((value) => value * light + plain) as unknown as Rgb;
        least = Math.min(least, ciede2000(lab, labOf(lit)));
      }
    }
  }
  return least;
}
