/**
 * One seat with its harness, modelled once and placed twice: pleated insert, a bead of piping,
 * side bolsters and head rest in one loft; shoulder, lap and crotch belts with their buckles.
 * Metres, seat coordinates: x left, y up from the floor, z forward, origin under the backrest's
 * foot. Shoulder belts 46 mm and lap belts 40 mm wide are harness sizes (common practice, no
 * source); the shape is our own judgement.
 */
import {
  add,
  clamp,
  cross,
  dot,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../src/ground/vector.ts';
import { box } from '../mesh/box.ts';
import { curveThrough } from '../mesh/curve.ts';
import { Solid } from '../mesh/solid.ts';
import { strap } from '../mesh/sweep.ts';

// Stations up the seat, from the front of the cushion to the top of the head rest:
// how far back, how high, half width, bolster height, padding depth.
const stations = [
  [0, 0.085, 0.2, 0, 0.03],
  [0.004, 0.16, 0.222, 0.012, 0.06],
  [0.045, 0.212, 0.232, 0.03, 0.1],
  [0.16, 0.222, 0.24, 0.05, 0.12],
  [0.32, 0.198, 0.244, 0.062, 0.13],
  [0.42, 0.21, 0.244, 0.07, 0.13],
  [0.475, 0.3, 0.248, 0.082, 0.11],
  [0.522, 0.45, 0.255, 0.088, 0.1],
  [0.56, 0.585, 0.246, 0.062, 0.09],
  [0.583, 0.665, 0.2, 0.026, 0.08],
  [0.597, 0.72, 0.142, 0.012, 0.07],
  [0.612, 0.785, 0.126, 0.01, 0.06],
  [0.628, 0.825, 0.104, 0.006, 0.05],
  [0.648, 0.842, 0.06, 0, 0.03],
] as const;
const line = (column: 0 | 1 | 2 | 3 | 4) =>
  curveThrough(stations.map((row, k) => [k, row[column]]));
const [back, rise, width, bolster, padding] = [line(0), line(1), line(2), line(3), line(4)];
const headRest = 9.4;
const top = stations.length - 1;

/** Seat point: `at` up the seat (station count), `x` out, `proud` off the insert's surface. */
export function seatPoint(at: number, x: number, proud: number): Vector3 {
  return add([x, rise(at), -back(at)], scale(seatNormal(at), proud));
}
function seatNormal(at: number): Vector3 {
  const low = Math.max(0, at - 0.2);
  const high = Math.min(top, at + 0.2);
  return normalize([0, back(high) - back(low), rise(high) - rise(low)]);
}

// Half a section, middle to back: five pleats, the bead of piping, a round bolster, the shell.
const pleats = [0, 0.07, 0.14, 0.21, 0.28, 0.35, 0.42, 0.5] as const;
const pleatHigh = [0.008, 0.0075, 0, 0.0075, 0.0075, 0, 0.0075, 0.003] as const;
const insertColumns = pleats.length - 1;
const pipingColumns = 3;
function section(at: number): Vector3[] {
  const half = width(at);
  const [raised, deep] = [bolster(at), padding(at)];
  // Pleats run out below the head rest.
  const flat = clamp((headRest - 0.4 - at) / 0.7, 0.1, 1);
  const edge = 0.5 * half;
  return [
    ...pleats.map((share, k) => seatPoint(at, share * half, pleatHigh[k]! * flat)),
    seatPoint(at, edge + 0.003, 0.012),
    seatPoint(at, edge + 0.0083, 0.012),
    seatPoint(at, edge + 0.0115, 0.004),
    seatPoint(at, 0.63 * half, raised * 0.52 + 0.008),
    seatPoint(at, 0.72 * half, raised * 0.9 + 0.009),
    seatPoint(at, 0.82 * half, raised + 0.01),
    seatPoint(at, 0.91 * half, raised * 0.92 + 0.002),
    seatPoint(at, 0.975 * half, raised * 0.62),
    seatPoint(at, half, raised * 0.15 - 0.006),
    seatPoint(at, 0.94 * half, -deep * 0.85),
    seatPoint(at, 0, -deep),
  ];
}

/** How proud the seat's surface is at a distance from its middle, without pleats. */
function proudAt(at: number, x: number): number {
  const half = width(at);
  const raised = bolster(at);
  return curveThrough([
    [0, 0.008],
    [0.53 * half, 0.0125],
    [0.63 * half, raised * 0.52 + 0.008],
    [0.72 * half, raised * 0.9 + 0.009],
    [0.82 * half, raised + 0.01],
    [0.91 * half, raised * 0.92 + 0.002],
    [0.975 * half, raised * 0.62],
    [half, raised * 0.15 - 0.006],
  ])(x);
}

function shell(): Solid {
  const solid = new Solid(48);
  // Closer together where the cushion turns up into the back and over the head rest.
  const heights = [
    0,
    0.6,
    1.1,
    1.6,
    2.1,
    2.8,
    3.6,
    4.3,
    4.8,
    5.2,
    5.6,
    6.1,
    6.8,
    7.6,
    8.3,
    8.8,
    9.2,
    9.7,
    10.3,
    11,
    11.7,
    12.4,
    top,
  ];
  const steps = heights.length - 1;
  const part = (row: number, column: number): string => {
    if (column >= insertColumns && column < insertColumns + pipingColumns) return 'seat-piping';
    if (column > insertColumns) return 'seat-bolsters';
    return heights[row]! >= headRest - 0.5 ? 'seat-bolsters' : 'seat-inserts';
  };
  const rows = heights.map(section);
  solid.grid(part, rows);
  solid.fan('seat-bolsters', rows[0]!).fan('seat-bolsters', [...rows[steps]!].reverse());
  return solid.closedFrom(0).mirrored();
}

function harness(): Solid {
  // Under 45°, at which a bevel meets its face.
  const solid = new Solid(40);
  const belt = (path: [at: number, x: number, proud: number][], belted: number): void => {
    const points = path.map((place) => seatPoint(...place));
    strap(
      solid,
      'belts',
      points,
      path.map(([at]) => seatNormal(at)),
      belted,
      0.004,
    );
  };
  const buckle = (at: number, x: number, proud: number, half: Vector3): void => {
    const centre = seatPoint(at, x, proud);
    const out = seatNormal(at);
    const along = cross(out, [1, 0, 0]);
    const one = new Solid(30);
    box(one, 'buckles', [0, 0, 0], half, Math.min(...half) * 0.45);
    solid.join(one, ([a, b, c]) =>
      add(centre, add([a, 0, 0], add(scale(along, b), scale(out, c)))),
    );
  };
  for (const side of [1, -1]) {
    // Shoulder belt: out of its slot below the head rest, over the back, in to the lap.
    belt(
      [
        [9.35, side * 0.088, -0.02],
        [9.2, side * 0.088, 0.006],
        [8.9, side * 0.087, 0.013],
        [8.2, side * 0.084, 0.013],
        [7.4, side * 0.08, 0.013],
        [6.6, side * 0.073, 0.015],
        [5.9, side * 0.062, 0.022],
        [5.3, side * 0.05, 0.03],
        [4.75, side * 0.034, 0.03],
      ],
      0.046,
    );
    buckle(7.1, side * 0.078, 0.02, [0.031, 0.024, 0.0065]);
    // Lap belt: out of the side, over the bolster and across the cushion to the middle.
    const lap = [
      [5.05, 0.247],
      [5.02, 0.238],
      [4.97, 0.222],
      [4.9, 0.2],
      [4.82, 0.176],
      [4.74, 0.15],
      [4.66, 0.118],
      [4.56, 0.07],
      [4.5, 0.024],
    ].map(([at, x]) => [at!, side * x!, proudAt(at!, x!) + 0.006] as const);
    const path = lap.map((place) => seatPoint(...place));
    const flat = lap.map(([at, x, proud], k): Vector3 => {
      const ahead = subtract(path[Math.min(8, k + 1)]!, path[Math.max(0, k - 1)]!);
      const up = subtract(seatPoint(at + 0.1, x, proud), seatPoint(at - 0.1, x, proud));
      const over = normalize(cross(ahead, up));
      return scale(over, dot(over, seatNormal(at)) < 0 ? -1 : 1);
    });
    strap(solid, 'belts', path, flat, 0.04, 0.004);
  }
  belt(
    [
      [4.5, 0, 0.02],
      [3.8, 0, 0.013],
      [3.1, 0, 0.012],
      [2.6, 0, 0.004],
    ],
    0.034,
  );
  buckle(4.5, 0, 0.036, [0.033, 0.033, 0.011]);
  return solid;
}

/** The seat and its harness, as separate solids so that belts keep their own edges. */
export const seat = (): Solid[] => [shell(), harness()];
