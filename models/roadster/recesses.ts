/**
 * What lies behind the skin's openings: walls from each edge, floors, lamp bowls and the lenses
 * that close them. In: the scored and painted shell. Metres, car coordinates, left half.
 * Depths and domes are our own judgement, by eye.
 */
import {
  add,
  clamp,
  cross,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../src/ground/vector.ts';
import type { Outline, Shell } from '../mesh/shell.ts';
import { type Facet, Solid } from '../mesh/solid.ts';
import { placed, stationOf } from './lines.ts';
import * as outline from './outlines.ts';

type Move = (point: Vector3) => Vector3;

/** Walls from the edge of a hole through each of `moves` in turn. */
function walls(
  solid: Solid,
  shell: Shell,
  hole: string | readonly string[],
  steps: readonly [part: string, move: Move][],
): void {
  const isHole = (part: string): boolean => [hole].flat().includes(part);
  for (const [a, b] of shell.edges(isHole, (part) => !part.startsWith('hole'))) {
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

const back =
  (by: number): Move =>
  (point) =>
    add(point, [0, 0, by]);

// Along the skin's own normal: sunk below it, or proud of it by a dome that rises from the edge.
const sunk =
  (shell: Shell, by: number): Move =>
  (point) =>
    add(point, scale(shell.surface.normal(point), -by));
const domed =
  (shell: Shell, shape: Outline, edge: number, crown: number, run: number): Move =>
  (point) => {
    const t = clamp(-shape(point) / run, 0, 1);
    return sunk(shell, -edge - crown * t * (2 - t))(point);
  };

/** Lamps whose lens is a dome of its own: sunk edge, part, outline, rise and run of the dome. */
const lensShapes = [
  ['hole-tail', 'tail-lamps', outline.tailLamp, 0.01, 0.036],
  ['hole-signal', 'indicators', outline.tailLamp, 0.01, 0.036],
  ['hole-indicator', 'indicators', outline.frontIndicator, 0.011, 0.02],
] as const;

/** The clear cover of the headlamp, part of the skin, and the domes of the other lamps. */
export function lenses(shell: Shell): Facet[] {
  const clear = shell
    .facets((part) => part === 'hole-lamp')
    .map((facet) => ({ ...facet, part: 'lamp-lenses' }));
  const domes = lensShapes.flatMap(([hole, part, shape, crown, run]) => {
    const proud = domed(shell, shape, -0.002, crown, run);
    return shell
      .facets((worn) => worn === hole)
      .map(({ corners, normals: [m, n, o] }): Facet => {
        const [a, b, c] = corners;
        return {
          part,
          corners: [proud(a), proud(b), proud(c)],
          normals: [leant(proud, a, m), leant(proud, b, n), leant(proud, c, o)],
        };
      });
  });
  return [...clear, ...domes];
}

// The normal of a moved surface: across two steps along it, both moved.
function leant(move: Move, point: Vector3, normal: Vector3): Vector3 {
  const step = 5e-4;
  const u = normalize(cross([0, 1, 0], normal));
  const w = cross(normal, u);
  const slope = (along: Vector3): Vector3 =>
    subtract(move(add(point, scale(along, step))), move(add(point, scale(along, -step))));
  return normalize(cross(slope(u), slope(w)));
}

/** Walls and floors of every opening. */
export function recesses(shell: Shell): Solid {
  const solid = new Solid(30);
  walls(solid, shell, 'hole-arch', [['body', (point) => add(point, [-0.03, 0, 0])]]);
  walls(solid, shell, 'hole-cabin', [
    ['tub', inwardOf(outline.cabin, 0.014, 0.009)],
    ['tub', inwardOf(outline.cabin, 0.034, -0.05)],
    ['tub', lining(0.34)],
    ['carpet', lining(0.2)],
  ]);
  const bucket: Move = (point) => add(point, [-0.008, -0.085, -0.03]);
  walls(solid, shell, 'hole-lamp', [['body', bucket]]);
  floor(solid, shell, 'hole-lamp', 'body', bucket);
  for (const hole of [['hole-tail', 'hole-signal'], ['hole-indicator']]) {
    walls(solid, shell, hole, [['panel-gaps', sunk(shell, 0.003)]]);
  }
  const mouth: Move = ([x, y, z]) => [x * 0.97, 0.33 + (y - 0.33) * 0.9, z - 0.1];
  walls(solid, shell, 'hole-grille', [
    ['grille', back(-0.012)],
    ['grille-opening', mouth],
  ]);
  floor(solid, shell, 'hole-grille', 'grille-opening', mouth);
  const vent: Move = (point) => add(point, [-0.035, 0, 0.012]);
  walls(solid, shell, 'hole-vent', [['side-vents', vent]]);
  floor(solid, shell, 'hole-vent', 'side-vents', vent);
  walls(solid, shell, 'hole-plate', [['body', back(0.024)]]);
  floor(solid, shell, 'hole-plate', 'body', back(0.024));
  walls(solid, shell, 'hole-diffuser', [['diffuser', back(0.09)]]);
  floor(solid, shell, 'hole-diffuser', 'diffuser', back(0.09));
  return solid;
}
