/**
 * One car as something a canvas can draw: from the live studio where it runs, otherwise from the
 * traced drawing with its colours written in. Too large a picture for this machine is drawn as
 * large as it can be and stretched. Pixels in and out.
 */
import type { Alternative } from '../../build/build.ts';
import { pictureOf } from '../../stage/view/picture.ts';
import { paintOf } from '../cars/paint.ts';
import { useStudio } from '../live/studio.ts';
import { useViewing } from '../live/viewing.ts';
import type { View } from '../opening/garage.ts';
import type { Work } from '../store.ts';
import { boxOf } from './layout.ts';

/** Draws alternatives in one shape. */
export interface Portraits {
  /** Width over height of the car as it is seen now, without margins. */
  readonly carAspect: number;
  /** The car on clear ground, in the middle of a picture of this size. */
  readonly portrait: (
    alternative: Alternative,
    width: number,
    height: number,
  ) => Promise<HTMLCanvasElement>;
}

/** Samples and read-back of more pixels than this at once strain small machines. */
const mostPixels = 8_300_000;
const probe = { width: 320, height: 200 };
const leastAspect = 1.2;
const mostAspect = 3.2;
/** Shadow is no car. */
const carAlpha = 250;

/** A canvas of this size and its paper. */
export function sheetOf(
  width: number,
  height: number,
): readonly [HTMLCanvasElement, CanvasRenderingContext2D] {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width));
  canvas.height = Math.max(1, Math.round(height));
  const paper = canvas.getContext('2d');
  if (paper === null) throw new Error('this browser gave no canvas of that size');
  return [canvas, paper];
}

/** Portraits of the open work as the cars are looked at now. */
export function portraitsOf(work: Work): Portraits {
  const { studio, poseFor } = useStudio.getState();
  const { liveness, place } = useViewing.getState();
  // A car left off the stage is not in the studio, and all are to be seen alike.
  const isThere = work.build.alternatives.every(({ id }) => studio?.cars.has(id));
  if (studio === undefined || poseFor === undefined || liveness !== 'live' || !isThere) {
    const view = work.car.views.find(({ id }) => id === place) ?? work.car.views[0];
    if (view === undefined) throw new Error('the pictures of this car are missing');
    return drawnPortraits(work, view);
  }
  const { gl } = studio;
  const context = gl.getContext();
  const longest = Math.min(
    context.getParameter(context.MAX_RENDERBUFFER_SIZE) as number,
    gl.capabilities.maxTextureSize,
  );
  return {
    carAspect: aspectNow(work),
    async portrait({ id }, width, height) {
      const scale = Math.min(
        1,
        longest / Math.max(width, height),
        Math.sqrt(mostPixels / (width * height)),
      );
      const [wide, tall] = [Math.round(width * scale), Math.round(height * scale)];
      const picture = pictureOf(studio, id, poseFor(width / height), wide, tall);
      if (picture === undefined) throw new Error(`there is no car of ${id} to draw`);
      const [canvas, paper] = sheetOf(wide, tall);
      paper.putImageData(picture, 0, 0);
      return canvas;
    },
  };

  function aspectNow({ build }: Work): number {
    const id = build.alternatives[0]?.id ?? '';
    const { width, height } = probe;
    const seen = pictureOf(studio!, id, poseFor!(width / height), width, height);
    const box = seen === undefined ? undefined : boxOf(seen.data, width, height, carAlpha);
    const aspect = box === undefined ? width / height : box.width / box.height;
    return Math.min(mostAspect, Math.max(leastAspect, aspect));
  }
}

/** Portraits from the traced drawing of a view. */
export function drawnPortraits({ build, car }: Work, view: View): Portraits {
  const [, , wide = 2, tall = 1] = (/viewBox="([^"]+)"/.exec(view.svg)?.[1] ?? '0 0 2 1')
    .split(/\s+/)
    .map(Number);
  return {
    carAspect: wide / tall,
    async portrait(alternative, width, height) {
      const paint = paintOf(build, alternative, car.sight);
      const scale = Math.min(width / wide, height / tall);
      const text = view.svg
        .replace(/var\((--[\w-]+)\s*(?:,\s*([^()]*|[^()]*\([^()]*\)))?\)/g, (_, name, other) => {
          return paint.get(name) ?? other ?? 'none';
        })
        .replace('<svg ', `<svg width="${wide * scale}" height="${tall * scale}" `);
      const image = new Image();
      image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
      await image.decode();
      const [canvas, paper] = sheetOf(width, height);
      const left = (width - wide * scale) / 2;
      const top = (height - tall * scale) / 2;
      paper.drawImage(image, left, top, wide * scale, tall * scale);
      return canvas;
    },
  };
}
