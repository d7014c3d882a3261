/**
 * The link as a QR code [ISO18004]: a grid of dark and light modules, as one path. A quiet zone of 4
 * modules lies about it. The most a code holds is 2,953 bytes, at level L of error correction.
 *
 * In: an address. Out: the side in modules, quiet zone included, and a path that draws the dark ones
 * in units of one module. Beyond `longestCode` bytes the modules are too fine for a phone before a
 * screen; our judgement.
 */
import { encode } from 'uqr';

/** Light modules around a code [ISO18004]. */
export const quietZone = 4;
/** Bytes of an address that still make a code to scan; our judgement. */
export const longestCode = 1500;

export interface Code {
  readonly side: number;
  readonly path: string;
}

/** The code of an address; undefined where it would be too fine to scan. */
export function codeOf(address: string): Code | undefined {
  if (new TextEncoder().encode(address).length > longestCode) return undefined;
  const { data, size } = encode(address, { ecc: 'L', border: quietZone });
  const runs: string[] = [];
  for (const [y, row] of data.entries()) {
    for (let x = 0; x < size; x++) {
      if (row[x] !== true) continue;
      const from = x;
      while (row[x + 1] === true) x++;
      runs.push(`M${from} ${y}h${x + 1 - from}v1h-${x + 1 - from}z`);
    }
  }
  return { side: size, path: runs.join('') };
}

/** The code as a picture: whole pixels to each module, black on white. */
export function pictureOfCode({ side, path }: Code): HTMLCanvasElement {
  const scale = Math.max(4, Math.ceil(1200 / side));
  const canvas = document.createElement('canvas');
  canvas.width = side * scale;
  canvas.height = side * scale;
  const paper = canvas.getContext('2d');
  if (paper === null) throw new Error('this browser gave no canvas of that size');
  paper.fillStyle = '#fff';
  paper.fillRect(0, 0, canvas.width, canvas.height);
  paper.scale(scale, scale);
  paper.fillStyle = '#000';
  paper.fill(new Path2D(path));
  return canvas;
}
