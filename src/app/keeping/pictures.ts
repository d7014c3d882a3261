/**
 * What does a build look like in the list? Its first alternative, from the live cars where they
 * show it whole, else from the drawing. Taken a moment after the last change, or once it was left,
 * while nothing else is to be done.
 */
import { useViewing } from '../live/viewing.ts';
import { useBench, type Work } from '../store.ts';
import { keepPicture } from './store/builds.ts';

/** Twice as large as it is shown. */
const width = 336;
const height = 200;
const quality = 0.82;
/** Nothing has changed for so long, ms. */
const restMs = 1500;
/** Places that show the whole car. */
const wholeFrom: readonly string[] = ['front', 'side', 'rear', 'nose', 'tail', 'above'];

const due = new Map<
  string,
  { readonly work: Work; readonly timer: ReturnType<typeof setTimeout> }
>();

/** Takes the picture of a build that was kept, once it rests. */
export function pictureLater(work: Work): void {
  clearTimeout(due.get(work.key)?.timer);
  const timer = setTimeout(() => {
    due.delete(work.key);
    whenIdle(() => void take(work).catch(() => {}));
  }, restMs);
  due.set(work.key, { work, timer });
}

const whenIdle = (act: () => void): void => {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(act, { timeout: 3000 });
  else setTimeout(act, 200);
};

/** A build without a picture is no fault, and neither is one whose picture could not be taken. */
async function take(work: Work): Promise<void> {
  const picture = await pictureOf(work);
  if (picture !== undefined) await keepPicture(work.key, picture);
}

/** The picture of a build as a data address; undefined where there is nothing to be seen. */
export async function pictureOf(work: Work): Promise<string | undefined> {
  const alternative = work.build.alternatives[0];
  if (alternative === undefined) return undefined;
  const { drawnPortraits, portraitsOf, sheetOf } = await import('../picture/portrait.ts');
  const { liveness, place } = useViewing.getState();
  const isOnStage = useBench.getState().work?.build === work.build;
  const view = work.car.views[0];
  const portraits =
    isOnStage && liveness === 'live' && wholeFrom.includes(place)
      ? portraitsOf(work)
      : view && drawnPortraits(work, view);
  if (portraits === undefined) return undefined;
  const car = await portraits.portrait(alternative, width, height);
  const [canvas, paper] = sheetOf(width, height);
  const style = getComputedStyle(document.documentElement);
  paper.fillStyle = style.getPropertyValue('--stage').trim();
  paper.fillRect(0, 0, width, height);
  paper.drawImage(car, 0, 0, width, height);
  return canvas.toDataURL('image/jpeg', quality);
}
