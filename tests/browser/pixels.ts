/** Pixels of the page as a visitor sees them: a screenshot of a region, decoded by the browser itself. */
import type { Locator, Page } from 'playwright-core';

export interface Region {
  readonly width: number;
  readonly height: number;
  /** RGBA, top row first. */
  readonly rgba: Uint8Array;
}

export interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What is seen within `clip`, CSS pixels of the window. */
export async function seen(page: Page, clip: Clip): Promise<Region> {
  const picture = await page.screenshot({ clip });
  return decoded(page, `data:image/png;base64,${picture.toString('base64')}`);
}

/** What is seen of an element. */
export const seenOf = async (page: Page, element: Locator): Promise<Region> =>
  seen(page, (await element.boundingBox())!);

/** The pixels of a picture at an address; they come as text, many times quicker than as numbers. */
export async function decoded(page: Page, address: string): Promise<Region> {
  const { width, height, bytes } = await page.evaluate(async (src) => {
    const image = new Image();
    image.src = src;
    await image.decode();
    const sheet = document.createElement('canvas');
    sheet.width = image.naturalWidth;
    sheet.height = image.naturalHeight;
    const paper = sheet.getContext('2d')!;
    paper.drawImage(image, 0, 0);
    const { width, height, data } = paper.getImageData(0, 0, sheet.width, sheet.height);
    const reader = new FileReader();
    const read = new Promise((done) => reader.addEventListener('load', done));
    reader.readAsDataURL(new Blob([data]));
    await read;
    return { width, height, bytes: String(reader.result).replace(/^.*,/, '') };
  }, address);
  return { width, height, rgba: new Uint8Array(Buffer.from(bytes, 'base64')) };
}

/** Mean difference of two regions of one size, 0–255 a channel. */
export function apart(one: Region, other: Region): number {
  if (one.rgba.length !== other.rgba.length) throw new Error('regions differ in size');
  let sum = 0;
  for (let at = 0; at < one.rgba.length; at++) sum += Math.abs(one.rgba[at]! - other.rgba[at]!);
  return sum / one.rgba.length;
}

/** Relative luminance 0–1 of every pixel, IEC 61966-2-1. */
export const luminances = ({ rgba }: Region): number[] =>
  Array.from({ length: rgba.length / 4 }, (_, pixel) => {
    const [r, g, b] = [0, 1, 2].map((channel) => {
      const value = rgba[pixel * 4 + channel]! / 255;
      return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  });
