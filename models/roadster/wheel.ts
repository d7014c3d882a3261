/**
 * One wheel, modelled once: tyre, lipped rim, barrel, five pairs of splayed spokes dished towards
 * the hub, cap and nuts, and behind them disc, hat and caliper. Metres; the axle is the z axis,
 * z = 0 is the tyre's outer face and +z points outwards. The caliper sits on +x and is its own
 * solid, as it does not turn with the wheel. Proportions are our own judgement.
 */
import type { Vector3 } from '../../src/ground/vector.ts';
import { Solid } from '../mesh/solid.ts';
import { lathe, type Turned } from '../mesh/sweep.ts';

const pairs = 5;
const around = 52;

// Sidewall, shoulder and a tread with one groove, from the inner bead to the outer.
const tyre: readonly Turned[] = [
  [0.23, -0.212],
  [0.267, -0.232],
  [0.309, -0.222],
  [0.322, -0.192],
  [0.322, -0.136],
  [0.314, -0.132],
  [0.322, -0.128],
  [0.322, -0.036],
  [0.312, -0.008],
  [0.29, 0.005],
  [0.247, 0.001],
  [0.229, -0.012],
];
const rim: readonly Turned[] = [
  [0.23, -0.011],
  [0.2325, -0.004],
  [0.229, -0.0005],
  [0.224, -0.003],
  [0.215, -0.026],
  [0.206, -0.046],
  [0.198, -0.11],
  [0.21, -0.21],
];

function spokes(solid: Solid): void {
  // Radius, sideways offset, half width, height of the face, depth of the spoke.
  const sections = [
    [0.048, 0.018, 0.0165, -0.05, 0.036],
    [0.085, 0.0205, 0.0135, -0.047, 0.034],
    [0.13, 0.0265, 0.0115, -0.037, 0.03],
    [0.175, 0.0365, 0.0115, -0.022, 0.026],
    [0.202, 0.0445, 0.0145, -0.014, 0.024],
    [0.216, 0.0495, 0.019, -0.0115, 0.024],
  ] as const;
  for (let pair = 0; pair < pairs; pair++) {
    const angle = ((pair + 0.75) * 2 * Math.PI) / pairs;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    for (const side of [-1, 1]) {
      const from = solid.triangles.length;
      solid.grid(
        'wheel-spokes',
        sections.map(([radius, offset, half, face, deep]) => {
          const at = (across: number, height: number): Vector3 => {
            const sideways = side * offset + across;
            return [radius * c - sideways * s, radius * s + sideways * c, height];
          };
          return [
            at(-half, face - deep),
            at(-half, face - 0.006),
            at(-half * 0.62, face),
            at(half * 0.62, face),
            at(half, face - 0.006),
            at(half, face - deep),
          ];
        }),
      );
      solid.facingFrom(from, (centre) => {
        const along = centre[0] * c + centre[1] * s;
        const sideways = -centre[0] * s + centre[1] * c;
        const middle = side * (0.014 + along * 0.16);
        const out = (sideways - middle) * 40;
        return [centre[0] - out * s, centre[1] + out * c, centre[2] + 1];
      });
    }
  }
}

function nut(solid: Solid, angle: number, radius: number, base: number): void {
  const one = new Solid(20);
  lathe(
    one,
    'lug-nuts',
    [
      [0.0098, base],
      [0.0098, base + 0.017],
      [0.0065, base + 0.021],
      [0, base + 0.021],
    ],
    6,
  );
  solid.join(one, ([x, y, z]) => [x + radius * Math.cos(angle), y + radius * Math.sin(angle), z]);
}

/** Everything that turns, and the disc. */
export function wheel(): Solid[] {
  const rubber = new Solid(34);
  lathe(rubber, 'tyres', tyre, around);
  const metal = new Solid(32);
  lathe(metal, (ring) => (ring < 5 ? 'wheel-rims' : 'wheel-barrels'), rim, around);
  spokes(metal);
  lathe(
    metal,
    (ring) => (ring < 3 ? 'wheel-spokes' : ring < 6 ? 'wheel-caps' : 'badges'),
    [
      [0.08, -0.09],
      [0.078, -0.056],
      [0.07, -0.049],
      [0.036, -0.049],
      [0.036, -0.038],
      [0.032, -0.034],
      [0.024, -0.033],
      [0, -0.031],
    ],
    20,
  );
  for (let k = 0; k < pairs; k++) nut(metal, ((k + 0.25) * 2 * Math.PI) / pairs, 0.056, -0.052);
  const disc = new Solid(25);
  lathe(
    disc,
    'discs',
    [
      [0.173, -0.144],
      [0.173, -0.118],
      [0.085, -0.118],
    ],
    around,
  );
  lathe(
    disc,
    'disc-hats',
    [
      [0.088, -0.118],
      [0.084, -0.098],
      [0.05, -0.092],
    ],
    20,
  );
  // Slots swept back across the disc's face, a hair proud of it.
  for (let k = 0; k < 12; k++) {
    const at = (radius: number, turn: number): Vector3 => {
      const angle = (k * 2 * Math.PI) / 12 + turn;
      return [radius * Math.cos(angle), radius * Math.sin(angle), -0.1172];
    };
    disc.quad('disc-hats', at(0.101, 0), at(0.161, 0.2), at(0.161, 0.235), at(0.101, 0.05));
  }
  return [rubber, metal, disc];
}

/** The brake caliper: a round-shouldered bridge, two bolts, and the raised strip for lettering. */
export function caliper(): Solid {
  const solid = new Solid(42);
  const steps = 10;
  const from = solid.triangles.length;
  const at = (radius: number, angle: number, z: number): Vector3 => [
    radius * Math.cos(angle),
    radius * Math.sin(angle),
    z,
  ];
  const rings = Array.from({ length: steps + 1 }, (_, k) => {
    const share = (2 * k) / steps - 1;
    const angle = 0.57 * share;
    // Ends drawn in, and a waist on the inner edge where the pads slide.
    const end = 0.02 * share ** 6;
    const waist = 0.008 * (1 - share * share);
    const profile: Turned[] = [
      [0.104 + end + waist, -0.165],
      [0.104 + end + waist, -0.097 - end],
      [0.112 + end + waist, -0.085 - end],
      [0.168 - end, -0.081 - end],
      [0.184 - end, -0.09 - end],
      [0.191 - end, -0.108],
      [0.191 - end, -0.165],
    ];
    return profile.map(([radius, z]) => at(radius, angle, z));
  });
  solid.grid('calipers', rings);
  solid.fan('calipers', rings[0]!).fan('calipers', [...rings[steps]!].reverse());
  solid.closedFrom(from);
  const strip = new Solid(30);
  const rows = Array.from({ length: 7 }, (_, k) => {
    const angle = 0.29 * (k / 3 - 1);
    return [
      at(0.1305, angle, -0.0855),
      at(0.132, angle, -0.0775),
      at(0.15, angle, -0.0765),
      at(0.1515, angle, -0.0835),
    ];
  });
  strip.grid('caliper-lettering', rows);
  for (const end of [rows[0]!, rows[6]!]) {
    strip.quad('caliper-lettering', end[0]!, end[1]!, end[2]!, end[3]!);
  }
  strip.facingFrom(0, ([x, y, z]) => [x + (x - 0.14) * 8, y * 1.3, z + 0.05]);
  solid.join(strip);
  for (const angle of [-0.45, 0.45]) {
    const bolt = new Solid(20);
    lathe(
      bolt,
      'lug-nuts',
      [
        [0.009, -0.09],
        [0.009, -0.079],
        [0.006, -0.076],
        [0, -0.076],
      ],
      6,
    );
    const [x, y] = at(0.148, angle, 0);
    solid.join(bolt, (p) => [p[0] + x, p[1] + y, p[2]]);
  }
  return solid;
}
