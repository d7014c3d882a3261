/**
 * The cabin below the opening's edge: floor, tunnel, bulkhead, door furniture, gear lever,
 * handbrake and pedals. Left-hand drive. Metres, car coordinates; left and right alike except
 * for the pedals. Our own judgement throughout.
 */
import { add, type Vector3 } from '../../src/ground/vector.ts';
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

function gearLever(): Solid {
  const solid = new Solid(40);
  const place = (p: Vector3): Vector3 => placed(2.03 - p[0] * 0 - p[2] * 0.12, 0.462 + p[2], p[0]);
  const lever = new Solid(40);
  lathe(
    lever,
    (ring) => (ring < 3 ? 'tub' : 'gear-lever'),
    [
      [0.05, 0],
      [0.047, 0.012],
      [0.026, 0.05],
      [0.0085, 0.072],
      [0.0075, 0.135],
      [0.02, 0.145],
      [0.0265, 0.163],
      [0.022, 0.182],
      [0.01, 0.191],
      [0, 0.192],
    ],
    12,
  );
  solid.join(lever, (p) => add(place(p), [0, 0, p[1]]));
  // The gate: a plate with a bright border under the boot.
  box(solid, 'gear-lever', placed(2.03, 0.462, 0), [0.066, 0.004, 0.085], 0);
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
  return solid.mirrored();
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

/** Everything of the cabin except dashboard and seats. */
export function cabin(): Solid[] {
  const floor = new Solid(30);
  floor.quad(
    'carpet',
    placed(1.2, floorHeight, -0.64),
    placed(2.86, floorHeight, -0.64),
    placed(2.86, floorHeight, 0.64),
    placed(1.2, floorHeight, 0.64),
  );
  floor.facingFrom(0, ([x, y, z]) => [x, y + 1, z]);
  return [floor, tunnel(), gearLever(), doors(), pedals()];
}
