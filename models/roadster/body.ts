/**
 * The painted body: the half shell scored along every outline, painted into parts, its openings
 * given walls and floors, then mirrored. Out: facets of body, stripes, engine cover, lamps, gaps
 * and the recessed trim. Metres, car coordinates.
 * Gap width 6 mm full size: a quarter of a millimetre at 1:24, what a sharp scriber leaves
 * (common practice, no source).
 */
import { add, cross, normalize, type Vector3 } from '../../src/ground/vector.ts';
import type { Outline, Shell } from '../mesh/shell.ts';
import { Solid, type Facet } from '../mesh/solid.ts';
import { halfShell } from './grid.ts';
import { archRadius, axles, stationOf, wheelCentreHeight } from './lines.ts';
import * as outline from './outlines.ts';

const halfGap = 0.003;
const lampGap = 0.004;

// Outlines whose edge is a dark gap running round a panel that stays part of the body.
const panels: readonly Outline[] = [outline.bonnet, outline.door, outline.engineCover];
const lampSurrounds: readonly Outline[] = [outline.tailLamp, outline.frontIndicator];

function scored(): Shell {
  const shell = halfShell();
  const out: Outline = (point) => point[0];
  shell.score(outline.arch);
  shell.score(outline.below);
  shell.score((point) => outline.arch(point) - 0.05);
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
  if (is(outline.below) === false && outline.below(centre) > 0) return 'hole-below';
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

type Move = (point: Vector3) => Vector3;

/** Walls from the edge of a hole through each of `moves` in turn. */
function walls(solid: Solid, shell: Shell, hole: string, steps: readonly [string, Move][]): void {
  for (const [a, b] of shell.edges((part) => part === hole)) {
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

function wheelWell(solid: Solid, shell: Shell): void {
  const axleOf = (point: Vector3): number =>
    stationOf(point) < (axles.front + axles.rear) / 2 ? axles.front : axles.rear;
  const outwards = (point: Vector3, by: number): Vector3 => {
    const along = -(stationOf(point) - axleOf(point));
    const rise = Math.max(0, point[1] - wheelCentreHeight);
    const away = Math.hypot(along, rise) || 1;
    return add(point, [0, (rise / away) * by, (along / away) * by]);
  };
  const inner = 0.47;
  walls(solid, shell, 'hole-arch', [
    ['body', (point) => add(point, [-0.028, 0, 0])],
    ['underbody', (point) => outwards(add(point, [-0.03, 0, 0]), 0.03)],
    ['underbody', (point) => [inner, ...tail(outwards(point, 0.03))]],
    ['underbody', (point) => [inner, wheelCentreHeight, 2.05 - axleOf(point)]],
  ]);
  for (const axle of [axles.front, axles.rear]) {
    const reach = archRadius + 0.03;
    const [front, rear] = [2.05 - axle + reach, 2.05 - axle - reach];
    const low = 0.135;
    solid.quad('underbody', [0, low, front], [0, low, rear], [inner, low, rear], [inner, low, front]);
    solid.quad(
      'underbody',
      [inner, low, front],
      [inner, low, rear],
      [inner, wheelCentreHeight, rear],
      [inner, wheelCentreHeight, front],
    );
  }
}

const tail = (point: Vector3): [number, number] => [point[1], point[2]];

function recesses(shell: Shell): Solid {
  const solid = new Solid(30);
  const back = (by: number): Move => (point) => add(point, [0, 0, by]);
  wheelWell(solid, shell);
  walls(solid, shell, 'hole-below', [
    ['underbody', (point) => [point[0] * 0.97, point[1] + 0.004, point[2] * 0.99]],
    ['underbody', (point) => [0, point[1] + 0.004, point[2] * 0.99]],
  ]);
  walls(solid, shell, 'hole-cabin', [
    ['tub', inwardOf(outline.cabin, 0.014, 0.009)],
    ['tub', inwardOf(outline.cabin, 0.03, 0.002)],
    ['tub', inwardOf(outline.cabin, 0.034, -0.05)],
  ]);
  const bucket: Move = (point) => add(point, [-0.008, -0.075, -0.03]);
  walls(solid, shell, 'hole-lamp', [['body', bucket]]);
  floor(solid, shell, 'hole-lamp', 'body', bucket);
  walls(solid, shell, 'hole-grille', [
    ['grille', back(-0.012)],
    ['grille-opening', (point) => [point[0] * 0.97, 0.34 + (point[1] - 0.34) * 0.9, point[2] - 0.1]],
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
    ...shell.facets((part) => !part.startsWith('hole')),
    ...lens,
    ...recesses(shell).facets(),
  ];
  return [...half, ...mirrored(half)];
}

/** The unit normal of a triangle, for checks. */
export const faceNormal = ([a, b, c]: Facet['corners']): Vector3 =>
  normalize(
    cross([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]),
  );
