/**
 * Small fittings on the skin: badge plates, fuel cap, door handles, vent slats, engine-cover
 * louvres and the roll hoops. Metres, car coordinates. Badges are plain plates: no emblem.
 * Our own judgement.
 */
import { add, scale, subtract, type Vector3 } from '../../../src/ground/vector.ts';
import { box } from '../../mesh/box.ts';
import { Solid } from '../../mesh/solid.ts';
import { lathe, tube } from '../../mesh/sweep.ts';
import { placed } from '../lines.ts';
import { skin, skinAbove, skinAlong, skinBeside } from '../surface.ts';
import { seatedOn } from './screen.ts';

function badges(): Solid {
  const solid = new Solid(25);
  const shield = (on: Vector3, wide: number, high: number): void => {
    const one = new Solid(25);
    lathe(
      one,
      (ring) => (ring < 3 ? 'badge-rims' : 'badges'),
      [
        [1, -0.006],
        [1, 0.004],
        [0.93, 0.006],
        [0.8, 0.0045],
        [0, 0.0065],
      ],
      16,
    );
    const seat = seatedOn(on, skin.normal(on));
    solid.join(one, ([x, y, z]) => seat([x * wide, y * high, z]));
  };
  shield(skinAlong(1, 0.545, 0), 0.044, 0.03);
  shield(skinAlong(-1, 0.683, 0), 0.05, 0.026);
  // A bar on each front wing.
  for (const side of [1, -1]) {
    const on = skinBeside(1.3, 0.625);
    const normal = skin.normal(on);
    const bar = new Solid(30);
    box(bar, 'badge-rims', [0, 0, 0], [0.052, 0.013, 0.004], 0);
    box(bar, 'badges', [0, 0, 0.003], [0.047, 0.0085, 0.0025], 0);
    solid.join(
      bar,
      seatedOn([side * on[0], on[1], on[2]], [side * normal[0], normal[1], normal[2]]),
    );
  }
  return solid;
}

function fuelCap(): Solid {
  const solid = new Solid(30);
  const one = new Solid(30);
  lathe(
    one,
    'fuel-cap',
    [
      [0.062, -0.012],
      [0.062, 0.004],
      [0.056, 0.008],
      [0.046, 0.006],
      [0.042, 0.011],
      [0, 0.0135],
    ],
    20,
  );
  box(one, 'fuel-cap', [0, 0, 0.016], [0.036, 0.007, 0.006], 0.003);
  for (let k = 0; k < 6; k++) {
    const angle = ((k + 0.5) * Math.PI) / 3;
    const bolt = new Solid(30);
    lathe(
      bolt,
      'badge-rims',
      [
        [0.005, 0.004],
        [0.005, 0.011],
        [0, 0.012],
      ],
      4,
    );
    one.join(bolt, (p) => add(p, [0.052 * Math.cos(angle), 0.052 * Math.sin(angle), 0]));
  }
  const left = skinAbove(3.36, 0.66);
  const [nx, ny, nz] = skin.normal(left);
  return solid.join(one, seatedOn([-left[0], left[1], left[2]], [-nx, ny, nz], [0, 0, -1]));
}

function handles(): Solid {
  const solid = new Solid(45);
  const on = skinBeside(2.42, 0.668);
  const normal = skin.normal(on);
  const at = (station: number, proud: number): Vector3 =>
    add(skinBeside(station, 0.672), scale(normal, proud));
  tube(
    solid,
    'door-handles',
    [
      at(2.32, -0.004),
      at(2.33, 0.016),
      at(2.37, 0.021),
      at(2.44, 0.021),
      at(2.48, 0.016),
      at(2.49, -0.004),
    ],
    { radius: 0.006, height: 0.0095, sides: 5, up: [1, 0, 0] },
  );
  const lock = new Solid(40);
  lathe(
    lock,
    'door-handles',
    [
      [0.011, -0.004],
      [0.011, 0.003],
      [0, 0.0035],
    ],
    12,
  );
  solid.join(lock, seatedOn(skinBeside(2.5, 0.635), normal));
  return solid.mirrored();
}

function slats(): Solid {
  const solid = new Solid(30);
  for (const [y, shift] of [
    [0.452, 0.008],
    [0.483, 0.016],
    [0.514, 0.024],
  ] as const) {
    const middle = 1.277 + shift;
    const on = skinBeside(middle, y);
    box(solid, 'side-vents', add(on, [-0.012, 0, 0]), [0.009, 0.0055, 0.058], 0);
  }
  return solid.mirrored();
}

function louvres(): Solid {
  const solid = new Solid(30);
  for (let k = 0; k < 5; k++) {
    const station = 3.07 + k * 0.1;
    const outs = [0.29, 0.35, 0.415 - k * 0.005];
    const row = (back: number, lift: number): Vector3[] =>
      outs.map((x) => {
        const on = skinAbove(station + back, x);
        return add(on, scale(skin.normal(on), lift));
      });
    const from = solid.triangles.length;
    const [foot, rise, lip] = [row(0, -0.002), row(0.03, 0.01), row(0.056, 0.017)];
    const heel = row(0.05, -0.003);
    solid.grid((line) => (line === 2 ? 'panel-gaps' : 'engine-cover'), [foot, rise, lip, heel]);
    for (const end of [0, 2]) {
      solid.triangle('engine-cover', foot[end]!, rise[end]!, heel[end]!);
      solid.triangle('engine-cover', heel[end]!, rise[end]!, lip[end]!);
    }
    // Seen from a point inside the wedge, every face points away.
    const middle = row(0.035, 0.003)[1]!;
    solid.facingFrom(from, (centre) => add(centre, scale(subtract(centre, middle), 1)));
  }
  return solid.mirrored();
}

function hoops(): Solid {
  const solid = new Solid(45);
  for (const middle of [0.355, -0.355]) {
    const arc = Array.from({ length: 10 }, (_, k): Vector3 => {
      const angle = Math.PI * (1 - k / 9);
      return placed(2.83, 0.99 + 0.105 * Math.sin(angle), middle + 0.15 * Math.cos(angle));
    });
    const path = [
      placed(2.85, 0.83, middle - 0.152),
      placed(2.838, 0.92, middle - 0.151),
      ...arc,
      placed(2.838, 0.92, middle + 0.151),
      placed(2.85, 0.83, middle + 0.152),
    ];
    const from = solid.triangles.length;
    tube(solid, 'roll-hoops', path, { radius: 0.019, sides: 6, up: [0, 0, 1] });
    solid.closedFrom(from);
  }
  return solid;
}

/** Every fitting. */
export const fittings = (): Solid[] => [
  badges(),
  fuelCap(),
  handles(),
  slats(),
  louvres(),
  hoops(),
];
