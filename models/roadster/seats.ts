/**
 * One seat with its harness, modelled once and placed twice: pleated insert, a bead of piping,
 * side bolsters and head rest in one loft; shoulder, lap and crotch belts with their buckles.
 * Metres, seat coordinates: x left, y up from the floor, z forward, origin under the backrest's
 * foot. Shoulder belts 46 mm and lap belts 40 mm wide are harness sizes (common practice, no
 * source); the shape is our own judgement.
 */
import { add, cross, normalize, scale, subtract, type Vector3 } from '../../src/ground/vector.ts';
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

// Half a section, middle to back: share of the half width, how proud, and the part outside it.
const across = [0, 0.13, 0.26, 0.39, 0.5] as const;
const partsAcross = [
  'seat-inserts',
  'seat-inserts',
  'seat-inserts',
  'seat-inserts',
  'seat-piping',
  'seat-piping',
];
function section(at: number): Vector3[] {
  const half = width(at);
  const [raised, deep] = [bolster(at), padding(at)];
  const pleat = [0.007, 0, 0.007, 0, 0.006].map((height) => height * (at < headRest ? 1 : 0.3));
  return [
    ...across.map((share, k) => seatPoint(at, share * half, pleat[k]!)),
    seatPoint(at, 0.5 * half + 0.006, 0.014),
    seatPoint(at, 0.5 * half + 0.012, 0.007),
    seatPoint(at, 0.68 * half, raised * 0.82 + 0.006),
    seatPoint(at, 0.82 * half, raised + 0.006),
    seatPoint(at, 0.94 * half, raised * 0.8),
    seatPoint(at, half, raised * 0.25),
    seatPoint(at, 0.96 * half, -deep * 0.8),
    seatPoint(at, 0.78 * half, -deep),
    seatPoint(at, 0, -deep),
  ];
}

function shell(): Solid {
  const solid = new Solid(40);
  const steps = 17;
  const heights = Array.from({ length: steps + 1 }, (_, k) => (top * k) / steps);
  const part = (row: number, column: number): string => {
    const name = partsAcross[column] ?? 'seat-bolsters';
    return name === 'seat-inserts' && heights[row]! >= headRest - 0.5 ? 'seat-bolsters' : name;
  };
  const rows = heights.map(section);
  solid.grid(part, rows);
  solid.fan('seat-bolsters', rows[0]!).fan('seat-bolsters', [...rows[steps]!].reverse());
  return solid.closedFrom(0).mirrored();
}

function harness(): Solid {
  const solid = new Solid(45);
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
    // Lap belt: over the bolster, down to the middle.
    const lap: Vector3[] = [
      seatPoint(4.9, side * 0.247, 0.03),
      seatPoint(4.9, side * 0.225, 0.078),
      seatPoint(4.75, side * 0.195, 0.078),
      seatPoint(4.6, side * 0.15, 0.05),
      seatPoint(4.5, side * 0.1, 0.028),
      seatPoint(4.45, side * 0.03, 0.026),
    ];
    const leaning = lap.map((_, k): Vector3 => {
      const ahead = normalize(subtract(lap[Math.min(5, k + 1)]!, lap[Math.max(0, k - 1)]!));
      const over = cross([0, 0.25, 1], ahead);
      return normalize(scale(over, over[1] < 0 ? -1 : 1));
    });
    strap(solid, 'belts', lap, leaning, 0.04, 0.004);
  }
  belt(
    [
      [4.5, 0, 0.02],
      [3.8, 0, 0.013],
      [3.1, 0, 0.012],
      [2.6, 0, 0.004],
    ],
    0.04,
  );
  buckle(4.5, 0, 0.036, [0.033, 0.033, 0.011]);
  return solid;
}

/** The seat and its harness, as separate solids so that belts keep their own edges. */
export const seat = (): Solid[] => [shell(), harness()];
