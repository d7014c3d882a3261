/**
 * What sits in the nose and the tail: lamps in their bays, grille bars, splitter blade, number
 * plates, diffuser strakes and exhausts. Metres, car coordinates; the left half, mirrored.
 * Our own judgement.
 */
import { add, normalize, type Vector3 } from '../../../src/ground/vector.ts';
import { box } from '../../mesh/box.ts';
import { Solid } from '../../mesh/solid.ts';
import { lathe, tube } from '../../mesh/sweep.ts';
import { skin, skinAbove, skinAlong } from '../surface.ts';
import { seatedOn } from './screen.ts';

function headlamps(): Solid {
  const solid = new Solid(45);
  for (const [station, x, radius, sunk] of [
    [0.455, 0.645, 0.062, 0.062],
    [0.335, 0.622, 0.043, 0.05],
  ] as const) {
    const on = skinAbove(station, x);
    const lamp = new Solid(45);
    lathe(
      lamp,
      (ring) => (ring < 2 ? 'badge-rims' : 'headlamps'),
      [
        [radius * 1.14, 0],
        [radius * 1.08, 0.012],
        [radius, 0.006],
        [radius * 0.82, 0.018],
        [radius * 0.45, 0.029],
        [0, 0.033],
      ],
      12,
    );
    const normal = skin.normal(on);
    solid.join(
      lamp,
      seatedOn(add(on, [-0.004, -sunk, -0.012]), normalize(add(normal, [0, 0.1, 1.7]))),
    );
  }
  return solid.mirrored();
}

function grilleBars(): Solid {
  const solid = new Solid(40);
  const sunk = 0.03;
  const at = (x: number, y: number): Vector3 =>
    add(skinAlong(1, y, Math.abs(x)), [x < 0 ? 2 * x : 0, 0, -sunk]);
  for (const [y, reach] of [
    [0.258, 0.36],
    [0.287, 0.43],
    [0.316, 0.45],
    [0.345, 0.44],
    [0.374, 0.42],
    [0.403, 0.35],
  ] as const) {
    const path = Array.from({ length: 7 }, (_, k) => at((reach * (k - 3)) / 3, y));
    tube(solid, 'grille', path, { radius: 0.009, height: 0.005, sides: 4, up: [0, 1, 0] });
  }
  for (let k = -3; k <= 3; k++) {
    const x = k * 0.12;
    const path = [0.24, 0.42].map((y) => add(at(x, y), [0, 0, -0.008]));
    tube(solid, 'grille', path, { radius: 0.004, sides: 4, up: [0, 0, 1] });
  }
  return solid;
}

function splitterBlade(): Solid {
  const solid = new Solid(30);
  const count = 9;
  const rows = Array.from({ length: count + 1 }, (_, k) => {
    const x = 0.72 * (k / count);
    const root = skinAlong(1, 0.162, x);
    const reach = 0.042 * (1 - (x / 0.76) ** 6);
    const ahead = (by: number, y: number): Vector3 => [x * (1 + by * 0.3), y, root[2] + by];
    return [
      ahead(-0.04, 0.17),
      ahead(reach - 0.003, 0.158),
      ahead(reach, 0.15),
      ahead(-0.04, 0.145),
    ];
  });
  solid.grid('splitter', rows);
  solid.facingFrom(0, ([x, y, z]) => [x, y + (y - 0.154) * 60, z + 0.4]);
  return solid.mirrored();
}

function tail(): Solid {
  const solid = new Solid(40);
  // Number plate in its recess, on a dark backing.
  const plate = skinAlong(-1, 0.505, 0);
  box(solid, 'number-plate', add(plate, [0, 0, 0.014]), [0.245, 0.05, 0.004], 0);
  for (const x of [-0.15, 0.15]) {
    box(solid, 'badge-rims', [x, 0.578, plate[2] + 0.006], [0.03, 0.006, 0.01], 0);
  }
  // Twin round lenses standing in each tail lamp.
  for (const x of [0.585, 0.675]) {
    const on = skinAlong(-1, 0.683, x);
    const lens = new Solid(50);
    lathe(
      lens,
      (ring) => (ring < 1 ? 'badge-rims' : 'tail-lamps'),
      [
        [0.032, -0.004],
        [0.028, 0.007],
        [0, 0.013],
      ],
      12,
    );
    for (const side of [1, -1]) {
      const normal = skin.normal(on);
      solid.join(
        lens,
        seatedOn([side * on[0], on[1], on[2]], [side * normal[0], normal[1], normal[2]]),
      );
    }
  }
  // Diffuser strakes.
  for (const x of [-0.3, -0.18, -0.06, 0.06, 0.18, 0.3]) {
    const foot = skinAlong(-1, 0.25, Math.abs(x));
    box(solid, 'diffuser', [x, 0.27, foot[2] + 0.06], [0.005, 0.065, 0.075], 0);
  }
  for (const x of [-0.475, -0.385, 0.385, 0.475]) {
    const pipe = new Solid(50);
    lathe(
      pipe,
      (ring) => (ring < 3 ? 'exhausts' : 'exhaust-bores'),
      [
        [0.035, -0.14],
        [0.0405, 0.003],
        [0.037, 0.007],
        [0.033, -0.006],
        [0, -0.06],
      ],
      12,
    );
    const foot = skinAlong(-1, 0.27, Math.abs(x));
    solid.join(pipe, seatedOn([x, 0.268, foot[2] - 0.028], [0, 0, -1]));
  }
  return solid;
}

function frontPlate(): Solid {
  const solid = new Solid(30);
  const on = skinAlong(1, 0.225, 0);
  box(solid, 'number-plate', add(on, [0, -0.008, 0.008]), [0.17, 0.026, 0.004], 0);
  return solid;
}

/** Nose and tail fittings. */
export const ends = (): Solid[] => [
  headlamps(),
  grilleBars(),
  splitterBlade(),
  tail(),
  frontPlate(),
];
