/**
 * Every part of the roadster: its id, its name for a builder, what it is to a scheme (role), the
 * set it belongs to (group) and a plain neutral default finish. Lab is CIE L*a*b* under D65;
 * gloss60 is the 60° gloss in GU. Given parts keep these finishes unless a build says otherwise.
 * The defaults are our own judgement: greys, dark trim, nothing that argues for a scheme.
 */
import type { Group, Role } from '../../src/car/table.ts';
import type { PartLine } from '../mesh/glb.ts';

type Look = readonly [L: number, a: number, b: number, gloss60: number, kind?: 'metal' | 'glass'];

const lines = (
  role: Role,
  group: Group,
  list: Readonly<Record<string, readonly [name: string, ...look: Look]>>,
): PartLine[] =>
  Object.entries(list).map(([id, [name, L, a, b, gloss60, kind]]) => ({
    id,
    name,
    role,
    group,
    lab: [L, a, b],
    gloss60,
    ...(kind === 'metal' ? { isMetal: true } : {}),
    ...(kind === 'glass' ? { isGlass: true } : {}),
    ...(goesWith[id] ? { goesWith: goesWith[id] } : {}),
  }));

/** What is fixed to a part, or is a piece of it, and so is not there without it. */
const goesWith: Readonly<Record<string, string>> = {
  'mirror-stalks': 'mirrors',
  'mirror-glass': 'mirrors',
  buckles: 'belts',
  'caliper-lettering': 'calipers',
  windscreen: 'windscreen-frame',
  wipers: 'windscreen-frame',
  'exhaust-bores': 'exhausts',
};

export const parts: readonly PartLine[] = [
  ...lines('feature', 'skin', {
    body: ['Body', 58, -1, -4, 85],
    'stripe-left': ['Left stripe', 88, 0, 3, 85],
    'stripe-right': ['Right stripe', 88, 0, 3, 85],
    mirrors: ['Mirror shells', 58, -1, -4, 85],
    'engine-cover': ['Engine cover', 46, -1, -3, 70],
  }),
  ...lines('feature', 'trim', { badges: ['Badges', 72, 1, 8, 70] }),
  ...lines('feature', 'wheels', {
    calipers: ['Brake calipers', 45, 2, 4, 60],
    'caliper-lettering': ['Caliper lettering', 92, 0, 2, 50],
    'wheel-spokes': ['Wheel spokes', 72, 0, 0, 60, 'metal'],
  }),
  ...lines('feature', 'cabin', {
    'seat-bolsters': ['Seat bolsters', 32, 3, 6, 12],
    'seat-inserts': ['Seat inserts', 44, 4, 9, 8],
    'seat-piping': ['Seat piping', 78, 1, 8, 12],
    belts: ['Harness belts', 50, 3, 5, 4],
    dashboard: ['Dashboard', 62, 0, 0, 35],
  }),
  ...lines('ground', 'trim', {
    sills: ['Sills', 16, 0, 0, 20],
    splitter: ['Front splitter', 14, 0, 0, 20],
    diffuser: ['Rear diffuser', 14, 0, 0, 15],
    'side-vents': ['Side vents', 14, 0, 0, 20],
    grille: ['Grille bars', 35, 0, 0, 50, 'metal'],
    'windscreen-frame': ['Windscreen frame', 20, 0, 0, 40],
    'door-handles': ['Door handles', 84, 0, 0, 80, 'metal'],
    'fuel-cap': ['Fuel cap', 84, 0, 0, 80, 'metal'],
    exhausts: ['Exhaust tips', 80, 0, 1, 75, 'metal'],
    'badge-rims': ['Badge and lamp rims', 86, 0, 0, 85, 'metal'],
    'mirror-stalks': ['Mirror stalks', 14, 0, 0, 25],
    wipers: ['Wipers', 10, 0, 0, 12],
  }),
  ...lines('ground', 'cabin', {
    tub: ['Tub, door cards and tunnel', 24, 2, 4, 10],
    carpet: ['Carpet', 14, 0, 0, 1],
    'dash-top': ['Dash top', 13, 0, 0, 6],
    'steering-wheel': ['Steering wheel', 14, 1, 1, 12],
    'roll-hoops': ['Roll hoops', 84, 0, 0, 80, 'metal'],
    buckles: ['Belt buckles', 80, 0, 0, 60, 'metal'],
    'gear-lever': ['Gear lever', 76, 0, 0, 70, 'metal'],
    pedals: ['Pedals', 72, 0, 0, 45, 'metal'],
  }),
  ...lines('ground', 'wheels', {
    'wheel-rims': ['Wheel rims', 86, 0, 0, 85, 'metal'],
    'wheel-barrels': ['Wheel barrels', 48, 0, 0, 40, 'metal'],
    'wheel-caps': ['Wheel caps', 24, 0, 0, 50],
  }),
  ...lines('given', 'wheels', {
    tyres: ['Tyres', 12, 0, 0, 3],
    discs: ['Brake discs', 74, 0, 0, 35, 'metal'],
    'disc-hats': ['Disc hats', 38, 0, 0, 20, 'metal'],
    'lug-nuts': ['Wheel nuts', 78, 0, 0, 60, 'metal'],
  }),
  ...lines('given', 'trim', {
    headlamps: ['Headlamps', 88, 0, 1, 90, 'metal'],
    'tail-lamps': ['Tail lamps', 32, 54, 36, 90],
    indicators: ['Indicators', 62, 38, 66, 90],
    'number-plate': ['Number plate', 92, 0, 3, 50],
    'mirror-glass': ['Mirror glass', 84, 0, -1, 95, 'metal'],
    underbody: ['Underbody and wheel wells', 8, 0, 0, 2],
    'exhaust-bores': ['Exhaust bores', 6, 0, 0, 2],
  }),
  ...lines('given', 'cabin', { gauges: ['Gauges', 93, 0, 3, 30] }),
  ...lines('given', 'trim', {
    windscreen: ['Windscreen', 96, -2, 0, 95, 'glass'],
    'lamp-lenses': ['Headlamp lenses', 97, 0, 0, 95, 'glass'],
  }),
  ...lines('gap', 'trim', {
    'panel-gaps': ['Panel gaps', 5, 0, 0, 2],
    'grille-opening': ['Grille opening', 5, 0, 0, 1],
  }),
];
