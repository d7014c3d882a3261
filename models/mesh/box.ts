/** A box with softened edges, so that even a small block catches a line of light. Metres. */
import { add, cross, dot, subtract, type Vector3 } from '../../src/ground/vector.ts';
import type { Solid } from './solid.ts';

const signs = [-1, 1] as const;

/** Adds a box about `centre` with half sizes `half`; `bevel` 0 leaves the edges sharp. */
export function box(
  solid: Solid,
  part: string,
  centre: Vector3,
  half: Vector3,
  bevel = 0.004,
): void {
  // The corner of the face across `axis`, pulled in by the bevel along the other two.
  const corner = (sign: Vector3, axis: number): Vector3 => {
    const reach = half.map((size, k) => sign[k]! * (size - (k === axis ? 0 : bevel)));
    return add(centre, [reach[0]!, reach[1]!, reach[2]!]);
  };
  const face = (loop: readonly Vector3[]): void => {
    const [a, b, c, d] = loop;
    const isOut = dot(cross(subtract(b!, a!), subtract(c!, a!)), subtract(a!, centre)) > 0;
    if (d === undefined) solid.triangle(part, a!, isOut ? b! : c!, isOut ? c! : b!);
    else if (isOut) solid.quad(part, a!, b!, c!, d);
    else solid.quad(part, d, c!, b!, a!);
  };
  for (const axis of [0, 1, 2]) {
    const [u, w] = [(axis + 1) % 3, (axis + 2) % 3];
    const signed = (along: number, a: number, b: number): Vector3 => {
      const sign = [0, 0, 0];
      sign[axis] = along;
      sign[u!] = a;
      sign[w!] = b;
      return [sign[0]!, sign[1]!, sign[2]!];
    };
    for (const s of signs) {
      face(
        [signed(s, -1, -1), signed(s, 1, -1), signed(s, 1, 1), signed(s, -1, 1)].map((sign) =>
          corner(sign, axis),
        ),
      );
    }
    if (bevel === 0) continue;
    for (const a of signs) {
      for (const b of signs) {
        face([
          corner(signed(-1, a, b), u!),
          corner(signed(1, a, b), u!),
          corner(signed(1, a, b), w!),
          corner(signed(-1, a, b), w!),
        ]);
      }
    }
  }
  if (bevel === 0) return;
  for (const x of signs) {
    for (const y of signs) {
      for (const z of signs) face([0, 1, 2].map((axis) => corner([x, y, z], axis)));
    }
  }
}
