/** Pixels of a target as a picture: top row first, colour not weighed by its opacity. */
import type { WebGLRenderer, WebGLRenderTarget } from 'three';

/** Reads `width` × `height` pixels of `target` from its lower left. */
export function uprightPixels(
  gl: WebGLRenderer,
  target: WebGLRenderTarget,
  width: number,
  height: number,
): ImageData {
  const bytes = new Uint8Array(width * height * 4);
  gl.readRenderTargetPixels(target, 0, 0, width, height, bytes);
  const picture = new ImageData(width, height);
  const stride = width * 4;
  for (let row = 0; row < height; row++) {
    picture.data.set(
      bytes.subarray((height - 1 - row) * stride, (height - row) * stride),
      row * stride,
    );
  }
  const { data } = picture;
  for (let at = 0; at < data.length; at += 4) {
    const alpha = data[at + 3]!;
    if (alpha === 0 || alpha === 255) continue;
    for (let channel = 0; channel < 3; channel++) {
      data[at + channel] = Math.min(255, Math.round((data[at + channel]! * 255) / alpha));
    }
  }
  return picture;
}
