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
        [1.01, -0.004],
        [0.97, 0.0065],
        [0.88, 0.0075],
        [0.84, 0.0045],
        [0.5, 0.006],
        [0, 0.0065],
      ],
      18,
    );
    const seat = seatedOn(on, skin.normal(on));
    solid.join(one, ([x, y, z]) => seat([x * wide, y * high, z]));
  };
  shield(skinAlong(1, 0.545, 0), 0.044, 0.03);
  shield(skinAlong(-1, 0.7, 0), 0.05, 0.028);
  return solid;
}

/** A plate on the front wing: a bright rim round a sunk face. */
function wingBadge(): Solid {
  const solid = new Solid(30);
  const on = skinBeside(1.3, 0.625);
  const loop = (wide: number, high: number, proud: number): Vector3[] =>
    Array.from({ length: 16 }, (_, k) => {
      const angle = ((k + 0.5) * Math.PI) / 8;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const square = (v: number): number => Math.sign(v) * Math.abs(v) ** 0.3;
      return [wide * square(c), high * square(s), proud];
    });
  const rings = [
    loop(0.0545, 0.015, -0.004),
    loop(0.052, 0.0125, 0.0065),
    loop(0.0485, 0.0095, 0.0065),
    loop(0.0475, 0.0085, 0.004),
  ];
  const bar = new Solid(30);
  bar.grid('badge-rims', rings, { columns: true });
  bar.fan('badges', rings[3]!);
  bar.facingFrom(0, ([x, y, z]) => [x * 1.2, y * 1.2, z + 0.02]);
  return solid.join(bar, seatedOn(on, skin.normal(on)));
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
  return solid;
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
  return solid;
}

function louvres(): Solid {
  const solid = new Solid(30);
  for (let k = 0; k < 5; k++) {
    const station = 3.07 + k * 0.1;
    const outs = [0, 0.25, 0.5, 0.75, 1].map((share) => 0.29 + share * (0.125 - k * 0.005));
    const row = (back: number, lift: number): Vector3[] =>
      outs.map((x) => {
        const on = skinAbove(station + back, x);
        return add(on, scale(skin.normal(on), lift));
      });
    const from = solid.triangles.length;
    const [foot, rise, lip] = [row(0, -0.002), row(0.03, 0.01), row(0.056, 0.017)];
    const heel = row(0.05, -0.003);
    solid.grid((line) => (line === 2 ? 'panel-gaps' : 'engine-cover'), [foot, rise, lip, heel]);
    for (const end of [0, outs.length - 1]) {
      solid.triangle('engine-cover', foot[end]!, rise[end]!, heel[end]!);
      solid.triangle('engine-cover', heel[end]!, rise[end]!, lip[end]!);
    }
    // Seen from a point inside the wedge, every face points away.
    const middle = row(0.035, 0.003)[2]!;
    solid.facingFrom(from, (centre) => add(centre, scale(subtract(centre, middle), 1)));
  }
  return solid;
}

function hoops(): Solid {
  const solid = new Solid(60);
  const [middle, half, bend] = [0.355, 0.152, 0.1];
  const corner = (side: 1 | -1): Vector3[] =>
    Array.from({ length: 8 }, (_, k) => {
      const angle = (Math.PI / 2) * (side === 1 ? 1 - k / 7 : k / 7);
      const out = half - bend + bend * Math.sin(side === 1 ? Math.PI / 2 - angle : angle);
      const high = bend * Math.cos(side === 1 ? Math.PI / 2 - angle : angle);
      return placed(2.83, 0.996 + high, middle + side * out);
    });
  const path = [
    placed(2.856, 0.82, middle - half),
    placed(2.838, 0.92, middle - half),
    ...corner(-1).reverse(),
    ...corner(1),
    placed(2.838, 0.92, middle + half),
    placed(2.856, 0.82, middle + half),
  ];
  const from = solid.triangles.length;
  tube(solid, 'roll-hoops', path, { radius: 0.019, sides: 8, up: [0, 0, 1] });
  solid.closedFrom(from);
  // A collar where each leg meets the deck.
  for (const side of [1, -1]) {
    const on = skinAbove(2.852, middle + side * half);
    const collar = new Solid(40);
    lathe(
      collar,
      'roll-hoops',
      [
        [0.034, -0.01],
        [0.034, 0.004],
        [0.03, 0.008],
        [0.018, 0.009],
      ],
      14,
    );
    solid.join(collar, seatedOn(on, skin.normal(on), [0, 0, -1]));
  }
  return solid;
}

/** The left half of the fittings. */
export const fittingsLeft = (): Solid[] => [wingBadge(), handles(), slats(), louvres(), hoops()];
/** Those of the middle, and the fuel cap, which is on the right only. */
export const fittingsMiddle = (): Solid[] => [badges(), fuelCap()];
