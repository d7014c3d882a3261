/**
 * The stored roadster: is it the car its sources make, sound for any glTF reader, small enough to
 * open over a phone, and does it carry every part? Oracle: the Khronos glTF validator, a second
 * implementation; limits on triangles and bytes are our own budget (our judgement).
 */
import { readFile } from 'node:fs/promises';
import { brotliCompressSync, constants } from 'node:zlib';
import { WebIO } from '@gltf-transform/core';
import { KHRMeshQuantization } from '@gltf-transform/extensions';
import validator from 'gltf-validator';
import { beforeAll, describe, expect, test } from 'vitest';
import { modelBytes } from '../../models/roadster/model.ts';
import { parts } from '../../models/roadster/parts.ts';
import { readGlb } from '../../src/car/glb.ts';
import { facetOf, type Mesh } from '../../src/car/mesh.ts';
import { lengthOf } from '../../src/ground/vector.ts';

describe('The stored roadster', () => {
  let bytes: Uint8Array;
  let mesh: Mesh;
  beforeAll(async () => {
    bytes = new Uint8Array(await readFile(new URL('../../models/roadster.glb', import.meta.url)));
    mesh = await readGlb(bytes);
  });

  test('is byte for byte what its sources make', async () => {
    expect(Buffer.from(await modelBytes()).equals(Buffer.from(bytes))).toBe(true);
  });

  test('passes the Khronos validator without an error or a warning', async () => {
    const { issues } = await validator.validateBytes(bytes);
    expect([issues.numErrors, issues.numWarnings]).toEqual([0, 0]);
  });

  test('keeps to its budget of 130 kB over the wire', () => {
    const packed = brotliCompressSync(bytes, {
      params: { [constants.BROTLI_PARAM_QUALITY]: 11 },
    });
    expect(packed.length).toBeLessThanOrEqual(130_000);
  });

  test('stores at most 20 000 triangles, none without area, every normal one long', async () => {
    const document = await new WebIO().registerExtensions([KHRMeshQuantization]).readBinary(bytes);
    const counts = document
      .getRoot()
      .listMeshes()
      .flatMap((one) => one.listPrimitives())
      .map((one) => (one.getIndices()?.getCount() ?? 0) / 3);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(20_000);
    const areas = mesh.nodeOf.map((_, k) => (lengthOf(facetOf(mesh, k).normal) > 0 ? 0 : 1));
    expect(areas.reduce((sum, one) => sum + one, 0)).toBe(0);
    let worst = 0;
    for (let k = 0; k < mesh.normals.length; k += 3) {
      const [x, y, z] = mesh.normals.subarray(k, k + 3);
      worst = Math.max(worst, Math.abs(Math.hypot(x!, y!, z!) - 1));
    }
    expect(worst).toBeLessThan(0.01);
  });

  test('wears every part on its list and no other', () => {
    expect(mesh.parts.map(({ id }) => id).sort()).toEqual(parts.map(({ id }) => id).sort());
  });

  test('is 4.1 m long, as its drawing says, and stands on the ground', () => {
    const low = [0, 0, 0].fill(Number.POSITIVE_INFINITY);
    const high = [0, 0, 0].fill(Number.NEGATIVE_INFINITY);
    mesh.positions.forEach((value, k) => {
      low[k % 3] = Math.min(low[k % 3]!, value);
      high[k % 3] = Math.max(high[k % 3]!, value);
    });
    expect(Math.abs(high[2]! - low[2]! - 4100)).toBeLessThan(80);
    expect(Math.abs(low[1]!)).toBeLessThan(5);
    expect(Math.abs(low[0]! + high[0]!)).toBeLessThan(1);
  });
});
