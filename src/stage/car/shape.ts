/**
 * The geometry of a whole car in one buffer: every triangle of every part, each corner knowing its
 * part, corners that agree stored once. What is opaque comes first, then what is seen through, so
 * that a car is drawn in two calls. In: a mesh in full-size millimetres. Out: metres.
 */
import { BufferAttribute, BufferGeometry, Sphere, Vector3 } from 'three';
import { type Mesh, partOf } from '../../car/mesh.ts';

export interface Shape {
  readonly geometry: BufferGeometry;
  /** Indices of opaque triangles; those of glass follow. */
  readonly opaqueCount: number;
  readonly glassCount: number;
}

const metresPerMm = 1 / 1000;
/** Corners nearer than this are one, full-size mm; normals agree to about a degree. */
const cellMm = 0.2;
const normalSteps = 60;

/** The drawable geometry of a car. */
export function shapeOf(mesh: Mesh): Shape {
  const known = new Map<string, number>();
  const place: number[] = [];
  const lean: number[] = [];
  const part: number[] = [];
  const opaque: number[] = [];
  const glass: number[] = [];
  const { positions, normals, nodeOf } = mesh;
  for (let triangle = 0; triangle < nodeOf.length; triangle++) {
    const owner = partOf(mesh, triangle);
    const into = mesh.parts[owner]!.isGlass ? glass : opaque;
    for (let corner = 0; corner < 3; corner++) {
      const at = triangle * 9 + corner * 3;
      const [x, y, z] = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
      const [nx, ny, nz] = [normals[at]!, normals[at + 1]!, normals[at + 2]!];
      const key = [
        owner,
        ...[x, y, z].map((value) => Math.round(value / cellMm)),
        ...[nx, ny, nz].map((value) => Math.round(value * normalSteps)),
      ].join();
      let index = known.get(key);
      if (index === undefined) {
        index = part.length;
        known.set(key, index);
        place.push(x * metresPerMm, y * metresPerMm, z * metresPerMm);
        lean.push(nx, ny, nz);
        part.push(owner);
      }
      into.push(index);
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(place), 3));
  geometry.setAttribute('normal', new BufferAttribute(Float32Array.from(lean), 3));
  geometry.setAttribute('part', new BufferAttribute(Float32Array.from(part), 1));
  const open = new Uint8Array(part.length).fill(255);
  geometry.setAttribute('shade', new BufferAttribute(open, 1, true));
  geometry.setIndex(new BufferAttribute(Uint32Array.from([...opaque, ...glass]), 1));
  geometry.addGroup(0, opaque.length, 0);
  geometry.addGroup(opaque.length, glass.length, 1);
  geometry.boundingSphere = new Sphere(new Vector3(0, 0.6, 0), 4);
  return { geometry, opaqueCount: opaque.length, glassCount: glass.length };
}
