/** Spheres in the product's own paint, drawn apart from the page. */
import {
  BufferAttribute,
  Mesh as Drawn,
  PerspectiveCamera,
  Scene,
  SphereGeometry,
  WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { brightened, evenRoom, softboxRoom } from '../../../../src/stage/light/room.ts';
import { paintMaterial } from '../../../../src/stage/shader/materials.ts';
import { rowsFor, wear } from '../../../../src/stage/surface/rows.ts';
import type { Surface } from '../../../../src/stage/surface/surface.ts';
import type { Lighting, Sent } from './bench.ts';

/** Radius, height of the middle above the bench, and how far off the eye is, m. */
const radius = 0.5;
const middle = 0.6;
const away = 6;

let gl: WebGLRenderer | undefined;

/** The renderer that draws spheres, for its errors. */
export const sphereRenderer = (): WebGLRenderer | undefined => gl;

/** One picture of a sphere for each surface, in this light. */
export function spheresIn(
  surfaces: readonly Surface[],
  { room, mirror, knee, strength = 1 }: Lighting,
  sidePx: number,
): Sent[] {
  gl ??= new WebGLRenderer({ canvas: document.createElement('canvas') });
  const geometry = new SphereGeometry(radius, 96, 64);
  const { count } = geometry.getAttribute('position');
  geometry.setAttribute('part', new BufferAttribute(new Float32Array(count), 1));
  geometry.setAttribute('shade', new BufferAttribute(new Uint8Array(count).fill(255), 1, true));
  const rows = rowsFor(1);
  const light = brightened(room === 'even' ? evenRoom : softboxRoom, strength);
  const material = paintMaterial({ rows, room: light });
  material.uniforms.uMirror!.value = mirror;
  if (knee !== undefined) material.uniforms.uKnee!.value = knee;
  const ball = new Drawn(geometry, material);
  ball.position.set(0, middle, 0);
  const scene = new Scene();
  scene.add(ball);
  // The outline is met at this angle, a little nearer than the middle.
  const field = (2 * Math.asin(radius / away) * 180) / Math.PI;
  const camera = new PerspectiveCamera(field, 1, 1, 20);
  camera.position.set(0, middle, away);
  camera.lookAt(0, middle, 0);
  const target = new WebGLRenderTarget(sidePx, sidePx);
  const pictures = surfaces.map((surface) => {
    wear(rows, 0, surface);
    gl!.setRenderTarget(target);
    gl!.setClearAlpha(0);
    gl!.clear();
    gl!.render(scene, camera);
    const bytes = new Uint8Array(sidePx * sidePx * 4);
    gl!.readRenderTargetPixels(target, 0, 0, sidePx, sidePx, bytes);
    return { width: sidePx, height: sidePx, bytes: base64(upright(bytes, sidePx * 4)) };
  });
  gl.setRenderTarget(null);
  for (const done of [geometry, material, rows.texture, target]) done.dispose();
  return pictures;
}

/** Rows the other way up. */
export function upright(bytes: Uint8Array, stride: number): Uint8Array {
  const turned = new Uint8Array(bytes.length);
  for (let at = 0; at < bytes.length; at += stride) {
    turned.set(bytes.subarray(at, at + stride), bytes.length - stride - at);
  }
  return turned;
}

export function base64(bytes: Uint8Array | Uint8ClampedArray): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x8000) {
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  }
  return btoa(text);
}
