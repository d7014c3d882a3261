/**
 * The painted body: the half shell scored along every outline, painted into parts, its openings
 * given walls and floors, then mirrored. Out: facets of body, stripes, engine cover, lamps, gaps
 * and the recessed trim. Metres, car coordinates.
 * Gap width 6 mm full size: a quarter of a millimetre at 1:24, what a sharp scriber leaves
 * (common practice, no source).
 */
import { add, normalize, type Vector3 } from '../../src/ground/vector.ts';
import type { Outline, Shell } from '../mesh/shell.ts';
import { type Facet, Solid } from '../mesh/solid.ts';
import { halfShell } from './grid.ts';
import {
  archRadius,
  axles,
  lowerEdge,
  noseLine,
  placed,
  stationOf,
  tailLine,
  wheelCentreHeight,
} from './lines.ts';
import * as outline from './outlines.ts';
import { sideAt } from './surface.ts';

const halfGap = 0.003;
const lampGap = 0.004;

// Outlines whose edge is a dark gap running round a panel that stays part of the body.
const panels: readonly Outline[] = [outline.bonnet, outline.door, outline.engineCover];
// Small shapes whose curves need cells of half the size.
const fineOutlines: readonly Outline[] = [
  outline.headlamp,
  outline.tailLamp,
  outline.frontIndicator,
  outline.sideVent,
  outline.doorCorners,
  outline.panelCorners,
];
const lampSurrounds: readonly Outline[] = [outline.tailLamp, outline.frontIndicator];

function scored(): Shell {
  const shell = halfShell();
  shell.refine((centre) => fineOutlines.some((shape) => Math.abs(shape(centre)) < 0.04));
  const out: Outline = (point) => point[0];
  shell.score(outline.arch);
  shell.score(outline.below);
  for (const edge of [outline.stripes.inner, outline.stripes.outer]) {
    shell.score((point) => out(point) - edge);
  }
  for (const opening of [
    outline.cabin,
    outline.headlamp,
    outline.grille,
    outline.sideVent,
    outline.plateRecess,
    outline.diffuser,
    outline.splitterLine,
    outline.sillLine,
  ]) {
    shell.score(opening);
  }
  shell.score((point) => outline.headlamp(point) - 2 * lampGap);
  for (const surround of lampSurrounds) {
    shell.score(surround);
    shell.score((point) => surround(point) - lampGap);
  }
  shell.score((point) => Math.max(outline.tailIndicator(point), outline.tailLamp(point)));
  for (const panel of panels) {
    shell.score((point) => panel(point) - halfGap);
    shell.score((point) => panel(point) + halfGap);
  }
  return shell;
}

/** The part a skin triangle belongs to; parts starting with `hole` are left open. */
function partAt(centre: Vector3): string {
  const is = (shape: Outline, by = 0): boolean => shape(centre) < by;
  if (outline.below(centre) > 0) return 'hole-below';
  if (is(outline.arch)) return 'hole-arch';
  if (is(outline.cabin)) return 'hole-cabin';
  if (is(outline.headlamp)) return 'hole-lamp';
  if (is(outline.headlamp, 2 * lampGap)) return 'badge-rims';
  if (is(outline.grille)) return 'hole-grille';
  if (is(outline.sideVent)) return 'hole-vent';
  if (is(outline.plateRecess)) return 'hole-plate';
  if (is(outline.diffuser)) return 'hole-diffuser';
  if (is(outline.tailLamp)) return is(outline.tailIndicator) ? 'indicators' : 'tail-lamps';
  if (is(outline.frontIndicator)) return 'indicators';
  if (lampSurrounds.some((surround) => is(surround, lampGap))) return 'panel-gaps';
  if (panels.some((panel) => Math.abs(panel(centre)) < halfGap)) return 'panel-gaps';
  if (is(outline.splitterLine)) return 'splitter';
  if (is(outline.sillLine)) return 'sills';
  if (centre[0] > outline.stripes.inner && centre[0] < outline.stripes.outer) return 'stripe-left';
  return is(outline.engineCover) ? 'engine-cover' : 'body';
}

const isSkin = (part: string): boolean => !part.startsWith('hole');

type Move = (point: Vector3) => Vector3;

/** Walls from the edge of a hole through each of `moves` in turn. */
function walls(solid: Solid, shell: Shell, hole: string, steps: readonly [string, Move][]): void {
  for (const [a, b] of shell.edges((part) => part === hole, isSkin)) {
    let [fromA, fromB] = [shell.points[a]!, shell.points[b]!];
    const [edgeA, edgeB] = [fromA, fromB];
    for (const [part, move] of steps) {
      const [toA, toB] = [move(edgeA), move(edgeB)];
      solid.quad(part, fromB, fromA, toA, toB);
      [fromA, fromB] = [toA, toB];
    }
  }
}

/** The hole's own triangles, moved back to close the recess. */
function floor(solid: Solid, shell: Shell, hole: string, part: string, move: Move): void {
  for (const cell of shell.cells.filter((one) => one.part === hole)) {
    const [a, b, c] = cell.corners.map((k) => move(shell.points[k]!));
    solid.triangle(part, a!, b!, c!);
  }
}

// Inwards in plan from an outline, by its gradient.
function inwardOf(shape: Outline, by: number, down: number): Move {
  const step = 1e-4;
  return (point) => {
    const slope = (axis: 0 | 2): number => {
      const ahead: [number, number, number] = [...point];
      const behind: [number, number, number] = [...point];
      ahead[axis] += step;
      behind[axis] -= step;
      return shape(ahead) - shape(behind);
    };
    const across = Math.abs(point[0]) < 1e-9 ? 0 : slope(0);
    const [x, , z] = normalize([across, 0, slope(2)]);
    return add(point, [-x * by, down, -z * by]);
  };
}

// The floor pan and the wheel wells close the car from below: dark, simple, never seen close.
function underneath(): Solid {
  const solid = new Solid(30);
  const inner = 0.47;
  const high = 0.012;
  for (const axle of [axles.front, axles.rear]) {
    const reach = archRadius + 0.02;
    const rows = Array.from({ length: 13 }, (_, k) => {
      const angle = Math.PI * (1 - (k - 1) / 10);
      const isFoot = k === 0 || k === 12;
      const station = axle + reach * (isFoot ? (k === 0 ? -1 : 1) : Math.cos(angle));
      const y = isFoot ? lowerEdge(axle) : wheelCentreHeight + reach * Math.sin(angle);
      const skirt = sideAt(station, Math.max(y, 0.2)) - 0.02;
      return [placed(station, y, skirt), placed(station, y, inner)];
    });
    solid.grid('underbody', rows);
    const hub = placed(axle, lowerEdge(axle), inner);
    rows.slice(1).forEach((row, k) => {
      solid.triangle('underbody', hub, rows[k]![1]!, row[1]!);
    });
  }
  solid.facingFrom(0, ([x, , z]) => [
    x + 0.2,
    wheelCentreHeight,
    2.05 - (z > 2.05 - 2 ? axles.front : axles.rear) + (x < inner + 0.01 ? z - z : 0),
  ]);
  const from = solid.triangles.length;
  const inWell = (station: number): boolean =>
    [axles.front, axles.rear].some((axle) => Math.abs(station - axle) < archRadius + 0.03);
  const stations = [
    0.1, 0.16, 0.28, 0.427, 0.429, 1.171, 1.173, 2, 2.897, 2.899, 3.641, 3.643, 3.8, 3.9, 4,
  ];
  const rim = stations.map((station) => {
    const y = lowerEdge(station) + high;
    // Inside the nose and the tail the pan stops short of the skin.
    const bowed = Math.min((station - noseLine(y)) / 0.3, (tailLine(y) - station) / 0.2);
    const end = 0.85 * Math.sqrt(Math.max(0, bowed - 0.04));
    return [
      placed(station, y, 0),
      placed(station, y, inWell(station) ? inner : Math.min(end, sideAt(station, y) - 0.03)),
    ];
  });
  solid.grid('underbody', rim);
  return solid.facingFrom(from, ([x, y, z]) => [x, y - 1, z]);
}

// The cabin's lining at a height: door cards lean out, the bulkhead leans back, and ahead of the
// dashboard the wall steps forward to make the footwells.
function lining(y: number): Move {
  const edge = inwardOf(outline.cabin, 0.034, 0);
  return (point) => {
    const [x, , z] = edge(point);
    const station = stationOf([x, y, z]);
    const isAhead = station < 1.69 + 0.06 * (Math.abs(x) / 0.6) ** 2;
    const out = Math.min(Math.abs(x) * 1.01, 0.625);
    return placed(isAhead ? 1.27 : Math.min(station, 2.8), y, Math.sign(x) * out);
  };
}

function recesses(shell: Shell): Solid {
  const solid = new Solid(30);
  const back =
    (by: number): Move =>
    (point) =>
      add(point, [0, 0, by]);
  walls(solid, shell, 'hole-arch', [['body', (point) => add(point, [-0.03, 0, 0])]]);
  walls(solid, shell, 'hole-cabin', [
    ['tub', inwardOf(outline.cabin, 0.014, 0.009)],
    ['tub', inwardOf(outline.cabin, 0.034, -0.05)],
    ['tub', lining(0.34)],
    ['carpet', lining(0.2)],
  ]);
  const bucket: Move = (point) => add(point, [-0.008, -0.075, -0.03]);
  walls(solid, shell, 'hole-lamp', [['body', bucket]]);
  floor(solid, shell, 'hole-lamp', 'body', bucket);
  walls(solid, shell, 'hole-grille', [
    ['grille', back(-0.012)],
    [
      'grille-opening',
      (point) => [point[0] * 0.97, 0.34 + (point[1] - 0.34) * 0.9, point[2] - 0.1],
    ],
  ]);
  floor(solid, shell, 'hole-grille', 'grille-opening', (point) => [
    point[0] * 0.97,
    0.34 + (point[1] - 0.34) * 0.9,
    point[2] - 0.1,
  ]);
  const vent: Move = (point) => add(point, [-0.035, 0, 0.012]);
  walls(solid, shell, 'hole-vent', [['side-vents', vent]]);
  floor(solid, shell, 'hole-vent', 'side-vents', vent);
  walls(solid, shell, 'hole-plate', [['body', back(0.022)]]);
  floor(solid, shell, 'hole-plate', 'body', back(0.022));
  walls(solid, shell, 'hole-diffuser', [['diffuser', back(0.05)]]);
  floor(solid, shell, 'hole-diffuser', 'diffuser', back(0.05));
  return solid;
}

/** The other half: mirrored in x, with the left stripe become the right. */
function mirrored(facets: readonly Facet[]): Facet[] {
  const flip = (v: Vector3): Vector3 => [-v[0], v[1], v[2]];
  return facets.map(({ part, corners: [a, b, c], normals: [m, n, o] }) => ({
    part: part === 'stripe-left' ? 'stripe-right' : part,
    corners: [flip(a), flip(c), flip(b)],
    normals: [flip(m), flip(o), flip(n)],
  }));
}

/** Every facet of the skin and its recesses, both halves. */
export function bodyFacets(): Facet[] {
  const shell = scored();
  shell.paint(partAt);
  const lens = shell
    .facets((part) => part === 'hole-lamp')
    .map((facet) => ({ ...facet, part: 'lamp-lenses' }));
  const half = [
    ...shell.facets(isSkin),
    ...lens,
    ...recesses(shell).facets(),
    ...underneath().facets(),
  ];
  return [...half, ...mirrored(half)];
}
