/**
 * Invented schemes for the roadster, each with what its sheet must say and how good it is on the
 * whole, as one of us labelled them before the scores were written. A regression of judgement:
 * it checks that the sheet agrees with its makers, not that it is right.
 */

import { parse } from 'valibot';
import { type Build, buildSchema, buildVersion, type Part } from '../../src/build/build.ts';
import type { Effect } from '../../src/finish/finish.ts';

/** L*, a*, b* (D65), GU at 60°, and what sort of surface it is. */
type Code = readonly [number, number, number, number, Effect];

const codes: Readonly<Record<string, Code>> = {
  r: [42, 62, 42, 90, 'solid'],
  rl: [38, 54, 34, 22, 'leather'],
  rr: [40, 52, 28, 3, 'ribbon'],
  rc: [36, 56, 30, 90, 'solid'],
  rb: [40, 30, 24, 25, 'solid'],
  rx: [36, 60, 38, 92, 'candy'],
  rs: [36, 60, 38, 28, 'candy'],
  rf: [25, 24, 12, 1, 'flock'],
  bl: [14, 4, -22, 90, 'solid'],
  gr: [24, -18, 8, 90, 'solid'],
  iv: [89, 0, 13, 88, 'solid'],
  im: [89, 0, 13, 50, 'solid'],
  wh: [95, -1, 1, 90, 'solid'],
  wr: [88, 0, 4, 3, 'ribbon'],
  kg: [6, 0, 0, 92, 'solid'],
  ks: [17, 0, 0, 25, 'solid'],
  km: [25, 0, 0, 4, 'solid'],
  kh: [12, 0, 0, 50, 'solid'],
  kc: [14, 0, 0, 32, 'solid'],
  kr: [20, 0, 0, 3, 'ribbon'],
  kf: [16, 0, 0, 1, 'flock'],
  dg: [38, 0, -1, 25, 'solid'],
  mg: [55, 0, -2, 88, 'solid'],
  gf: [46, 0, 1, 3, 'ribbon'],
  sv: [78, 0, -1, 90, 'metallic'],
  gu: [42, 0, -2, 40, 'metallic'],
  am: [70, 28, 72, 85, 'solid'],
  yr: [80, 4, 72, 3, 'ribbon'],
  or: [62, 52, 62, 88, 'solid'],
  on: [62, 52, 62, 3, 'ribbon'],
  sk: [66, -12, -28, 88, 'solid'],
  tn: [52, 18, 32, 22, 'leather'],
  br: [28, 10, 14, 20, 'solid'],
  cr: [84, 2, 16, 25, 'solid'],
  ch: [82, 0, 0, 100, 'bare-metal'],
  al: [74, 0, 0, 40, 'bare-metal'],
  go: [66, 8, 38, 45, 'metallic'],
  ro: [70, 34, 4, 88, 'solid'],
  li: [82, -32, 72, 88, 'solid'],
  xr: [20, 8, 3, 3, 'ribbon'],
  xs: [14, 9, 3, 30, 'solid'],
};
const toBuy = ['rx', 'rs', 'gr', 'mg', 'dg', 'sk', 'or', 'li', 'ro', 'rb', 'go', 'xs'];

/** Part of the build, and the parts of the car it covers, in the order schemes list finishes. */
const slots: readonly (readonly [id: string, covers: readonly string[]])[] = [
  ['body', ['body', 'engine-cover']],
  ['stripes', ['stripe-left', 'stripe-right']],
  ['mirrors', ['mirrors']],
  [
    'trim',
    [
      'sills',
      'splitter',
      'diffuser',
      'side-vents',
      'grille',
      'windscreen-frame',
      'mirror-stalks',
      'wipers',
      'dash-top',
      'steering-wheel',
    ],
  ],
  ['seats', ['seat-bolsters', 'tub']],
  ['inserts', ['seat-inserts']],
  ['piping', ['seat-piping']],
  ['belts', ['belts']],
  ['carpet', ['carpet']],
  ['dash', ['dashboard']],
  [
    'metal',
    [
      'roll-hoops',
      'exhausts',
      'buckles',
      'fuel-cap',
      'door-handles',
      'badge-rims',
      'gear-lever',
      'pedals',
    ],
  ],
  ['wheels', ['wheel-spokes']],
  ['rim', ['wheel-rims', 'wheel-barrels', 'wheel-caps']],
  ['calipers', ['calipers', 'caliper-lettering']],
  ['badges', ['badges']],
];

/** Finishes by slot, best tier A, worst D. */
export const schemes: Readonly<Record<string, { finishes: string; tier: string }>> = {
  S01: { finishes: 'wh wh or ks ks ks or kr kf dg al gu gu or al', tier: 'A' },
  S08: { finishes: 'kg km kg km ks ks r rr kf dg al gu gu r al', tier: 'A' },
  S10: { finishes: 'mg dg mg ks dg dg mg gf kf gu al gu gu gu al', tier: 'A' },
  S12: { finishes: 'rx rx rx ks cr cr rx kr kf br ch sv ch rx ch', tier: 'A' },
  S11: { finishes: 'bl bl bl ks tn tn ks kr kf ks al kh kh dg al', tier: 'B' },
  S09: { finishes: 'wh or or ks or ks wh on kf ks al or or or al', tier: 'B' },
  S07: { finishes: 'gr gr gr ks tn tn cr wr kf br al km km cr go', tier: 'B' },
  S13: { finishes: 'r r rc ks rb ks ks rr kf ks al gu gu rc al', tier: 'C' },
  S02: { finishes: 'wh wh wh ks ks ks or kr kf dg al gu gu dg al', tier: 'C' },
  S14: { finishes: 'rs rs rs ks cr cr rx kr kf br ch sv ch rx ch', tier: 'C' },
  S04: { finishes: 'r r r r r r r rr rf r r r r r r', tier: 'D' },
  S06: { finishes: 'iv im im kh kc kc cr rr kf ks al al al r al', tier: 'D' },
  S05: { finishes: 'wh sk or ks ks gr r yr kf ro al gu gu or li', tier: 'D' },
  S15: { finishes: 'wr wr or ks ks ks or kr kf dg al gu gu or al', tier: 'D' },
  S16: { finishes: 'wh or wh ks ks ks ks kr kf dg al gu gu dg al', tier: 'B' },
  S03: { finishes: 'bl bl bl ks ks ks xs xr kf ks al kh gu xs al', tier: 'D' },
};

/** A build whose alternatives are the named schemes. */
export function buildOf(names: readonly string[], changes: Partial<Build> = {}): Build {
  const lists = names.map((name) => schemes[name]!.finishes.split(' '));
  const parts = slots.map(([id, covers], at) => ({
    id,
    name: id,
    covers: [...covers],
    candidates: [...new Set(lists.map((list) => `made-up/${list[at]!}`))],
  }));
  const used = new Set(lists.flat());
  const build = {
    format: 'testspoon-build',
    version: buildVersion,
    id: 'judgement',
    name: 'Regression of judgement',
    car: 'roadster',
    scale: 24,
    viewing: { distanceMm: 400, light: 'D65' },
    finishes: [...used].map((code) => finishOf(code)),
    parts: parts as Part[],
    alternatives: names.map((name, k) => ({
      id: name.toLowerCase(),
      name,
      choices: Object.fromEntries(slots.map(([id], at) => [id, `made-up/${lists[k]![at]!}`])),
    })),
    ...changes,
  };
  return parse(buildSchema, build);
}

function finishOf(code: string) {
  const [lightness, a, b, gloss60, effect] = codes[code]!;
  const isCloth = effect === 'ribbon' || effect === 'flock';
  return {
    rack: 'made-up',
    id: code,
    name: code,
    effect,
    colour: { lab: [lightness, a, b], light: 'D65' },
    gloss60,
    // Over a perfect white a candy shows its own colour, which is what the code states.
    ...(effect === 'candy'
      ? {
          undercoats: [
            {
              name: 'white',
              role: 'base',
              effect: 'solid',
              colour: { lab: [100, 0, 0] },
              chemistry: 'lacquer',
            },
          ],
        }
      : {}),
    ...(effect === 'metallic' ? { flopIndex: 8 } : {}),
    provenance: { how: 'swatch', deltaE: 3 },
    ...(isCloth ? {} : { bottle: { id: code, name: code, onHand: !toBuy.includes(code) } }),
  };
}
