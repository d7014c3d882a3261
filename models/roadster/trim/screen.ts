/**
 * Windscreen, its frame, the wipers at rest, door and cabin mirrors. Metres, car coordinates.
 * The glass is a single bowed sheet; the frame runs round its edge. Our own judgement.
 */
import {
  add,
  cross,
  interpolate3,
  normalize,
  scale,
  type Vector3,
} from '../../../src/ground/vector.ts';
import { box } from '../../mesh/box.ts';
import { Solid } from '../../mesh/solid.ts';
import { tube } from '../../mesh/sweep.ts';
import { placed } from '../lines.ts';
import { skinAbove } from '../surface.ts';

const steps = 12;
const baseHalf = 0.655;
const topHalf = 0.56;

/** The glass at a share −1 to 1 across and 0 (base) to 1 (top) up. */
function glassPoint(across: number, up: number): Vector3 {
  const bow = across * across;
  const base: Vector3 = (() => {
    const station = 1.505 + 0.15 * bow + 0.04 * bow ** 3;
    const x = baseHalf * across;
    return placed(station, skinAbove(station, x)[1] - 0.002, x);
  })();
  const head = placed(1.935 + 0.075 * bow, 1.135 - 0.022 * bow, topHalf * across);
  return add(interpolate3(base, head, up), scale([0, 0.55, 0.8], 0.028 * up * (1 - up) * 2));
}

function glass(): Solid {
  const solid = new Solid(60);
  const rows = [0, 0.33, 0.67, 1].map((up) =>
    Array.from({ length: steps + 1 }, (_, k) => glassPoint((2 * k) / steps - 1, up)),
  );
  solid.grid('windscreen', rows);
  return solid.facingFrom(0, ([x, y, z]) => [x, y + 1, z + 2]);
}

function frame(): Solid {
  const solid = new Solid(45);
  const shares = Array.from({ length: steps + 1 }, (_, k) => (2 * k) / steps - 1);
  const loop = [
    ...shares.map((share) => glassPoint(share, 0)),
    glassPoint(1, 0.35),
    glassPoint(1, 0.7),
    ...[...shares].reverse().map((share) => glassPoint(share, 1)),
    glassPoint(-1, 0.7),
    glassPoint(-1, 0.35),
  ];
  const from = solid.triangles.length;
  tube(solid, 'windscreen-frame', loop, {
    radius: 0.012,
    height: 0.015,
    sides: 4,
    isClosed: true,
    up: [0, 0.75, 0.65],
  });
  solid.closedFrom(from);
  return solid;
}

function cabinMirror(): Solid {
  const solid = new Solid(40);
  // Cabin mirror: a rounded case hung from the header, glass to the driver.
  tube(
    solid,
    'windscreen-frame',
    [glassPoint(0, 0.97), add(glassPoint(0, 0.84), [0, -0.005, -0.04])],
    {
      radius: 0.006,
      sides: 6,
      up: [1, 0, 0],
    },
  );
  const hung = add(glassPoint(0, 0.84), [0, -0.02, -0.05]);
  box(solid, 'windscreen-frame', hung, [0.1, 0.03, 0.013], 0.009);
  box(solid, 'mirror-glass', add(hung, [0, 0, -0.0125]), [0.092, 0.023, 0.0015], 0);
  return solid;
}

function wipers(): Solid {
  const solid = new Solid(40);
  for (const [pivot, tip] of [
    [0.44, -0.04],
    [-0.06, -0.54],
  ] as const) {
    const on = (x: number, up: number, lift: number): Vector3 =>
      add(glassPoint(x / baseHalf, up), scale([0, 0.62, 0.78], lift));
    const arm = [on(pivot, 0.02, 0.014), on((pivot + tip) / 2 + 0.04, 0.075, 0.03)];
    tube(solid, 'wipers', arm, { radius: 0.006, sides: 5 });
    const blade = [0, 0.33, 0.67, 1].map((share) =>
      on(pivot + 0.04 + (tip - pivot) * share, 0.07 + 0.03 * share, 0.013),
    );
    tube(solid, 'wipers', blade, { radius: 0.0055, sides: 5 });
  }
  return solid;
}

function doorMirrors(): Solid {
  const solid = new Solid(50);
  const centre = placed(1.73, 0.925, 0.9);
  // A teardrop case: rings from its nose back to the glass. x out, y up, along back.
  const rings = [
    [-0.075, 0.16],
    [-0.062, 0.5],
    [-0.03, 0.86],
    [0.02, 1],
    [0.048, 0.99],
    [0.05, 0.9],
  ].map(([along, size]) =>
    Array.from({ length: 16 }, (_, k): Vector3 => {
      const angle = (k / 16) * 2 * Math.PI;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const square = (v: number): number => Math.sign(v) * Math.abs(v) ** 0.78;
      return add(centre, [
        0.088 * size! * square(c),
        0.052 * size! * square(s) * (1 - 0.12 * c),
        -along!,
      ]);
    }),
  );
  const from = solid.triangles.length;
  solid.grid('mirrors', rings, { columns: true });
  solid.fan('mirrors', rings[0]!);
  solid.facingFrom(from, ([x, y, z]) => [
    centre[0] + (x - centre[0]) * 40,
    centre[1] + (y - centre[1]) * 40,
    z + (z > centre[2] + 0.03 ? 1 : 0),
  ]);
  const pane = rings[5]!.map((point) => add(point, [0, 0, 0.008]));
  const start = solid.triangles.length;
  solid.grid('mirror-stalks', [rings[5]!, pane], { columns: true });
  solid.fan('mirror-glass', pane);
  solid.facingFrom(start, ([x, y, z]) => [(x + centre[0]) / 2, (y + centre[1]) / 2, z - 1]);
  const stalk = new Solid(50);
  tube(
    stalk,
    'mirror-stalks',
    [
      add(skinAbove(1.71, 0.7), [-0.006, -0.015, 0]),
      add(skinAbove(1.712, 0.71), [0.004, 0.022, 0]),
      placed(1.718, 0.866, 0.775),
      placed(1.725, 0.9, 0.85),
    ],
    { radius: 0.013, height: 0.02, sides: 8, up: [0, 0, 1] },
  );
  return solid.join(stalk);
}

/** A unit frame looking out along `outward`, kept upright. */
export function seatedOn(
  point: Vector3,
  outward: Vector3,
  upright: Vector3 = [0, 1, 0],
): (local: Vector3) => Vector3 {
  const z = normalize(outward);
  const x = normalize(cross(upright, z));
  const y = cross(z, x);
  return (p) => add(point, add(add(scale(x, p[0]), scale(y, p[1])), scale(z, p[2])));
}

/** The left half of the screen, its frame and the door mirror. */
export const screenLeft = (): Solid[] => [glass(), frame(), doorMirrors()];
/** Wipers, which sweep side by side, and the cabin mirror. */
export const screenMiddle = (): Solid[] => [wipers(), cabinMirror()];
