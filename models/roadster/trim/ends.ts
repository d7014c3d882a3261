/**
 * What sits in the nose and the tail: lamps in their bays, grille bars, splitter blade, number
 * plates, diffuser strakes and exhausts. Metres, car coordinates; the left half, mirrored.
 * Our own judgement.
 */
import { add, normalize, scale, type Vector3 } from '../../../src/ground/vector.ts';
import { box } from '../../mesh/box.ts';
import { Solid } from '../../mesh/solid.ts';
import { lathe, type Turned, tube } from '../../mesh/sweep.ts';
import { skin, skinAbove, skinAlong } from '../surface.ts';
import { seatedOn } from './screen.ts';

// A round lamp looking along +z: sleeve, bright ring, bowl of the reflector, bulb shield, glass.
function roundLamp(radius: number, segments: number): Solid {
  const lamp = new Solid(40);
  const turned = (part: string | ((ring: number) => string), profile: readonly Turned[]): void =>
    lathe(
      lamp,
      part,
      profile.map(([share, height]): Turned => [share * radius, height * radius]),
      segments,
    );
  turned(
    (ring) => (ring < 1 ? 'headlamps' : ring < 3 ? 'badge-rims' : 'headlamps'),
    [
      [1.18, -0.7],
      [1.16, 0.04],
      [1.07, 0.18],
      [0.96, 0.08],
      [0.76, -0.24],
      [0.48, -0.44],
      [0.25, -0.5],
    ],
  );
  turned('badge-rims', [
    [0.26, -0.52],
    [0.23, -0.18],
    [0, -0.06],
  ]);
  turned('lamp-lenses', [
    [0.97, 0.12],
    [0.66, 0.32],
    [0, 0.42],
  ]);
  return lamp;
}

// One round lamp outboard and an upright bar of glass on a bright back beside it.
function headlamps(): Solid {
  const solid = new Solid(40);
  const on = skinAbove(0.475, 0.662);
  solid.join(
    roundLamp(0.07, 22),
    seatedOn(add(on, [-0.004, -0.066, -0.012]), normalize(add(skin.normal(on), [0, 0.1, 1.7]))),
  );
  for (const [part, half, proud] of [
    ['badge-rims', 0.02, -0.036],
    ['headlamps', 0.016, -0.032],
    ['lamp-lenses', 0.014, -0.025],
  ] as const) {
    const ends = half - 0.016;
    const path = [0.29 - ends, 0.36, 0.425 + ends].map((station) => {
      const at = skinAbove(station, 0.556);
      return add(at, scale(skin.normal(at), proud));
    });
    tube(solid, part, path, { radius: half, height: 0.008, sides: 6, up: skin.normal(path[1]!) });
  }
  return solid;
}

const inGrille = (x: number, y: number): Vector3 => {
  const on = skinAlong(1, y, Math.abs(x));
  return [x, on[1], on[2] - 0.03];
};

function grilleBars(): Solid {
  const solid = new Solid(40);
  const at = inGrille;
  for (const [y, reach] of [
    [0.272, 0.418],
    [0.308, 0.444],
    [0.344, 0.458],
    [0.38, 0.468],
  ] as const) {
    // From side to side, so that the half kept ends square at the middle.
    const path = Array.from({ length: 9 }, (_, k) => at((reach * (k - 4)) / 4, y));
    tube(solid, 'grille', path, { radius: 0.009, height: 0.005, sides: 4, up: [0, 1, 0] });
  }
  for (const x of [0.15, 0.3]) post(solid, at, x);
  return solid;
}
const post = (solid: Solid, at: (x: number, y: number) => Vector3, x: number): void => {
  const path = [0.25, 0.415].map((y) => add(at(x, y), [0, 0, -0.008]));
  tube(solid, 'grille', path, { radius: 0.004, sides: 4, up: [0, 0, 1] });
};
function middlePost(): Solid {
  const solid = new Solid(40);
  post(solid, inGrille, 0);
  return solid;
}

function splitterBlade(): Solid {
  const solid = new Solid(30);
  const count = 12;
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
  return solid;
}

// A long lens standing out of each tail lamp, in a bright rim.
function tailLamps(): Solid {
  const solid = new Solid(40);
  for (const [part, half, proud] of [
    ['badge-rims', 0.0195, 0.0065],
    ['tail-lamps', 0.0145, 0.011],
  ] as const) {
    const end = half - 0.0145;
    const on = [0.56 - end, 0.61, 0.66, 0.71 + end].map((x) => skinAlong(-1, 0.701, x));
    const path = on.map((at) => add(at, scale(skin.normal(at), proud)));
    const up = (k: number): Vector3 => skin.normal(on[k]!);
    tube(solid, part, path, { radius: half, height: 0.008, sides: 8, up });
  }
  return solid;
}

function numberPlates(): Solid {
  const solid = new Solid(30);
  const rear = skinAlong(-1, 0.505, 0);
  const front = skinAlong(1, 0.225, 0);
  for (const [centre, half] of [
    [add(rear, [0, 0, 0.012]), [0.245, 0.05, 0.006]],
    [add(front, [0, -0.008, 0.008]), [0.17, 0.026, 0.006]],
  ] as const) {
    box(solid, 'number-plate', centre, half, 0.0025);
  }
  // Lamps over the rear plate.
  for (const x of [-0.15, 0.15]) {
    box(solid, 'badge-rims', [x, 0.578, rear[2] + 0.004], [0.03, 0.006, 0.012], 0.003);
  }
  return solid;
}

/** The ramp under the tail and the strakes that stand on it. */
function diffuserBlades(): Solid {
  const solid = new Solid(30);
  const ramp = [0, 0.2, 0.4, 0.555].map((x) => {
    const behind = skinAlong(-1, 0.33, x)[2];
    return [
      [x, 0.352, behind + 0.02],
      [x, 0.27, behind + 0.16],
      [x, 0.17, behind + 0.5],
    ] as Vector3[];
  });
  solid.grid('diffuser', ramp);
  solid.facingFrom(0, ([x, y, z]) => [x, y - 1, z - 1]);
  for (const x of [0.06, 0.18, 0.3]) {
    const behind = skinAlong(-1, 0.3, x)[2];
    const side = (out: number): Vector3[] =>
      [
        [0.35, 0.025],
        [0.24, -0.012],
        [0.195, -0.004],
        [0.155, 0.36],
        [0.2, 0.4],
      ].map(([y, ahead]) => [x + out, y!, behind + ahead!]);
    const from = solid.triangles.length;
    const rings = [side(-0.0045), side(0.0045)];
    solid.grid('diffuser', rings, { columns: true });
    solid.fan('diffuser', rings[0]!).fan('diffuser', [...rings[1]!].reverse());
    solid.closedFrom(from);
  }
  return solid;
}

// One pipe on each side.
function exhausts(): Solid {
  const pipe = new Solid(45);
  lathe(
    pipe,
    (ring) => (ring < 4 ? 'exhausts' : 'exhaust-bores'),
    [
      [0.042, -0.16],
      [0.047, -0.02],
      [0.05, 0.004],
      [0.0465, 0.009],
      [0.042, 0.002],
      [0.038, -0.07],
      [0, -0.075],
    ],
    20,
  );
  const x = 0.43;
  const foot = skinAlong(-1, 0.27, x);
  const seat = seatedOn([x, 0.274, foot[2] - 0.024], [0, 0, -1]);
  // Wider than high.
  return new Solid(45).join(pipe, ([across, up, along]) => seat([across * 1.5, up, along]));
}

/** The left half of the nose and tail fittings. */
export const endsLeft = (): Solid[] => [
  headlamps(),
  grilleBars(),
  splitterBlade(),
  tailLamps(),
  diffuserBlades(),
  exhausts(),
];
/** What lies across the middle. */
export const endsMiddle = (): Solid[] => [middlePost(), numberPlates()];
