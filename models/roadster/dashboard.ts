/**
 * The dashboard: a padded top, a fascia with two large dials ahead of the driver and three small
 * ones in the middle, vents, switches, glove box and the steering wheel. Left-hand drive. Metres,
 * car coordinates. Dials carry ticks and a needle thick enough to show at 1:24. Our own judgement.
 */
import {
  add,
  cross,
  interpolate3,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../src/ground/vector.ts';
import { Solid } from '../mesh/solid.ts';
import { lathe, tube } from '../mesh/sweep.ts';
import { placed } from './lines.ts';
import { skinAbove } from './surface.ts';

export const driverX = 0.345;
const bell = (x: number): number => Math.exp(-(x ** 4));

// Side profile from the screen over the pad, down the fascia and under the knee roll.
const profile = [
  [1.575, 0.866],
  [1.7, 0.882],
  [1.78, 0.886],
  [1.815, 0.879],
  [1.826, 0.866],
  [1.818, 0.854],
  [1.8, 0.848],
  [1.826, 0.722],
  [1.84, 0.704],
  [1.832, 0.672],
  [1.8, 0.652],
  [1.6, 0.63],
] as const;
const fasciaTop = 6;
const partsDown = [...Array<string>(fasciaTop).fill('dash-top'), 'dashboard'];

/** A point of the dashboard's surface; `k` counts the profile's points. */
function dashPoint(k: number, x: number): Vector3 {
  const [station, y] = profile[k]!;
  const share = (x / 0.64) ** 2;
  const hood = bell((x - driverX) / 0.2);
  const isPad = k >= 1 && k < fasciaTop;
  const isEdge = k === fasciaTop;
  const at = station + 0.04 * share + (isPad ? 0.036 * hood : 0);
  const high = y - (k <= fasciaTop ? 0.055 : 0.02) * share + (isPad || isEdge ? 0.032 * hood : 0);
  // Beyond the opening the pad stays under the skin.
  const roof = Math.abs(x) > 0.55 && k < 4 ? skinAbove(at, Math.abs(x))[1] - 0.016 : high;
  return placed(at, Math.min(high, roof), x);
}

function fascia(): Solid {
  const solid = new Solid(38);
  const xs = [
    -0.64, -0.6, -0.5, -0.38, -0.25, -0.12, 0, 0.07, 0.115, 0.15, 0.19, 0.24, 0.3, 0.345, 0.39,
    0.45, 0.5, 0.54, 0.575, 0.61, 0.64,
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

/** A place on the fascia at a share 0 (top) to 1 (foot) of its height, flush with it. */
function onFascia(x: number, down: number): Place {
  const at = (across: number): Vector3 =>
    interpolate3(dashPoint(fasciaTop, across), dashPoint(fasciaTop + 1, across), down);
  const on = at(x);
  const up = normalize(subtract(dashPoint(fasciaTop, x), dashPoint(fasciaTop + 1, x)));
  const right = normalize(subtract(at(x - 0.02), at(x + 0.02)));
  const out = cross(right, up);
  return ([a, b, d]) => add(on, add(add(scale(right, a), scale(up, b)), scale(out, d)));
}

function dial(solid: Solid, place: Place, radius: number, reading: number): void {
  const isLarge = radius > 0.05;
  const one = new Solid(40);
  lathe(
    one,
    (ring) => (ring < 2 ? 'badge-rims' : 'gauges'),
    [
      [radius, -0.002],
      [radius * 0.95, 0.0115],
      [radius * 0.88, 0.004],
      [0, 0.004],
    ],
    isLarge ? 26 : 18,
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
  const [start, sweep, steps] = [3.93, 4.71, isLarge ? 16 : 8];
  for (let k = 0; k <= steps; k++) {
    const isLong = k % 2 === 0;
    const half = isLong ? 0.034 : 0.018;
    hand(start - (sweep * k) / steps, isLong ? 0.62 : 0.71, 0.82, half, 0.0052);
  }
  hand(start - reading * sweep, -0.2, 0.7, 0.04, 0.0085);
  lathe(
    one,
    'dash-top',
    [
      [radius * 0.16, 0.0045],
      [radius * 0.13, 0.0105],
      [0, 0.0115],
    ],
    10,
  );
  solid.join(one, place);
}

// A louvre of a vent: two faces to a ridge.
function bar(solid: Solid, y: number, half: number): void {
  const at = (x: number, up: number, z: number): Vector3 => [x, y + up, z];
  solid.grid('badge-rims', [
    [at(-half, -0.002, 0.001), at(-half, 0, 0.005), at(-half, 0.002, 0.001)],
    [at(half, -0.002, 0.001), at(half, 0, 0.005), at(half, 0.002, 0.001)],
  ]);
}

function instruments(): Solid {
  const solid = new Solid(40);
  dial(solid, onFascia(driverX + 0.069, 0.5), 0.06, 0.3);
  dial(solid, onFascia(driverX - 0.069, 0.5), 0.06, 0.55);
  [0.105, 0.015, -0.075].forEach((x, k) => {
    dial(solid, onFascia(x, 0.37), 0.037, [0.5, 0.62, 0.4][k]!);
  });
  for (const x of [-0.56, -0.19, 0.575]) {
    const vent = new Solid(40);
    lathe(
      vent,
      (ring) => (ring < 2 ? 'badge-rims' : 'dash-top'),
      [
        [0.036, -0.002],
        [0.033, 0.009],
        [0.029, 0.005],
        [0, -0.004],
      ],
      14,
    );
    for (const [y, half] of [
      [-0.012, 0.025],
      [0, 0.028],
      [0.012, 0.025],
    ] as const)
      bar(vent, y, half);
    solid.join(vent, onFascia(x, 0.42));
  }
  // A row of toggles under the small dials.
  for (const x of [-0.06, -0.03, 0, 0.03, 0.06, 0.09]) {
    const toggle = new Solid(30);
    lathe(
      toggle,
      'badge-rims',
      [
        [0.009, 0],
        [0.0045, 0.004],
        [0.004, 0.018],
        [0, 0.02],
      ],
      4,
    );
    solid.join(toggle, onFascia(x, 0.82));
  }
  // Glove box: a dark line around its lid, and a knob.
  const lid: Vector3[] = [
    [-0.265, 0.14],
    [-0.48, 0.14],
    [-0.49, 0.2],
    [-0.48, 0.86],
    [-0.47, 0.9],
    [-0.275, 0.9],
    [-0.255, 0.86],
    [-0.255, 0.2],
  ].map(([x, down]) => onFascia(x!, down!)([0, 0, 0.0005]));
  tube(solid, 'dash-top', lid, { radius: 0.0028, sides: 4, isClosed: true, up: [0, 0, 1] });
  const knob = new Solid(40);
  lathe(
    knob,
    'badge-rims',
    [
      [0.009, -0.002],
      [0.006, 0.005],
      [0.0095, 0.01],
      [0.006, 0.015],
      [0, 0.0155],
    ],
    10,
  );
  return solid.join(knob, onFascia(-0.37, 0.28));
}

function steeringWheel(): Solid {
  const solid = new Solid(45);
  const one = new Solid(45);
  const ring = Array.from({ length: 28 }, (_, k): Vector3 => {
    const angle = (k / 28) * 2 * Math.PI;
    return [0.172 * Math.cos(angle), 0.172 * Math.sin(angle), 0];
  });
  const from = one.triangles.length;
  tube(one, 'steering-wheel', ring, { radius: 0.0155, sides: 6, isClosed: true });
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
    14,
  );
  return solid.join(one, facing(2.01, 0.792, driverX, 0.36));
}

/** Dashboard, instruments and steering wheel. */
export const dashboard = (): Solid[] => [fascia(), instruments(), steeringWheel()];
