/**
 * A picture of one car, drawn apart from the page: any size, clear surround, edges smoothed. The
 * page's own drawing is left as it was.
 */
import { WebGLRenderTarget } from 'three';
import type { Pose } from '../camera/pose.ts';
import type { Studio } from '../Scene.tsx';
import { lookAs, newEye } from './eye.ts';
import { uprightPixels } from './pixels.ts';

/**
 * The car `id` of the studio from this pose, `width` × `height` pixels; undefined where the studio
 * has no such car.
 */
export function pictureOf(
  { gl, scene, drawer, cars }: Studio,
  id: string,
  pose: Pose,
  width: number,
  height: number,
): ImageData | undefined {
  const car = cars.get(id);
  if (car === undefined) return undefined;
  const target = new WebGLRenderTarget(width, height, { samples: 4 });
  const into = gl.getRenderTarget();
  const { autoClear } = gl;
  gl.autoClear = false;
  gl.setRenderTarget(target);
  gl.setClearAlpha(0);
  gl.clear();
  const eye = lookAs(newEye(), pose, width / height);
  drawer.draw(scene, eye, car, { x: 0, y: 0, width, height });
  const picture = uprightPixels(gl, target, width, height);
  gl.setRenderTarget(into);
  gl.autoClear = autoClear;
  target.dispose();
  return picture;
}
