/**
 * Is the stored roadster as alike left and right as a car is? By reflection (derived): the mirror
 * image of a vertex is a vertex of the same part, or of its twin, leaning the mirrored way.
 * Left out are parts that no car has alike on both sides, and what turns with the wheels one way.
 */
import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, test } from 'vitest';
import { readGlb } from '../../src/car/glb.ts';
import { facetOf, type Mesh, partOf } from '../../src/car/mesh.ts';
import { dot, lengthOf, scale } from '../../src/ground/vector.ts';

// Left-hand drive, filler on the right, wipers sweeping side by side; slots of the discs swept back.
const oneSided = new Set([
  ...['steering-wheel', 'pedals', 'gauges', 'dashboard', 'dash-top', 'tub', 'carpet'],
  ...['gear-lever', 'fuel-cap', 'wipers', 'badge-rims', 'badges', 'disc-hats'],
]);
const twins: Readonly<Record<string, string>> = {
  'stripe-left': 'stripe-right',
  'stripe-right': 'stripe-left',
};
/** Two steps of the grid that positions are stored on, mm. */
const nearMm = 0.6;

describe('The stored roadster', () => {
  let mesh: Mesh;
  let isTwoSided: boolean[];
  beforeAll(async () => {
    const file = new URL('../../models/roadster.glb', import.meta.url);
    mesh = await readGlb(new Uint8Array(await readFile(file)));
    isTwoSided = mesh.parts.map(({ id }) => !oneSided.has(id));
  });

  test('is mirrored vertex for vertex, each leaning the mirrored way within three degrees', () => {
    const { positions: p, normals: n } = mesh;
    const cell = (x: number, y: number, z: number): string =>
      `${Math.floor(x / 2)},${Math.floor(y / 2)},${Math.floor(z / 2)}`;
    const corners = new Map<string, number[]>();
    for (let at = 0; at < p.length; at += 3) {
      const key = cell(p[at]!, p[at + 1]!, p[at + 2]!);
      corners.set(key, [...(corners.get(key) ?? []), at]);
    }
    const partAt = (at: number): string => mesh.parts[partOf(mesh, Math.floor(at / 9))]!.id;
    const hasImage = (at: number): boolean => {
      const [x, y, z] = [-p[at]!, p[at + 1]!, p[at + 2]!];
      const part = twins[partAt(at)] ?? partAt(at);
      for (const dx of [-nearMm, nearMm]) {
        for (const dy of [-nearMm, nearMm]) {
          for (const dz of [-nearMm, nearMm]) {
            for (const there of corners.get(cell(x + dx, y + dy, z + dz)) ?? []) {
              const off = Math.hypot(p[there]! - x, p[there + 1]! - y, p[there + 2]! - z);
              const leaning =
                -n[at]! * n[there]! + n[at + 1]! * n[there + 1]! + n[at + 2]! * n[there + 2]!;
              if (off < nearMm && leaning > 0.9986 && partAt(there) === part) return true;
            }
          }
        }
      }
      return false;
    };
    const without = new Map<string, number>();
    for (let at = 0; at < p.length; at += 3) {
      if (!isTwoSided[partOf(mesh, Math.floor(at / 9))] || hasImage(at)) continue;
      without.set(partAt(at), (without.get(partAt(at)) ?? 0) + 1);
    }
    expect(Object.fromEntries(without)).toEqual({});
  });

  test('has as much of every part on the left as on the right', () => {
    const sides = new Map<string, [left: number, right: number]>();
    for (let triangle = 0; triangle < mesh.nodeOf.length; triangle++) {
      const { centroid, normal } = facetOf(mesh, triangle);
      const part = partOf(mesh, triangle);
      const { id } = mesh.parts[part]!;
      // A facet across the middle counts half on either side.
      if (!isTwoSided[part] || Math.abs(centroid[0]) < 60) continue;
      const sum = sides.get(id === 'stripe-right' ? 'stripe-left' : id) ?? [0, 0];
      sum[centroid[0] > 0 ? 0 : 1] += lengthOf(normal);
      sides.set(id === 'stripe-right' ? 'stripe-left' : id, sum);
    }
    expect(sides.size).toBeGreaterThan(30);
    for (const [id, [left, right]] of sides) {
      expect(Math.abs(left / right - 1), id).toBeLessThan(0.002);
    }
  });

  test('turns every triangle the way its own normals lean, mirrored ones too', () => {
    const astray = new Map<string, number>();
    for (let triangle = 0; triangle < mesh.nodeOf.length; triangle++) {
      const { normal } = facetOf(mesh, triangle);
      const at = triangle * 9;
      const mean = [0, 1, 2].map((axis) =>
        [0, 3, 6].reduce((sum, corner) => sum + mesh.normals[at + corner + axis]!, 0),
      ) as [number, number, number];
      if (dot(scale(normal, 1 / lengthOf(normal)), mean) > 0) continue;
      const { id } = mesh.parts[partOf(mesh, triangle)]!;
      astray.set(id, (astray.get(id) ?? 0) + 1);
    }
    expect(Object.fromEntries(astray)).toEqual({});
  });
});
