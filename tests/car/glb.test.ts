/** Are the nodes of a GLB read as glTF 2.0 places them? Against plain geometry (derived). */
import { Document, WebIO } from '@gltf-transform/core';
import { describe, expect, it } from 'vitest';
import { readGlb } from '../../src/car/glb.ts';
import { cornerOf, facetOf } from '../../src/car/mesh.ts';

/** One triangle at x = 1 m that faces +x, as a node with the given scale. */
async function triangleScaled(scale: [number, number, number], isIndexed: boolean) {
  const document = new Document();
  const buffer = document.createBuffer();
  const vectors = (values: number[]) =>
    document.createAccessor().setType('VEC3').setArray(new Float32Array(values)).setBuffer(buffer);
  const primitive = document
    .createPrimitive()
    .setAttribute('POSITION', vectors([1, 0, 0, 1, 1, 0, 1, 0, 1]))
    .setAttribute('NORMAL', vectors([1, 0, 0, 1, 0, 0, 1, 0, 0]));
  if (isIndexed) {
    const indices = document.createAccessor().setType('SCALAR').setBuffer(buffer);
    primitive.setIndices(indices.setArray(new Uint16Array([0, 1, 2])));
  }
  const node = document
    .createNode('body')
    .setMesh(document.createMesh('body').addPrimitive(primitive))
    .setScale(scale)
    .setExtras({ part: 'body', role: 'feature', group: 'skin', name: 'Body' });
  document.createScene().addChild(node);
  return readGlb(await new WebIO().writeBinary(document));
}

describe('a mirrored node', () => {
  for (const isIndexed of [true, false]) {
    const how = isIndexed ? 'indexed' : 'unindexed';
    it(`faces the mirrored way, ${how}: glTF 2.0 § 3.7.4 turns its winding round`, async () => {
      const plain = await triangleScaled([1, 1, 1], isIndexed);
      const mirrored = await triangleScaled([-1, 1, 1], isIndexed);
      // Derived: half a square metre facing +x becomes half a square metre facing −x.
      expect(facetOf(plain, 0).normal[0]).toBeCloseTo(500_000, 3);
      expect(facetOf(mirrored, 0).normal[0]).toBeCloseTo(-500_000, 3);
      expect([...mirrored.normals.slice(0, 3)].map((value) => value + 0)).toEqual([-1, 0, 0]);
      expect(cornerOf(mirrored, 0, 0)[0]).toBe(-1000);
    });
  }

  it('mirrored twice is as it was', async () => {
    const twice = await triangleScaled([-1, -1, 1], true);
    expect(facetOf(twice, 0).normal[0]).toBeCloseTo(-500_000, 3);
    expect(twice.normals[0]).toBe(-1);
  });
});

describe('nodes of one name', () => {
  it('are one placing of their part, and of two names two', async () => {
    const halves = async (other: string) => {
      const document = new Document();
      const buffer = document.createBuffer();
      const values = new Float32Array([0, 0, 0, 1, 0, 0, 0, 1, 0]);
      const corners = document.createAccessor().setType('VEC3').setArray(values).setBuffer(buffer);
      const half = document.createMesh('half');
      half.addPrimitive(document.createPrimitive().setAttribute('POSITION', corners));
      const scene = document.createScene();
      for (const [name, side] of [
        ['bonnet', 1],
        [other, -1],
      ] as const) {
        const node = document.createNode(name).setMesh(half).setScale([side, 1, 1]);
        scene.addChild(
          node.setExtras({ part: 'body', role: 'feature', group: 'skin', name: 'Body' }),
        );
      }
      return readGlb(await new WebIO().writeBinary(document));
    };
    const together = await halves('bonnet');
    expect([together.nodes.length, ...together.nodeOf]).toEqual([1, 0, 0]);
    const apart = await halves('boot');
    expect([apart.nodes.length, ...apart.nodeOf]).toEqual([2, 0, 1]);
  });
});
