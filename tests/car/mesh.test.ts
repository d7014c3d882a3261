/** A car without some of its parts: what is left is exactly the rest. Derived: triangles counted. */
import { describe, expect, it } from 'vitest';
import { boundsOf, meshWithout, partOf } from '../../src/car/mesh.ts';
import { box, meshFrom } from './shape.ts';

// Twelve triangles a box; the mirrors are two boxes, so two nodes of one part.
const mesh = meshFrom([
  box('body', [-10, 0, -20], [10, 8, 20]),
  box('mirrors', [10, 6, 5], [14, 9, 7]),
  box('mirrors', [-14, 6, 5], [-10, 9, 7]),
  box('badge', [-1, 4, 20], [1, 6, 21]),
]);
const bare = meshWithout(mesh, new Set(['mirrors']));

describe('a mesh without its mirrors', () => {
  it('lacks their triangles and no others', () => {
    expect(mesh.nodeOf.length).toBe(48);
    expect(bare.nodeOf.length).toBe(24);
    expect(bare.positions.length).toBe(24 * 9);
    expect(bare.normals.length).toBe(24 * 9);
    const owners = Array.from(bare.nodeOf, (_, triangle) => bare.parts[partOf(bare, triangle)]!.id);
    expect(owners.filter((id) => id === 'body')).toHaveLength(12);
    expect(owners.filter((id) => id === 'badge')).toHaveLength(12);
  });

  it('is as wide as the body alone', () => {
    expect(boundsOf(mesh)).toEqual({ low: [-14, 0, -20], high: [14, 9, 21] });
    expect(boundsOf(bare)).toEqual({ low: [-10, 0, -20], high: [10, 8, 21] });
  });

  it('keeps every corner of what stays, in order', () => {
    const [bodyEnd, badgeStart] = [12 * 9, 36 * 9];
    expect([...bare.positions]).toEqual([
      ...mesh.positions.slice(0, bodyEnd),
      ...mesh.positions.slice(badgeStart),
    ]);
    expect([...bare.normals]).toEqual([
      ...mesh.normals.slice(0, bodyEnd),
      ...mesh.normals.slice(badgeStart),
    ]);
  });

  it('keeps the places of parts and nodes, so that marks still fit', () => {
    expect(bare.parts).toBe(mesh.parts);
    expect(bare.nodes).toBe(mesh.nodes);
  });
});

it('a mesh that lacks nothing is its own', () => {
  expect(meshWithout(mesh, new Set())).toBe(mesh);
  expect(meshWithout(mesh, new Set(['spoiler']))).toBe(mesh);
});

it('a mesh without all its parts is empty', () => {
  expect(meshWithout(mesh, new Set(['body', 'mirrors', 'badge'])).positions.length).toBe(0);
});
