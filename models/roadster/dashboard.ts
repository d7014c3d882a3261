/**
 * The dashboard: a padded top, a fascia with two large dials ahead of the driver and three small
 * ones in the middle, vents, switches, glove box and the steering wheel. Left-hand drive. Metres,
 * car coordinates. Dials carry ticks and a needle thick enough to show at 1:24. Our own judgement.
 */
import type { Vector3 } from '../../src/ground/vector.ts';
import { box } from '../mesh/box.ts';
import { Solid } from '../mesh/solid.ts';
import { lathe, tube } from '../mesh/sweep.ts';
import { placed } from './lines.ts';

export const driverX = 0.345;
const bell = (x: number): number => Math.exp(-(x ** 4));

// Side profile from the screen over the pad, down the fascia and under the knee roll.
const profile = [
  [1.59, 0.855],
  [1.7, 0.884],
  [1.79, 0.886],
  [1.83, 0.874],
  [1.838, 0.858],
  [1.815, 0.845],
  [1.802, 0.72],
  [1.815, 0.705],
  [1.81, 0.672],
  [1.78, 0.652],
  [1.6, 0.63],
] as const;
const partsDown = ['dash-top', 'dash-top', 'dash-top', 'dash-top', 'dash-top', 'dashboard'];

/** A point of the dashboard's surface; `k` counts the profile's points. */
function dashPoint(k: number, x: number): Vector3 {
  const [station, y] = profile[k]!;
  const share = (x / 0.64) ** 2;
  const hood = bell((x - driverX) / 0.2);
  const isPad = k >= 1 && k <= 5;
  return placed(
    station + 0.04 * share + (isPad ? 0.03 * hood : 0) - (k === 6 ? 0 : 0),
    y - (k < 7 ? 0.055 : 0.02) * share + (isPad ? 0.032 * hood : 0),
    x,
  );
}

function fascia(): Solid {
  const solid = new Solid(32);
  const xs = [
    -0.64, -0.6, -0.5, -0.38, -0.25, -0.12, 0, 0.08, 0.14, 0.19, 0.25, 0.345, 0.44, 0.5, 0.55, 0.6,
    0.64,
  ];
  const rows = xs.map((x) => profile.map((_, k) => dashPoint(k, x)));
  solid.grid((_, column) => partsDown[column] ?? 'tub', rows);
  return solid.facingFrom(0, ([x, y, z]) => [x, y + (y > 0.8 ? 1 : y < 0.66 ? -1 : 0), z - 1]);
}

type Place = (p: Vector3) => Vector3;
/** Local +z looks back at the driver, slightly up; local x runs to the car's right. */
function facing(station: number, y: number, x: number, lean = 0.12): Place {
  const [c, s] = [Math.cos(lean), Math.sin(lean)];
  return ([a, b, d]) => placed(station + d * c - b * s, y + b * c + d * s, x - a);
}

function dial(solid: Solid, place: Place, radius: number, reading: number): void {
  const one = new Solid(40);
  lathe(
    one,
    (ring) => (ring < 2 ? 'badge-rims' : 'gauges'),
    [
      [radius, -0.006],
      [radius * 0.94, 0.011],
      [radius * 0.86, 0.002],
      [0, 0.002],
    ],
    radius > 0.05 ? 18 : 14,
  );
  const hand = (angle: number, from: number, to: number, half: number, height: number): void => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const at = (along: number, across: number): Vector3 => [
      radius * (along * c - across * s),
      radius * (along * s + across * c),
      height,
    ];
    one.quad('dash-top', at(from, -half), at(to, -half), at(to, half), at(from, half));
  };
  for (let k = 0; k <= 8; k++) hand(3.93 - k * 0.589, 0.6, 0.8, 0.035, 0.0035);
  hand(3.93 - reading * 4.71, -0.15, 0.66, 0.045, 0.0055);
  lathe(
    one,
    'dash-top',
    [
      [radius * 0.15, 0.003],
      [0, 0.008],
    ],
    6,
  );
  solid.join(one, place);
}

function instruments(): Solid {
  const solid = new Solid(40);
  dial(solid, facing(1.838, 0.806, driverX + 0.072), 0.056, 0.3);
  dial(solid, facing(1.838, 0.806, driverX - 0.072), 0.056, 0.55);
  [0.095, 0, -0.095].forEach((x, k) => {
    dial(solid, facing(1.809, 0.795, x), 0.034, [0.5, 0.62, 0.4][k]!);
  });
  for (const x of [-0.55, -0.21, 0.575]) {
    const vent = new Solid(40);
    lathe(
      vent,
      (ring) => (ring < 2 ? 'badge-rims' : 'dash-top'),
      [
        [0.034, -0.01],
        [0.033, 0.008],
        [0.028, 0.004],
        [0, -0.004],
      ],
      12,
    );
    for (const y of [-0.012, 0, 0.012])
      box(vent, 'badge-rims', [0, y, 0.002], [0.024, 0.0018, 0.002], 0);
    const bow = 0.04 * (x / 0.64) ** 2;
    solid.join(vent, facing(1.812 + bow, 0.79 - bow, x));
  }
  // A row of toggles under the small dials.
  for (const x of [-0.09, -0.054, -0.018, 0.018, 0.054, 0.09]) {
    const toggle = new Solid(30);
    lathe(
      toggle,
      'badge-rims',
      [
        [0.009, -0.002],
        [0.004, 0.004],
        [0.0035, 0.019],
        [0, 0.02],
      ],
      4,
    );
    solid.join(toggle, facing(1.803, 0.735, x, -0.2));
  }
  // Glove box: a dark line around its lid, and a knob.
  const lid: Vector3[] = [];
  for (const [x, y] of [
    [-0.28, 0.835],
    [-0.47, 0.822],
    [-0.47, 0.732],
    [-0.28, 0.736],
  ] as const) {
    lid.push(placed(1.808 + 0.04 * (x / 0.64) ** 2 + (0.845 - y) * -0.08, y, x));
  }
  tube(solid, 'dash-top', lid, { radius: 0.0035, sides: 4, isClosed: true, up: [0, 0, 1] });
  return solid;
}

function steeringWheel(): Solid {
  const solid = new Solid(45);
  const one = new Solid(45);
  const ring = Array.from({ length: 22 }, (_, k): Vector3 => {
    const angle = (k / 22) * 2 * Math.PI;
    return [0.172 * Math.cos(angle), 0.172 * Math.sin(angle), 0];
  });
  const from = one.triangles.length;
  tube(one, 'steering-wheel', ring, { radius: 0.0155, sides: 5, isClosed: true });
  one.closedFrom(from);
  for (const angle of [-0.12, Math.PI + 0.12, -Math.PI / 2]) {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const rows = [
      [0.03, 0.026, -0.035],
      [0.08, 0.02, -0.03],
      [0.13, 0.016, -0.014],
      [0.166, 0.019, -0.002],
    ].map(([radius, half, z]) =>
      [
        [-1, 0.0035],
        [1, 0.0035],
        [1, -0.0035],
        [-1, -0.0035],
      ].map(([side, deep]): Vector3 => {
        const across = side! * half!;
        return [radius! * c - across * s, radius! * s + across * c, z! + deep!];
      }),
    );
    const start = one.triangles.length;
    one.grid('steering-wheel', rows, { columns: true });
    one.closedFrom(start);
  }
  lathe(
    one,
    (step) => (step < 5 ? 'steering-wheel' : step === 5 ? 'badge-rims' : 'badges'),
    [
      [0.03, -0.22],
      [0.034, -0.06],
      [0.056, -0.05],
      [0.056, -0.03],
      [0.046, -0.02],
      [0.024, -0.019],
      [0.022, -0.016],
      [0, -0.015],
    ],
    16,
  );
  return solid.join(one, facing(2.01, 0.792, driverX, 0.36));
}

/** Dashboard, instruments and steering wheel. */
export const dashboard = (): Solid[] => [fascia(), instruments(), steeringWheel()];
