/**
 * The comparison as one picture for asking others, and each car alone on clear ground. Everything
 * has the same size and stands in order, nothing is marked best, and numbers are left out unless
 * they are asked for. Pictures have two pixels to each of the sheet's (1920 × 1080, 1080 × 1080).
 */
import { letterOf } from '../../build/build.ts';
import type { Work } from '../store.ts';
import { type Box, boxOf, cellsFor } from './layout.ts';
import { portraitsOf, sheetOf } from './portrait.ts';
import { linesOf, seenWords, shortened } from './words.ts';

/** Sizes of the sheets, pixels. */
export const shapes = {
  wide: { width: 3840, height: 2160 },
  square: { width: 2160, height: 2160 },
} as const;
export type Shape = keyof typeof shapes;

/** More cars than this are too small to judge. */
export const mostCars = 4;
const alone = { width: 2800, height: 1900 };
/** Clear margin about a car alone, as a share of its width. */
const aloneMargin = 0.04;

const letterPx = 148;
const namePx = [66, 58, 50, 42] as const;
const footPx = 44;
const scorePx = 46;

/** What stands beside the cars. */
interface Told {
  /** Scores by alternative, where they are asked for. */
  readonly scores?: ReadonlyMap<string, number> | undefined;
  /** Letters to stand alone, one for each alternative, where names could sway; else all is named. */
  readonly letters?: readonly string[];
}

/** The cars side by side, or as they fit best. */
export async function comparisonPicture(
  work: Work,
  shape: Shape,
  { scores, letters }: Told = {},
): Promise<HTMLCanvasElement> {
  const { width, height } = shapes[shape];
  const { build } = work;
  const shown = build.alternatives.slice(0, mostCars);
  const portraits = portraitsOf(work);
  const [canvas, paper] = sheetOf(width, height);
  const style = getComputedStyle(document.documentElement);
  paper.fillStyle = style.getPropertyValue('--stage').trim();
  paper.fillRect(0, 0, width, height);
  paper.fillStyle = style.getPropertyValue('--ink').trim();
  paper.textBaseline = 'alphabetic';
  const cells = cellsFor(shown.length, width, height, portraits.carAspect);
  for (const [at, alternative] of shown.entries()) {
    const { head, car } = cells[at]!;
    await breath();
    const portrait = await portraits.portrait(alternative, car.width, car.height);
    paper.drawImage(portrait, car.x, car.y, car.width, car.height);
    const score = scores?.get(alternative.id);
    const name = letters === undefined ? alternative.name : '';
    label(paper, letters?.[at] ?? letterOf(at), name, head, score);
  }
  footLine(paper, work, width, height, letters === undefined);
  return canvas;
}

/** One car on clear ground, cropped with even margins. */
export async function carPicture(work: Work, alternativeId: string): Promise<HTMLCanvasElement> {
  const alternative = work.build.alternatives.find(({ id }) => id === alternativeId);
  if (alternative === undefined) throw new Error('this alternative is no longer there');
  await breath();
  const whole = await portraitsOf(work).portrait(alternative, alone.width, alone.height);
  const { width, height } = whole;
  const pixels = whole.getContext('2d')?.getImageData(0, 0, width, height).data ?? [];
  const box = boxOf(pixels, width, height, 6) ?? { x: 0, y: 0, width, height };
  const margin = Math.round(aloneMargin * box.width);
  const [canvas, paper] = sheetOf(box.width + 2 * margin, box.height + 2 * margin);
  paper.drawImage(whole, margin - box.x, margin - box.y);
  return canvas;
}

/** Lets the page answer between two cars. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 20));

function write(paper: CanvasRenderingContext2D, weight: number, sizePx: number): void {
  paper.font = `${weight} ${sizePx}px ${getComputedStyle(document.body).fontFamily}`;
}

/** Letter and name, the name beside the letter in one or two lines. */
function label(
  paper: CanvasRenderingContext2D,
  letter: string,
  name: string,
  { x, y, width, height }: Box,
  score: number | undefined,
): void {
  const middle = y + height / 2;
  paper.textAlign = 'left';
  write(paper, 700, letterPx);
  paper.fillText(letter, x, middle + letterPx * 0.36);
  const left = x + paper.measureText(letter).width + letterPx * 0.3;
  const room = x + width - left;
  // Beside a car there is more height than width: more lines, the same sizes.
  const most = height > 2 * letterPx ? 4 : 2;
  const measure = (text: string): number => paper.measureText(text).width;
  const fits = namePx.find((sizePx) => {
    write(paper, 500, sizePx);
    return linesOf(name, room, measure).length <= most;
  });
  const sizePx = fits ?? namePx[namePx.length - 1]!;
  write(paper, 500, sizePx);
  const lines = shortened(linesOf(name, room, measure), most, room, measure);
  const step = sizePx * 1.18;
  const scoreStep = score === undefined ? 0 : scorePx * 1.3;
  const first = middle - ((lines.length - 1) * step + scoreStep) / 2 + sizePx * 0.34;
  for (const [at, line] of lines.entries()) paper.fillText(line, left, first + at * step);
  if (score === undefined) return;
  write(paper, 400, scorePx);
  paper.fillText(
    `${Math.round(score)} of 100`,
    left,
    first + (lines.length - 1) * step + scoreStep,
  );
}

/** What is shown and how it was seen, small, at the foot. */
function footLine(
  paper: CanvasRenderingContext2D,
  { build }: Work,
  width: number,
  height: number,
  isNamed: boolean,
): void {
  const count = build.alternatives.length;
  const edge = Math.min(width, height) * 0.045;
  const baseline = height - edge;
  const measure = (text: string): number => paper.measureText(text).width;
  write(paper, 400, footPx);
  const { light, distanceMm } = build.viewing;
  const cut = count > mostCars ? `The first ${mostCars} of ${count} alternatives. ` : '';
  const seen = `${cut}${seenWords(light, distanceMm)}`;
  paper.textAlign = 'right';
  paper.fillText(seen, width - edge, baseline);
  if (!isNamed) return;
  const room = width - 3 * edge - measure(seen);
  write(paper, 600, footPx);
  paper.textAlign = 'left';
  const [name = ''] = shortened(linesOf(build.name, room, measure), 1, room, measure);
  paper.fillText(name, edge, baseline);
}
