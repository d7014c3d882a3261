/** Takes the builder somewhere on the page: to a heading, a car, a cell of the part table. */
import { goTo, useArea } from '../area.ts';
import { carElementId } from '../cars/element.ts';
import { setOnStage } from '../onStage.ts';
import { startChoosing } from '../table/choosing.ts';

/** Frames waited for the part table to be laid out. */
const mostFrames = 60;

/** Lays out the bench, then does what needs it there. */
function onBench(then: () => void): void {
  if (useArea.getState().area === 'bench') {
    then();
    return;
  }
  goTo('bench');
  const look = (frames: number): void => {
    if (document.getElementById('parts-title') !== null) then();
    else if (frames > 0) requestAnimationFrame(() => look(frames - 1));
  };
  look(mostFrames);
}

/** Brings an element into sight and gives it the focus. */
function show(element: HTMLElement | null): void {
  if (element === null) return;
  if (element.tabIndex < 0) element.tabIndex = -1;
  element.scrollIntoView({ block: 'start' });
  element.focus({ preventScroll: true });
}

/** Goes to a heading beneath the cars, by its id. */
export const goToHeading = (id: string): void => onBench(() => show(document.getElementById(id)));

/** Goes to the top of the page. */
export function goToStage(): void {
  scrollTo({ top: 0 });
  document.querySelector<HTMLElement>('.cars')?.focus({ preventScroll: true });
}

/** Brings the car of an alternative into sight. */
export function goToCar(alternative: string): void {
  setOnStage(alternative, true);
  requestAnimationFrame(() => {
    scrollTo({ top: 0 });
    const car = document.getElementById(carElementId(alternative));
    car?.scrollIntoView({ block: 'nearest', inline: 'start' });
    car?.querySelector<HTMLElement>('[tabindex="0"], button')?.focus({ preventScroll: true });
  });
}

/** Opens the spoons of a part on an alternative, beside its cell where that is unfolded. */
export function openSpoons(alternative: string, part: string): void {
  setOnStage(alternative, true);
  onBench(() => {
    const cell = document.querySelector(`[data-cell="${alternative}/${part}"]`);
    cell?.scrollIntoView({ block: 'nearest' });
    const beside = cell ?? document.getElementById(carElementId(alternative));
    startChoosing(alternative, part, beside ?? document.body);
  });
}
