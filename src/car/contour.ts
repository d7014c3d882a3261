/**
 * Where do the lines of a drawing run? Turns a picture of labels into closed outlines that share
 * their common borders point for point (no slivers between neighbours), and a field of numbers into
 * the outlines of everything above a level (marching squares). Staircases are smoothed by binomial
 * averaging, then thinned by Douglas–Peucker. Coordinates in pixels, corner of the picture at 0, 0.
 */
import { nearestSeed } from './thickness.ts';

export type Point = readonly [x: number, y: number];
export type Ring = readonly Point[];

/** A stretch of border between two labels, from one meeting point of borders to the next. */
export interface Chain {
  readonly left: number;
  readonly right: number;
  readonly points: Ring;
  /** Border edges it runs along, as index of the pixel on either side; −1 outside the picture. */
  readonly sides: readonly (readonly [left: number, right: number])[];
  readonly isClosed: boolean;
}

/** Steps along pixel corners: right, down, left, up. */
const steps = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** Every border between labels, walked once, smoothed and thinned to `tolerance` pixels. */
export function chainsOf(
  label: Int16Array,
  width: number,
  height: number,
  tolerance: number,
): Chain[] {
  const pixelAt = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? -1 : y * width + x;
  const labelAt = (pixel: number): number => (pixel < 0 ? -1 : label[pixel]!);
  /** Pixels to the left and right of a step from corner x, y (y runs down). */
  const sidesOf = (x: number, y: number, way: number): readonly [number, number] => {
    if (way === 0) return [pixelAt(x, y - 1), pixelAt(x, y)];
    if (way === 1) return [pixelAt(x, y), pixelAt(x - 1, y)];
    if (way === 2) return [pixelAt(x - 1, y), pixelAt(x - 1, y - 1)];
    return [pixelAt(x - 1, y - 1), pixelAt(x, y - 1)];
  };
  const isBorder = (x: number, y: number, way: number): boolean => {
    const [left, right] = sidesOf(x, y, way);
    return labelAt(left) !== labelAt(right);
  };
  const waysFrom = (x: number, y: number): number[] =>
    [0, 1, 2, 3].filter((way) => isBorder(x, y, way));
  const walked = new Uint8Array((width + 1) * (height + 1) * 2);
  const edgeKey = (x: number, y: number, way: number): number => {
    if (way === 0) return (y * (width + 1) + x) * 2;
    if (way === 1) return (y * (width + 1) + x) * 2 + 1;
    return way === 2 ? (y * (width + 1) + x - 1) * 2 : ((y - 1) * (width + 1) + x) * 2 + 1;
  };
  const chains: Chain[] = [];
  const walk = (x0: number, y0: number, first: number): void => {
    const corners: Point[] = [[x0, y0]];
    const sides: (readonly [number, number])[] = [];
    let [x, y, way] = [x0, y0, first];
    let isClosed = false;
    for (;;) {
      walked[edgeKey(x, y, way)] = 1;
      sides.push(sidesOf(x, y, way));
      x += steps[way]![0];
      y += steps[way]![1];
      if (x === x0 && y === y0 && waysFrom(x, y).length === 2) {
        isClosed = true;
        break;
      }
      corners.push([x, y]);
      const onward = waysFrom(x, y);
      if (onward.length !== 2) break;
      const back = (way + 2) % 4;
      way = onward[0] === back ? onward[1]! : onward[0]!;
    }
    const [left, right] = sides[0]!;
    const points = thinned(smoothed(corners, isClosed), isClosed, tolerance);
    chains.push({ left: labelAt(left), right: labelAt(right), points, sides, isClosed });
  };
  // Chains that start where three or four borders meet come first; what is left is closed.
  for (const onlyMeetings of [true, false]) {
    for (let y = 0; y <= height; y++) {
      for (let x = 0; x <= width; x++) {
        if (!isBorder(x, y, 0) && !isBorder(x, y, 1) && !isBorder(x, y, 2)) continue;
        const ways = waysFrom(x, y);
        if (onlyMeetings && ways.length === 2) continue;
        for (const way of ways) if (!walked[edgeKey(x, y, way)]) walk(x, y, way);
      }
    }
  }
  return chains;
}

/** The closed outlines of each label, put together from shared chains; even–odd filling. */
export function ringsOf(chains: readonly Chain[]): Map<number, Ring[]> {
  const rings = new Map<number, Ring[]>();
  const open = new Map<number, Ring[]>();
  const put = (to: Map<number, Ring[]>, label: number, points: Ring): void => {
    const list = to.get(label);
    if (list) list.push(points);
    else to.set(label, [points]);
  };
  for (const { left, right, points, isClosed } of chains) {
    for (const [label, run] of [
      [left, points],
      [right, [...points].reverse()],
    ] as const) {
      if (label >= 0) put(isClosed ? rings : open, label, run);
    }
  }
  for (const [label, runs] of open) for (const ring of joined(runs)) put(rings, label, ring);
  return rings;
}

/** Joins runs end to start into closed rings. */
function joined(runs: readonly Ring[]): Ring[] {
  const startingAt = new Map<string, number[]>();
  runs.forEach((run, index) => {
    const key = String(run[0]);
    startingAt.set(key, [...(startingAt.get(key) ?? []), index]);
  });
  const used = new Set<number>();
  const rings: Ring[] = [];
  runs.forEach((first, index) => {
    if (used.has(index)) return;
    used.add(index);
    const ring = [...first];
    for (;;) {
      const next = startingAt.get(String(ring[ring.length - 1]))?.find((one) => !used.has(one));
      if (next === undefined || String(ring[ring.length - 1]) === String(ring[0])) break;
      used.add(next);
      ring.push(...runs[next]!.slice(1));
    }
    rings.push(ring.slice(0, -1));
  });
  return rings;
}

/** Corners of a staircase drawn through the middles of its steps and averaged; ends stay put. */
function smoothed(corners: Ring, isClosed: boolean): Ring {
  const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const onward = isClosed ? [...corners.slice(1), corners[0]!] : corners.slice(1);
  let points: Point[] = onward.map((corner, index) => middle(corners[index]!, corner));
  if (!isClosed) points = [corners[0]!, ...points, corners[corners.length - 1]!];
  const count = points.length;
  if (count < 5) return points;
  for (let pass = 0; pass < 3; pass++) {
    points = points.map((point, index): Point => {
      if (!isClosed && (index === 0 || index === count - 1)) return point;
      const before = points[(index + count - 1) % count]!;
      const after = points[(index + 1) % count]!;
      return [(before[0] + 2 * point[0] + after[0]) / 4, (before[1] + 2 * point[1] + after[1]) / 4];
    });
  }
  return points;
}

/** Fewest of the points that stay within `tolerance` of the line (Douglas–Peucker). */
export function thinned(points: Ring, isClosed: boolean, tolerance: number): Ring {
  if (points.length < 4) return points;
  if (isClosed) {
    const half = points.length >> 1;
    const first = thinned(points.slice(0, half + 1), false, tolerance);
    const second = thinned([...points.slice(half), points[0]!], false, tolerance);
    return [...first, ...second.slice(1, -1)];
  }
  const keep = new Uint8Array(points.length);
  keep[0] = keep[points.length - 1] = 1;
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const [[ax, ay], [bx, by]] = [points[from]!, points[to]!];
    const length = Math.hypot(bx - ax, by - ay);
    let farthest = -1;
    let most = tolerance;
    for (let index = from + 1; index < to; index++) {
      const [x, y] = points[index]!;
      const off =
        length === 0
          ? Math.hypot(x - ax, y - ay)
          : Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length;
      if (off > most) {
        most = off;
        farthest = index;
      }
    }
    if (farthest < 0) continue;
    keep[farthest] = 1;
    spans.push([from, farthest], [farthest, to]);
  }
  return points.filter((_, index) => keep[index]);
}

/** Outlines of everything in a field above `level`; even–odd filling. Values sit at pixel centres. */
export function levelRings(
  field: Float32Array,
  width: number,
  height: number,
  level: number,
): Ring[] {
  const valueAt = (x: number, y: number): number =>
    (x < 0 || y < 0 || x >= width || y >= height ? 0 : field[y * width + x]!) - level;
  const next = new Map<number, number[]>();
  const placeOf = new Map<number, Point>();
  const span = width + 3;
  /** A crossing on the cell edge from x, y rightward (way 0) or downward (way 1). */
  const crossing = (x: number, y: number, way: number): number => {
    const key = ((y + 1) * span + x + 1) * 2 + way;
    if (!placeOf.has(key)) {
      const from = valueAt(x, y);
      const to = valueAt(x + (1 - way), y + way);
      const t = from / (from - to);
      placeOf.set(key, way === 0 ? [x + t + 0.5, y + 0.5] : [x + 0.5, y + t + 0.5]);
    }
    return key;
  };
  const link = (from: number, to: number): void => {
    next.set(from, [...(next.get(from) ?? []), to]);
  };
  for (let y = -1; y < height; y++) {
    for (let x = -1; x < width; x++) {
      const first = valueAt(x, y) > 0;
      const second = valueAt(x + 1, y) > 0;
      const third = valueAt(x + 1, y + 1) > 0;
      const fourth = valueAt(x, y + 1) > 0;
      if (first === second && second === third && third === fourth) continue;
      const isIn = [first, second, third, fourth];
      const edges = [
        () => crossing(x, y, 0),
        () => crossing(x + 1, y, 1),
        () => crossing(x, y + 1, 0),
        () => crossing(x, y, 1),
      ];
      // Walk the cell clockwise: each way out of the inside leads to the last way in.
      for (let side = 0; side < 4; side++) {
        if (!isIn[side] || isIn[(side + 1) % 4]) continue;
        let entry = side;
        while (isIn[entry]) entry = (entry + 3) % 4;
        link(edges[side]!(), edges[entry]!());
      }
    }
  }
  const rings: Ring[] = [];
  for (const start of next.keys()) {
    const ring: Point[] = [];
    for (let key = start; ; ) {
      const onward = next.get(key)?.pop();
      if (onward === undefined) break;
      ring.push(placeOf.get(key)!);
      key = onward;
    }
    if (ring.length > 2) rings.push(ring);
  }
  return rings;
}

/** Area inside a ring, square pixels. */
export const areaOf = (ring: Ring): number =>
  Math.abs(
    ring.reduce((sum, [x, y], index) => {
      const [nx, ny] = ring[(index + 1) % ring.length]!;
      return sum + x * ny - nx * y;
    }, 0) / 2,
  );

/** Patches of fewer pixels are given to what surrounds them. */
const speckPx = 14;

/** Labels with small patches given to the nearest larger one. */
export function withoutSpecks(label: Int16Array, width: number, height: number): Int16Array {
  const patch = new Int32Array(label.length).fill(-1);
  const isKept = new Uint8Array(label.length);
  const queue: number[] = [];
  for (let start = 0; start < label.length; start++) {
    if (patch[start]! >= 0) continue;
    queue.length = 0;
    queue.push(start);
    patch[start] = start;
    for (let head = 0; head < queue.length; head++) {
      const at = queue[head]!;
      const x = at % width;
      for (const there of [
        x > 0 ? at - 1 : -1,
        x < width - 1 ? at + 1 : -1,
        at - width,
        at + width,
      ]) {
        if (there < 0 || there >= label.length || patch[there]! >= 0) continue;
        if (label[there] !== label[start]) continue;
        patch[there] = start;
        queue.push(there);
      }
    }
    if (queue.length >= speckPx) for (const at of queue) isKept[at] = 1;
  }
  const nearest = nearestSeed(isKept, width, height);
  return label.map((own, at) => (nearest[at]! < 0 ? own : label[nearest[at]!]!));
}
