/**
 * Do the tools that make a car's surface keep its shape? Against a sphere, whose points, normals
 * and area are known (derived), and against the triangles before they were put in order (oracle).
 */
import { describe, expect, it } from 'vitest';
import { ordered } from '../../models/mesh/order.ts';
import { curved, type Flat } from '../../models/mesh/outline.ts';
import { Shell } from '../../models/mesh/shell.ts';
import { Solid } from '../../models/mesh/solid.ts';
import { lathe } from '../../models/mesh/sweep.ts';
import { thin } from '../../models/mesh/thin.ts';
import { cross, dot, lengthOf, normalize, scale, subtract } from '../../src/ground/vector.ts';

/** The part of a unit sphere over a square, as a shell of `steps` × `steps` cells. */
function cap(steps: number): Shell {
  const shell = new Shell({ hit: ({ along }) => normalize(along), normal: (point) => point });
  const at = (i: number, j: number) => {
    const [x, y] = [(1.2 * i) / steps - 0.6, (1.2 * j) / steps - 0.6];
    return shell.vertex({ from: [0, 0, 0], along: normalize([x, y, 1]) });
  };
  const net = Array.from({ length: steps + 1 }, (_, i) =>
    Array.from({ length: steps + 1 }, (_, j) => at(i, j)),
  );
  for (let i = 0; i < steps; i++) {
    for (let j = 0; j < steps; j++) {
      const [a, b, c, d] = [net[i]![j]!, net[i + 1]![j]!, net[i + 1]![j + 1]!, net[i]![j + 1]!];
      shell.cells.push({ corners: [a, b, c], part: 'body' }, { corners: [a, c, d], part: 'body' });
    }
  }
  return shell;
}
const areaOf = (shell: Shell, part?: string): number =>
  shell.cells
    .filter((cell) => part === undefined || cell.part === part)
    .reduce((sum, { corners }) => {
      const [a, b, c] = corners.map((k) => shell.points[k]!);
      return sum + lengthOf(cross(subtract(b!, a!), subtract(c!, a!))) / 2;
    }, 0);
const isDisc = ([x, y]: readonly [number, number, number]): number => Math.hypot(x, y) - 0.3;

describe('a thinned shell', () => {
  const shell = cap(40);
  shell.score(isDisc);
  shell.paint((centre) => (isDisc(centre) < 0 ? 'disc' : 'body'));
  const before = { cells: shell.cells.length, area: areaOf(shell) };
  thin(shell, {
    ...{ bend: 0.01, bendFlat: 0.01, bendShare: 0 },
    ...{ stray: 0.001, line: 0.0008, longest: 0.3 },
    isKept: () => false,
  });

  it('has far fewer triangles and, within half a per cent, the same area', () => {
    expect(shell.cells.length).toBeLessThan(before.cells / 3);
    expect(Math.abs(areaOf(shell) / before.area - 1)).toBeLessThan(0.005);
  });

  it('keeps an outline where it was: a disc of radius 0.3 keeps its area', () => {
    // Derived: a cap of height h on a unit sphere has the area 2πh.
    const height = 1 - Math.sqrt(1 - 0.3 ** 2);
    expect(Math.abs(areaOf(shell, 'disc') / (2 * Math.PI * height) - 1)).toBeLessThan(0.01);
  });

  it('is still one sheet, every triangle facing outwards', () => {
    const edges = new Map<string, number>();
    for (const { corners } of shell.cells) {
      const [a, b, c] = corners.map((k) => shell.points[k]!);
      expect(dot(cross(subtract(b!, a!), subtract(c!, a!)), a!)).toBeGreaterThan(0);
      for (const k of [0, 1, 2]) {
        const edge = `${corners[k]},${corners[(k + 1) % 3]}`;
        edges.set(edge, (edges.get(edge) ?? 0) + 1);
      }
    }
    // No edge is run twice the same way: no overlap, no fin.
    expect(Math.max(...edges.values())).toBe(1);
  });

  it('strays from the sphere by no more than was allowed', () => {
    for (const { corners } of shell.cells) {
      for (const k of [0, 1, 2]) {
        const [a, b] = [shell.points[corners[k]!]!, shell.points[corners[(k + 1) % 3]!]!];
        const middle = scale([a[0] + b[0], a[1] + b[1], a[2] + b[2]], 0.5);
        // An outline may stray by its own allowance besides.
        expect(1 - lengthOf(middle)).toBeLessThan(0.002);
      }
    }
  });
});

describe('triangles put in order', () => {
  it('are the same triangles, each turned the same way', () => {
    const solid = new Solid();
    lathe(
      solid,
      'body',
      [
        [0.2, 0],
        [0.3, 0.1],
        [0.1, 0.3],
        [0, 0.3],
      ],
      17,
    );
    const numbers = new Map<string, number>();
    const indices = solid.triangles.flatMap(({ corners }) =>
      corners.map((corner) => {
        const known = numbers.get(corner.join()) ?? numbers.size;
        numbers.set(corner.join(), known);
        return known;
      }),
    );
    const order = ordered(indices);
    // A triangle starts anywhere, so it is told by its lowest turn.
    const told = (list: readonly number[]) =>
      Array.from({ length: list.length / 3 }, (_, k) => list.slice(k * 3, k * 3 + 3))
        .map(([a, b, c]) => [`${a} ${b} ${c}`, `${b} ${c} ${a}`, `${c} ${a} ${b}`].sort()[0])
        .sort();
    expect(told(order.indices.map((k) => order.vertices[k]!))).toEqual(told(indices));
    expect(new Set(order.vertices).size).toBe(numbers.size);
  });
});

describe('a curved outline', () => {
  it('turns a square into 16 points within it, none turning more than 45°', () => {
    const square: Flat[] = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    const points = curved(square);
    // Derived: cutting corners twice makes four points of each, and turns 90° into at most 45°.
    expect(points).toHaveLength(16);
    points.forEach(([x, y], k) => {
      expect(Math.min(x, y, 1 - x, 1 - y)).toBeGreaterThanOrEqual(0);
      const [a, b] = [points[(k + 15) % 16]!, points[(k + 1) % 16]!];
      const turn = Math.atan2(b[1] - y, b[0] - x) - Math.atan2(y - a[1], x - a[0]) + 4 * Math.PI;
      expect(turn % (2 * Math.PI)).toBeLessThanOrEqual(Math.PI / 4 + 1e-9);
    });
  });
});
