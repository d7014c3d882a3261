/**
 * The cabin below the opening's edge: floor, tunnel, bulkhead, door furniture, gear lever,
 * handbrake and pedals. Left-hand drive. Metres, car coordinates; left and right alike except
 * for the pedals. Our own judgement throughout.
 */
import type { Vector3 } from '../../src/ground/vector.ts';
import { box } from '../mesh/box.ts';
import { Solid } from '../mesh/solid.ts';
import { lathe, tube } from '../mesh/sweep.ts';
import { placed } from './lines.ts';

export const floorHeight = 0.205;
export const seatPlace = { station: 2.1, x: 0.345 } as const;

function tunnel(): Solid {
  const solid = new Solid(32);
  // Station, half width, height of the console.
  const sections = [
    [1.3, 0.14, 0.6],
    [1.62, 0.13, 0.585],
    [1.82, 0.115, 0.53],
    [1.94, 0.105, 0.475],
    [2.15, 0.1, 0.455],
    [2.4, 0.1, 0.455],
    [2.58, 0.105, 0.5],
    [2.78, 0.115, 0.54],
  ] as const;
  const rows = sections.map(([station, half, high]) => {
    const left: Vector3[] = [
      placed(station, floorHeight, half + 0.03),
      placed(station, high - 0.07, half + 0.008),
      placed(station, high - 0.02, half),
      placed(station, high, half - 0.022),
      placed(station, high - 0.004, half - 0.03),
    ];
    return [...left, ...[...left].reverse().map(([x, y, z]): Vector3 => [-x, y, z])];
  });
  solid.grid((_, column) => (column === 0 || column === 8 ? 'carpet' : 'tub'), rows);
  return solid.facingFrom(0, ([x, y, z]) => [x * 9, y + 1, z]);
}

// The console falls away towards the seats; this follows it: x right, y forward along it, z up.
function onConsole([x, y, z]: Vector3): Vector3 {
  const fall = 0.095;
  return placed(2.03 - y + z * fall, 0.4668 + y * fall + z, -x);
}

// An open gate: a bright bevelled plate with five slots, the lever standing in the middle one.
function gearLever(): Solid {
  const solid = new Solid(40);
  const gate = new Solid(30);
  box(gate, 'gear-lever', [0, 0, 0], [0.06, 0.074, 0.005], 0.002);
  const slot = (x: number, y: number, halfX: number, halfY: number): void => {
    const z = 0.0056;
    gate.quad(
      'carpet',
      [x - halfX, y - halfY, z],
      [x + halfX, y - halfY, z],
      [x + halfX, y + halfY, z],
      [x - halfX, y + halfY, z],
    );
  };
  for (const x of [-0.034, 0, 0.034]) slot(x, 0, 0.0065, 0.056);
  slot(-0.017, 0, 0.0105, 0.0065);
  slot(0.017, 0, 0.0105, 0.0065);
  for (const x of [-0.05, 0.05]) {
    for (const y of [-0.064, 0.064]) {
      const screw = new Solid(30);
      lathe(
        screw,
        'carpet',
        [
          [0.0045, 0.0045],
          [0.003, 0.0075],
          [0, 0.008],
        ],
        6,
      );
      gate.join(screw, ([a, b, c]) => [a + x, b + y, c]);
    }
  }
  gate.facingFrom(0, ([x, y, z]) => (z > 0.0045 ? [x, y, z + 1] : [x * 9, y * 9, z]));
  solid.join(gate, onConsole);
  const lever = new Solid(40);
  lathe(
    lever,
    'gear-lever',
    [
      [0.0115, 0.004],
      [0.009, 0.02],
      [0.0065, 0.03],
      [0.006, 0.098],
      [0.013, 0.103],
      [0.021, 0.112],
      [0.0245, 0.126],
      [0.021, 0.14],
      [0.012, 0.1485],
      [0, 0.151],
    ],
    13,
  );
  solid.join(lever, ([x, y, z]) => onConsole([x, y - 0.02 - z * 0.12, z]));
  tube(
    solid,
    'tub',
    [placed(2.46, 0.46, 0.06), placed(2.33, 0.5, 0.06), placed(2.23, 0.525, 0.06)],
    { radius: 0.013, sides: 8, up: [1, 0, 0] },
  );
  tube(solid, 'gear-lever', [placed(2.232, 0.5245, 0.06), placed(2.215, 0.529, 0.06)], {
    radius: 0.0085,
    sides: 8,
    up: [1, 0, 0],
  });
  return solid;
}

function doors(): Solid {
  const solid = new Solid(40);
  // Arm rest, grab handle and a map pocket on each door card.
  const rest = [1.84, 1.95, 2.2, 2.42, 2.52].map((station, k): Vector3[] => {
    const out = [0.606, 0.56, 0.548, 0.56, 0.61][k]!;
    const high = [0.575, 0.59, 0.592, 0.586, 0.578][k]!;
    return [
      placed(station, high + 0.012, 0.628),
      placed(station, high, out),
      placed(station, high - 0.03, out + 0.004),
      placed(station, high - 0.06, 0.625),
    ];
  });
  solid.grid('tub', rest);
  solid.facingFrom(0, ([x, y, z]) => [x - 1, y, z]);
  const from = solid.triangles.length;
  tube(
    solid,
    'door-handles',
    [
      placed(1.9, 0.665, 0.622),
      placed(1.915, 0.668, 0.598),
      placed(2.02, 0.67, 0.594),
      placed(2.035, 0.669, 0.62),
    ],
    { radius: 0.0075, sides: 6, up: [0, 1, 0] },
  );
  solid.closedFrom(from);
  box(solid, 'tub', placed(2.06, 0.36, 0.612), [0.016, 0.075, 0.2], 0.01);
  return solid;
}

function pedals(): Solid {
  const solid = new Solid(30);
  for (const [x, y, half, high] of [
    [0.43, 0.37, 0.034, 0.03],
    [0.33, 0.375, 0.034, 0.03],
    [0.235, 0.345, 0.022, 0.062],
  ] as const) {
    const pad = new Solid(30);
    box(pad, 'pedals', [0, 0, 0], [half, high, 0.007], 0);
    for (const rib of [-0.5, 0, 0.5]) {
      box(pad, 'carpet', [0, rib * high, -0.008], [half * 0.75, high * 0.12, 0.002], 0);
    }
    const lean = 0.45;
    solid.join(pad, ([a, b, c]) =>
      placed(
        1.47 - b * Math.sin(lean) - c * Math.cos(lean),
        y + b * Math.cos(lean) - c * Math.sin(lean),
        x + a,
      ),
    );
    tube(solid, 'pedals', [placed(1.46, y, x), placed(1.4, y + 0.09, x), placed(1.36, 0.56, x)], {
      radius: 0.008,
      sides: 6,
      up: [1, 0, 0],
    });
  }
  // Foot rest.
  box(solid, 'pedals', placed(1.45, 0.29, 0.53), [0.03, 0.075, 0.012], 0);
  return solid;
}

/** What the left door card carries. */
export const cabinLeft = (): Solid[] => [doors()];

/** The rest of the cabin except dashboard and seats. */
export function cabinMiddle(): Solid[] {
  const floor = new Solid(30);
  floor.quad(
    'carpet',
    placed(1.2, floorHeight, -0.64),
    placed(2.86, floorHeight, -0.64),
    placed(2.86, floorHeight, 0.64),
    placed(1.2, floorHeight, 0.64),
  );
  floor.facingFrom(0, ([x, y, z]) => [x, y + 1, z]);
  return [floor, tunnel(), gearLever(), pedals()];
}
