/**
 * Which parts are pointed at, and which differ? A transparent picture to lay over a drawn car: lit
 * parts get a ring, light within dark, that stands out of any paint; marked ones a dashed line; and
 * where only lit parts should count, the rest of the car sinks into the surround, unless none of
 * them is in sight. Laid over rather
 * than drawn in, so that pointing costs no new drawing.
 *
 * In: the part of every pixel, bottom row first, red being part + 1 (`draw.ts`). Out: RGBA, top row
 * first. Distances are exact, edges softened by a pixel.
 */
import { nearestSeed } from '../../car/thickness.ts';

/** Indices of parts to point out. */
export interface Marks {
  readonly lit: ReadonlySet<number>;
  readonly marked: ReadonlySet<number>;
  /** Whether what is not lit keeps its colours. */
  readonly isGentle: boolean;
}

/** Widths in CSS pixels: the light ring, the dark one about it, the dashed line and its dashes. */
const lightRing = 1.7;
const darkRing = 3.1;
const line = 1.6;
const dash = 4;
/** Neutral of the surround and how much of it covers what is not lit, 0–255. */
const surround = 166;
const sunken = 160;

/** The picture of rings; `pixel` is device pixels to a CSS pixel. */
export function ringsOf(
  ids: Uint8Array,
  width: number,
  height: number,
  { lit, marked, isGentle }: Marks,
  pixel: number,
): Uint8ClampedArray<ArrayBuffer> {
  const picture = new Uint8ClampedArray(width * height * 4);
  const partOf = partsFrom(ids, width, height);
  const within = (parts: ReadonlySet<number>): Uint8Array =>
    partOf.map((part) => (part > 0 && parts.has(part - 1) ? 1 : 0));
  const lay = (at: number, grey: number, alpha: number): void => {
    if (alpha <= 0) return;
    picture.fill(grey, at * 4, at * 4 + 3);
    picture[at * 4 + 3] = 255 * Math.min(1, alpha);
  };
  if (marked.size > 0) {
    eachNear(within(marked), width, height, line * pixel, (at, distance) => {
      const [x, y] = [at % width, Math.floor(at / width)];
      const isLight = Math.floor((x + y) / (dash * pixel)) % 2 === 0;
      lay(at, isLight ? 255 : 0, line * pixel - distance + 0.5);
    });
  }
  if (lit.size > 0) {
    const own = within(lit);
    if (!isGentle && own.includes(1)) {
      for (let at = 0; at < partOf.length; at++) {
        if (partOf[at]! > 0 && own[at] === 0) lay(at, surround, sunken / 255);
      }
    }
    eachNear(own, width, height, darkRing * pixel, (at, distance) => {
      // The light ring passes into the dark one over a pixel, and that into nothing.
      const isLight = Math.min(1, Math.max(0, lightRing * pixel - distance + 0.5));
      lay(at, Math.round(255 * isLight), darkRing * pixel - distance + 0.5);
    });
  }
  return picture;
}

/** Part + 1 of every pixel, top row first. */
function partsFrom(ids: Uint8Array, width: number, height: number): Uint8Array {
  const parts = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    const from = (height - 1 - y) * width;
    for (let x = 0; x < width; x++) parts[y * width + x] = ids[(from + x) * 4]!;
  }
  return parts;
}

/** Calls for every pixel outside the mask and within `reach` of it, with its distance. */
function eachNear(
  mask: Uint8Array,
  width: number,
  height: number,
  reach: number,
  call: (at: number, distance: number) => void,
): void {
  const nearest = nearestSeed(mask, width, height);
  for (let at = 0; at < mask.length; at++) {
    const seed = nearest[at]!;
    if (mask[at] === 1 || seed < 0) continue;
    const dx = (at % width) - (seed % width);
    const dy = Math.floor(at / width) - Math.floor(seed / width);
    const distance = Math.sqrt(dx * dx + dy * dy);
    if (distance <= reach + 0.5) call(at, distance);
  }
}
