/**
 * A spoon in the hand: picked up from table or rack and dropped onto a part of a car. With mouse or
 * pen it is dragged; a finger rests on it first, since a finger that moves scrolls. By keyboard the
 * chooser does the same. Lengths are CSS pixels of the window.
 *
 * Pointer events rather than the browser's own dragging: that knows no fingers, cannot start on a
 * button everywhere, and never reaches a page behind an open dialog.
 */
import { create } from 'zustand';
import {
  assignmentOf,
  type EmbeddedFinish,
  type FinishRef,
  finishesByRef,
  isOpen,
  refOf,
} from '../../build/build.ts';
import { ownersOf } from '../cars/paint.ts';
import { type Met, metAt } from '../live/under.ts';
import { pointAt } from '../pointing.ts';
import { chooseFrom, endStep, useBench } from '../store.ts';
import { putOnOne } from './putting.ts';

/** What a carried spoon is over. */
export interface Over extends Omit<Met, 'box'> {
  /** The part of the build there; undefined beside the car and on parts nobody chooses. */
  readonly part: string | undefined;
}
interface Carrying {
  readonly carried:
    | {
        readonly finish: EmbeddedFinish;
        readonly x: number;
        readonly y: number;
        readonly over?: Over;
      }
    | undefined;
}

export const useCarrying = create<Carrying>()(() => ({ carried: undefined }));

const restMs = 350;
const dragPx = 6;
/** A finger at rest wanders this far. */
const wanderPx = 10;
/** This near to an edge of the window the page comes toward the spoon; of the strip, the strip. */
const pageEdgePx = 72;
const stripEdgePx = 28;
/** How far at a time, sixty times a second. */
const scrollPx = 9;

const isCarrying = (): boolean => useCarrying.getState().carried !== undefined;

function overAt(x: number, y: number): Over | undefined {
  const met = metAt(x, y);
  const build = useBench.getState().work?.build;
  if (met === undefined || build === undefined) return undefined;
  const { alternative, carPart } = met;
  return { alternative, carPart, part: ownersOf(build).get(carPart ?? '') };
}

function carry(finish: EmbeddedFinish, x: number, y: number): void {
  const over = overAt(x, y);
  useCarrying.setState({ carried: { finish, x, y, ...(over && { over }) } });
  pointAt(over?.part === undefined ? [] : [over.part], true);
}

/**
 * Puts the finish on the part beneath, and into the build if it comes from a rack, as an undo step
 * of its own; elsewhere nothing happens. Said where it departs from what was settled.
 */
function drop(): void {
  const { carried } = useCarrying.getState();
  const build = useBench.getState().work?.build;
  const on = build?.alternatives.find(({ id }) => id === carried?.over?.alternative);
  const part = carried?.over?.part;
  if (carried === undefined || build === undefined || on === undefined || part === undefined) {
    return;
  }
  if (assignmentOf(build, on).get(part) === refOf(carried.finish)) return;
  const onto = build.parts.find(({ id }) => id === part);
  if (onto !== undefined && !isOpen(onto)) {
    putOnOne(carried.finish, onto, on.id);
    return;
  }
  endStep();
  chooseFrom(on.id, part, carried.finish);
  endStep();
}

const isAtEdge = (y: number): boolean => y < pageEdgePx || y > window.innerHeight - pageEdgePx;

/** Brings what lies beyond an edge toward a spoon held there; a car that is whole in sight stays. */
function scrollToward(x: number, y: number): void {
  const stand = metAt(x, y)?.box;
  const below = window.innerHeight;
  if (y < pageEdgePx && (stand === undefined || stand.top < 0)) window.scrollBy(0, -scrollPx);
  if (y > below - pageEdgePx && (stand === undefined || stand.bottom > below)) {
    window.scrollBy(0, scrollPx);
  }
  const strip = document.querySelector('.cars');
  const box = strip?.getBoundingClientRect();
  if (strip === null || box === undefined || y < box.top || y > box.bottom) return;
  if (x < box.left + stripEdgePx) strip.scrollBy(-scrollPx, 0);
  if (x > box.right - stripEdgePx) strip.scrollBy(scrollPx, 0);
}

/** A finish of the open build by its reference; one that is given whole is itself. */
function finishFor(finish: FinishRef | EmbeddedFinish): EmbeddedFinish | undefined {
  if (typeof finish !== 'string') return finish;
  const build = useBench.getState().work?.build;
  return build && finishesByRef(build).get(finish);
}

function press(event: PointerEvent, given: FinishRef | EmbeddedFinish): void {
  if (event.button !== 0 || !event.isPrimary || isCarrying()) return;
  const finish = finishFor(given);
  if (finish === undefined) return;
  const { pointerId, clientX: startX, clientY: startY } = event;
  const isFinger = event.pointerType === 'touch';
  const hand = { x: startX, y: startY };
  const listening = new AbortController();
  let frame = 0;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const lift = (): void => {
    getSelection()?.removeAllRanges();
    document.documentElement.classList.add('is-carrying');
    // Picked up at an edge, a spoon moves nothing until it has been carried away from there.
    let hasLeftEdge = false;
    const follow = (): void => {
      hasLeftEdge ||= !isAtEdge(hand.y);
      if (hasLeftEdge) scrollToward(hand.x, hand.y);
      carry(finish, hand.x, hand.y);
      frame = requestAnimationFrame(follow);
    };
    follow();
  };
  const end = (): void => {
    clearTimeout(resting);
    cancelAnimationFrame(frame);
    listening.abort();
    if (!isCarrying()) return;
    document.documentElement.classList.remove('is-carrying');
    useCarrying.setState({ carried: undefined });
    pointAt([]);
  };
  const onMove = (moved: PointerEvent): void => {
    if (moved.pointerId !== pointerId) return;
    [hand.x, hand.y] = [moved.clientX, moved.clientY];
    if (isCarrying()) return;
    const strayed = Math.hypot(hand.x - startX, hand.y - startY);
    if (isFinger && strayed > wanderPx) end();
    else if (!isFinger && strayed > dragPx) lift();
  };
  const onUp = (lifted: PointerEvent): void => {
    if (lifted.pointerId !== pointerId) return;
    if (isCarrying()) {
      carry(finish, lifted.clientX, lifted.clientY);
      // The click that ends a drag where it began is no click.
      silence('click');
      drop();
    }
    end();
  };
  const onKey = (pressed: KeyboardEvent): void => {
    if (pressed.key !== 'Escape' || !isCarrying()) return;
    // Only the spoon is put down; a dialog stays open.
    silence('cancel');
    window.addEventListener('pointerup', () => silence('click'), { capture: true, once: true });
    pressed.preventDefault();
    pressed.stopPropagation();
    end();
  };
  const still = (begun: Event): void => begun.preventDefault();

  const { signal } = listening;
  const early = { signal, capture: true };
  window.addEventListener('pointermove', onMove, early);
  window.addEventListener('pointerup', onUp, early);
  window.addEventListener('pointercancel', end, early);
  window.addEventListener('blur', end, { signal });
  window.addEventListener('keydown', onKey, early);
  for (const name of ['selectstart', 'dragstart', 'contextmenu'] as const) {
    if (name !== 'contextmenu' || isFinger) window.addEventListener(name, still, early);
  }
  if (isFinger) resting = setTimeout(lift, restMs);
}

/** Events of this kind that are on their way go unheard. */
function silence(kind: 'click' | 'cancel'): void {
  const listening = new AbortController();
  const still = (event: Event): void => {
    event.preventDefault();
    event.stopPropagation();
  };
  window.addEventListener(kind, still, { capture: true, signal: listening.signal });
  setTimeout(() => listening.abort(), 60);
}

/** A finger that carries must not scroll; the browser wants to know before the finger comes down. */
function holdsPage(element: HTMLElement | null): (() => void) | undefined {
  if (element === null) return undefined;
  const hold = (event: TouchEvent): void => {
    if (isCarrying() && event.cancelable) event.preventDefault();
  };
  element.addEventListener('touchmove', hold, { passive: false });
  return () => element.removeEventListener('touchmove', hold);
}

/** For an element that shows a spoon, of the build or of a rack: it can be picked up by it. */
export const carries = (finish: FinishRef | EmbeddedFinish) => ({
  'data-spoon': typeof finish === 'string' ? finish : refOf(finish),
  ref: holdsPage,
  onPointerDown: ({ nativeEvent }: { readonly nativeEvent: PointerEvent }) =>
    press(nativeEvent, finish),
});
