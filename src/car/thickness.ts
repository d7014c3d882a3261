/**
 * How wide does a part look at its narrow? Local thickness of a mask: at each pixel the diameter of
 * the largest disc that fits inside the mask and covers the pixel. A belt is a ribbon, so the
 * thickness of its mesh would be the wrong quantity; what shows is its width in the picture.
 * Distances are exact Euclidean, two passes [Felzenszwalb2012]. Pixels in, pixels out.
 * Limit: masks under about four pixels across read coarse; frame them closer instead.
 */

/** For every pixel the index of the nearest seed pixel, exact; −1 where there is no seed. */
export function nearestSeed(isSeed: Uint8Array, width: number, height: number): Int32Array {
  const rowOfSeed = nearestInColumns(isSeed, width, height);
  const nearest = new Int32Array(width * height).fill(-1);
  const site = new Int32Array(width);
  const from = new Float64Array(width + 1);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    // Lower envelope of the parabolas (x − q)² + g(q)², q running over the row.
    let top = -1;
    for (let q = 0; q < width; q++) {
      if (rowOfSeed[row + q]! < 0) continue;
      const lift = (rowOfSeed[row + q]! - y) ** 2 + q * q;
      let start = -Infinity;
      while (top >= 0) {
        const p = site[top]!;
        start = (lift - ((rowOfSeed[row + p]! - y) ** 2 + p * p)) / (2 * (q - p));
        if (start > from[top]!) break;
        top--;
        start = -Infinity;
      }
      site[++top] = q;
      from[top] = start;
    }
    if (top < 0) continue;
    from[top + 1] = Infinity;
    for (let x = 0, k = 0; x < width; x++) {
      while (from[k + 1]! < x) k++;
      const q = site[k]!;
      nearest[row + x] = rowOfSeed[row + q]! * width + q;
    }
  }
  return nearest;
}

/** For every pixel the row of the nearest seed in its own column; −1 where there is none. */
function nearestInColumns(isSeed: Uint8Array, width: number, height: number): Int32Array {
  const rowOf = new Int32Array(width * height).fill(-1);
  // Row by row, down and then up, so that memory is read in order.
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at++) {
      if (isSeed[at]) rowOf[at] = y;
      else if (y > 0) rowOf[at] = rowOf[at - width]!;
    }
  }
  for (let y = height - 2; y >= 0; y--) {
    for (let x = 0, at = y * width; x < width; x++, at++) {
      const below = rowOf[at + width]!;
      const own = rowOf[at]!;
      if (below > y && (own < 0 || below - y < y - own)) rowOf[at] = below;
    }
  }
  return rowOf;
}

/** Distance of every mask pixel to the nearest pixel outside it, pixel centre to pixel centre. */
export function distanceToEdge(mask: Uint8Array, width: number, height: number): Float64Array {
  const outside = mask.map((value) => (value ? 0 : 1));
  const nearest = nearestSeed(outside, width, height);
  const distance = new Float64Array(mask.length);
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at++) {
      if (!mask[at]) continue;
      const seed = nearest[at]!;
      const row = (seed / width) | 0;
      const dx = x - (seed - row * width);
      distance[at] = seed < 0 ? Infinity : Math.sqrt(dx * dx + (y - row) * (y - row));
    }
  }
  return distance;
}

/**
 * Median local thickness of a mask, pixels; infinite where it is over `widest`. Half of the mask
 * lies in discs at least this wide: found by halving, each step one morphological opening (two
 * distance passes), which gives the same median as painting every disc at a fraction of the work.
 * No pixel is thinner than the disc round itself, so the halving starts from those discs' median.
 * Narrow masks are doubled first: on an even lattice a strip of n pixels measures n, odd or even.
 */
export function medianThickness(
  mask: Uint8Array,
  width: number,
  height: number,
  widest: number,
): number {
  const rough = paddedRadius(mask, width, height, 1);
  const least = 2 * medianOf(rough.radius) - 1;
  if (least >= widest) return Infinity;
  const times = least >= wideEnoughPx ? 1 : 2;
  // A disc's diameter in pixels of the given mask, as a radius on the finer lattice.
  const { radius, w, h } = times === 1 ? rough : paddedRadius(mask, width, height, 2);
  const asRadius = (size: number): number => (size * times) / 2;
  if (openedShare(radius, w, h, asRadius(widest)) >= 0.5) return Infinity;
  let [low, high] = [Math.max(0, least), widest];
  while (high - low > Math.max(precisionPx, precision * high)) {
    const middle = (low + high) / 2;
    if (openedShare(radius, w, h, asRadius(middle)) >= 0.5) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
const precisionPx = 0.02;
const precision = 0.01;
const wideEnoughPx = 12;

/** Distances to the edge of a mask magnified `times` and given a rim of one pixel. */
function paddedRadius(mask: Uint8Array, width: number, height: number, times: number) {
  const [w, h] = [times * width + 2, times * height + 2];
  const fine = new Uint8Array(w * h);
  for (let y = 0; y < times * height; y++) {
    const from = Math.floor(y / times) * width;
    for (let x = 0; x < times * width; x++) {
      fine[(y + 1) * w + x + 1] = mask[from + Math.floor(x / times)]!;
    }
  }
  return { radius: distanceToEdge(fine, w, h), w, h };
}

/** Median of the positive values; 0 where there are none. */
function medianOf(values: Float64Array): number {
  const inside = values.filter((value) => value > 0).sort();
  return inside[inside.length >> 1] ?? 0;
}

/** Share of a mask covered by discs of at least `size` that fit inside it. */
function openedShare(radius: Float64Array, width: number, height: number, size: number): number {
  const isCentre = new Uint8Array(radius.length);
  let centres = 0;
  for (let at = 0; at < radius.length; at++) {
    if (radius[at]! >= size) {
      isCentre[at] = 1;
      centres++;
    }
  }
  if (centres === 0) return 0;
  const nearest = nearestSeed(isCentre, width, height);
  const reach = size * size;
  let inside = 0;
  let covered = 0;
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at++) {
      if (radius[at] === 0) continue;
      inside++;
      const seed = nearest[at]!;
      const row = (seed / width) | 0;
      const dx = x - (seed - row * width);
      if (dx * dx + (y - row) * (y - row) < reach) covered++;
    }
  }
  return covered / inside;
}
