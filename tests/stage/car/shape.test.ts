/**
 * Is the car that is drawn the car that was modelled? The roadster's own triangles, counted and
 * held against the drawable geometry corner by corner.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { cornerOf, type Mesh, partOf } from '../../../src/car/mesh.ts';
import { type Shape, shapeOf } from '../../../src/stage/car/shape.ts';
import { readRoadster } from '../../browser/stage/roadster.ts';

let mesh: Mesh;
let shape: Shape;
beforeAll(async () => {
  mesh = await readRoadster();
  shape = shapeOf(mesh);
});
const isGlass = (triangle: number): boolean => mesh.parts[partOf(mesh, triangle)]!.isGlass;
const triangles = (): number[] => [...mesh.nodeOf.keys()];

describe('the drawable roadster', () => {
  it('keeps every triangle, opaque ones first and glass last', () => {
    const glass = triangles().filter(isGlass).length;
    expect(glass).toBeGreaterThan(0);
    expect(shape.glassCount).toBe(3 * glass);
    expect(shape.opaqueCount).toBe(3 * (mesh.nodeOf.length - glass));
    const [opaque, through] = shape.geometry.groups;
    expect([opaque!.start, opaque!.count]).toEqual([0, shape.opaqueCount]);
    expect([through!.start, through!.count]).toEqual([shape.opaqueCount, shape.glassCount]);
    expect(shape.geometry.getIndex()!.count).toBe(3 * mesh.nodeOf.length);
  });

  it('has every corner within 0.2 mm of the model on each axis, its part, and its normal to 2°', () => {
    const index = shape.geometry.getIndex()!;
    const place = shape.geometry.getAttribute('position');
    const normal = shape.geometry.getAttribute('normal');
    const part = shape.geometry.getAttribute('part');
    let at = 0;
    let farthest = 0;
    let leaning = 1;
    let strangers = 0;
    for (const wanted of [false, true]) {
      for (const triangle of triangles().filter((one) => isGlass(one) === wanted)) {
        for (let corner = 0; corner < 3; corner++) {
          const drawn = index.getX(at++);
          const met = [place.getX(drawn), place.getY(drawn), place.getZ(drawn)];
          const meant = cornerOf(mesh, triangle, corner);
          meant.forEach((mm, axis) => {
            farthest = Math.max(farthest, Math.abs(met[axis]! * 1000 - mm));
          });
          const from = triangle * 9 + corner * 3;
          const [x, y, z] = mesh.normals.subarray(from, from + 3);
          const cosine =
            normal.getX(drawn) * x! + normal.getY(drawn) * y! + normal.getZ(drawn) * z!;
          leaning = Math.min(leaning, cosine);
          if (part.getX(drawn) !== partOf(mesh, triangle)) strangers++;
        }
      }
    }
    // A float of metres holds a fiftieth of a micrometre here; two hundredths of a mm are to spare.
    expect(farthest).toBeLessThan(0.201);
    expect(leaning).toBeGreaterThan(Math.cos((2 * Math.PI) / 180));
    expect(strangers).toBe(0);
  });

  it('stores corners that agree once, and is in full light until shade is worked out', () => {
    const { count } = shape.geometry.getAttribute('position');
    expect(count).toBeLessThan(1.6 * mesh.nodeOf.length);
    const shade = shape.geometry.getAttribute('shade');
    expect(shade.count).toBe(count);
    for (const at of [0, count >> 1, count - 1]) expect(shade.getX(at)).toBe(1);
  });
});
