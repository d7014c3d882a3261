/** A car ready to be drawn: its geometry with shade at every corner, and its shadow on the bench. */
import { BufferAttribute, DataTexture, LinearFilter, RedFormat, type WebGLRenderer } from 'three';
import type { Mesh } from '../../car/mesh.ts';
import type { Room } from '../light/room.ts';
import { bench, shadeOf } from '../light/shade.ts';
import { type Shape, shapeOf } from './shape.ts';

export interface Shaded {
  readonly shape: Shape;
  /** Light left on the bench, one byte a cell, from −x, −z. */
  readonly bench: DataTexture;
}

/** Works out geometry and shade of a mesh; the renderer's state is left as it was. */
export function shadedOf(gl: WebGLRenderer, mesh: Mesh, room: Room): Shaded {
  const shape = shapeOf(mesh);
  const shade = shadeOf(gl, shape, room);
  shape.geometry.setAttribute('shade', new BufferAttribute(shade.corners, 1, true));
  const shadow = new DataTexture(softened(shade.bench), bench.columns, bench.rows, RedFormat);
  shadow.magFilter = LinearFilter;
  shadow.minFilter = LinearFilter;
  shadow.needsUpdate = true;
  return { shape, bench: shadow };
}

/** Gives back what the graphics card holds of a car. */
export function dispose({ shape, bench: shadow }: Shaded): void {
  shape.geometry.dispose();
  shadow.dispose();
}

/** A few lamps stand for a room of light: their single shadows are smoothed into one another. */
function softened(cells: Uint8Array): Uint8Array {
  const { columns, rows } = bench;
  const along = (from: Uint8Array, step: number, length: number): Uint8Array =>
    from.map((_, cell) => {
      const at = Math.floor(cell / step) % length;
      let sum = 0;
      let weight = 0;
      for (let off = -softCells; off <= softCells; off++) {
        if (at + off < 0 || at + off >= length) continue;
        const share = softCells + 1 - Math.abs(off);
        sum += share * from[cell + off * step]!;
        weight += share;
      }
      return Math.round(sum / weight);
    });
  return along(along(cells, 1, columns), columns, rows);
}
const softCells = 3;
