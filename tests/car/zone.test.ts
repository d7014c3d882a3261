/** Which zone a surface falls in, on a plain car of boxes; expected zones by the trade's words. */
import { describe, expect, it } from 'vitest';
import { facetOf, type Mesh } from '../../src/car/mesh.ts';
import { zones } from '../../src/car/table.ts';
import { zonesOf } from '../../src/car/zone.ts';
import { box, meshFrom, quad } from './shape.ts';

const wheel = (x: number, z: number) =>
  box('tyres', [x - 100, 0, z - 320], [x + 100, 640, z + 320], { group: 'wheels', role: 'given' });
const shell = box('body', [-800, 200, -2000], [800, 900, 2000]);
const screen = quad(
  'windscreen',
  [
    [-600, 900, 600],
    [600, 900, 600],
    [600, 1250, 200],
    [-600, 1250, 200],
  ],
  { isGlass: true, role: 'given', group: 'trim' },
);
const seats = box('seats', [-500, 300, -600], [500, 880, 300], { group: 'cabin' });
const badge = box('badges', [-30, 500, 2000], [30, 560, 2006], { group: 'trim' });
const car = [
  shell,
  screen,
  seats,
  badge,
  ...[-700, 700].flatMap((x) => [wheel(x, 1300), wheel(x, -1300)]),
];

/** Zones of one part's triangles whose outward normal points mostly along an axis. */
function zonesFacing(mesh: Mesh, part: string, axis: 0 | 1 | 2, sign: number): Set<string> {
  const zoneOf = zonesOf(mesh);
  const found = new Set<string>();
  for (let triangle = 0; triangle < zoneOf.length; triangle++) {
    const { normal } = facetOf(mesh, triangle);
    if (mesh.parts[mesh.nodes[mesh.nodeOf[triangle]!]!.part]!.id !== part) continue;
    if (normal[axis] * sign > 0.9 * Math.hypot(...normal)) found.add(zones[zoneOf[triangle]!]!);
  }
  return found;
}

describe('zones', () => {
  const mesh = meshFrom(car);

  it('calls the front face nose, the rear face tail and the sides flank', () => {
    expect(zonesFacing(mesh, 'body', 2, 1)).toEqual(new Set(['nose']));
    expect(zonesFacing(mesh, 'body', 2, -1)).toEqual(new Set(['tail']));
    expect(zonesFacing(mesh, 'body', 0, 1)).toEqual(new Set(['flank']));
  });

  it('puts seats in the cabin, tyres in the wheels and a badge between the lamps on the nose', () => {
    expect(zonesFacing(mesh, 'seats', 1, 1)).toEqual(new Set(['cabin']));
    expect(zonesFacing(mesh, 'tyres', 0, 1)).toEqual(new Set(['wheels']));
    expect(zonesFacing(mesh, 'badges', 1, 1)).toEqual(new Set(['nose']));
  });

  it('parts bonnet from deck at the windscreen and the back of the cabin', () => {
    const panel = (part: string, from: number, to: number) =>
      quad(part, [
        [-700, 905, from],
        [-700, 905, to],
        [700, 905, to],
        [700, 905, from],
      ]);
    const panels = meshFrom([
      ...car,
      panel('bonnet-panel', 1000, 1800),
      panel('boot-lid', -1800, -1000),
    ]);
    expect(zonesFacing(panels, 'bonnet-panel', 1, 1)).toEqual(new Set(['bonnet']));
    expect(zonesFacing(panels, 'boot-lid', 1, 1)).toEqual(new Set(['deck']));
  });

  it('still finds nose, flank and tail in a car that names neither wheels, glass nor cabin', () => {
    const bare = meshFrom([shell]);
    expect(zonesFacing(bare, 'body', 2, 1)).toEqual(new Set(['nose']));
    expect(zonesFacing(bare, 'body', 0, -1)).toEqual(new Set(['flank']));
    expect(zonesFacing(bare, 'body', 2, -1)).toEqual(new Set(['tail']));
  });
});
