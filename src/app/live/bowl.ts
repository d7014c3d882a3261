/** The photograph of one sprayed bowl as the address of a picture, three pixels to a drawn unit. */
import type { Appearance } from '../../finish/appearance.ts';
import type { Finish } from '../../finish/finish.ts';
import type { SpoonStudio } from '../../stage/spoon/photograph.ts';
import { surfaceOf } from '../../stage/surface/surface.ts';

const width = 58 * 3;
const height = 38 * 3;
/** Spoons are seen from close by: grain and flake as on a model of this scale. */
const closeness = 6;

const sheet = document.createElement('canvas');
sheet.width = width;
sheet.height = height;

/** A `data:` address of the bowl; undefined where this browser gives no canvas to draw on. */
export function bowlPicture(
  studio: SpoonStudio,
  finish: Finish,
  look: Appearance,
): string | undefined {
  const paper = sheet.getContext('2d');
  if (paper === null) return undefined;
  paper.putImageData(studio.photograph(surfaceOf(finish, look, closeness), width, height), 0, 0);
  return sheet.toDataURL('image/png');
}
