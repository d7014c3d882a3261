/**
 * What do mouse, pen, finger and keyboard ask of the camera? Reads the events of the element that
 * lies over one view and tells them in useful units; it moves nothing itself. The element needs
 * `touch-action: pan-y`, `user-select: none` and a tab stop.
 *
 * - Drag with mouse or pen, or one finger: orbit. With shift, middle or right button: pan. A finger
 *   that moves up or down scrolls the page; the browser then takes the pointer away.
 * - Two fingers: zoom and pan. Ctrl and wheel, which is a trackpad's pinch: zoom; the plain wheel
 *   is the page's.
 * - A press that stays within 5 px and 500 ms: press. A second one: frame.
 * - Arrow keys walk the eye round the car by 5°, with shift by 15°; + and − zoom, Home goes back.
 *
 * Thresholds and rates are our judgement.
 */

/** What the gestures ask for. Points are −1…1 across the view and upward. */
export interface GestureHandlers {
  /** Degrees the eye is to walk round and to rise; a drag across the view's width is 180°. */
  readonly onOrbit: (azimuthDegrees: number, elevationDegrees: number) => void;
  /** Things are to look `factor` times as large. */
  readonly onZoom: (factor: number) => void;
  /** The cars are to move right and up, in shares of the view's height. */
  readonly onPan: (dxShare: number, dyShare: number) => void;
  /** A press without a drag; of a double one, the first. */
  readonly onPress: (x: number, y: number) => void;
  /** A double press. */
  readonly onFrame: (x: number, y: number) => void;
  /** The mouse or pen is here and holds nothing. */
  readonly onHover: (x: number, y: number) => void;
  /** It has gone, or begun to drag. */
  readonly onLeave: () => void;
  readonly onHome: () => void;
  /** Before the first and after the last amount of a drag or pinch; wheel and keys have none. */
  readonly onGestureStart: () => void;
  readonly onGestureEnd: () => void;
}

const dragPx = 5;
/** A finger that sets out up or down is left to the page; browsers take it within some 15 px. */
const uprightDragPx = 24;
const pressMs = 500;
/** Two presses this close together are one double press. */
const doubleMs = 350;
const doublePx = 24;
const degreesAcross = 180;
const keyDegrees = 5;
const shiftedKeyDegrees = 15;
const keyZoom = 1.15;
/** Steps to the right round the car and upward. */
const walks: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['ArrowLeft', [-1, 0]],
  ['ArrowRight', [1, 0]],
  ['ArrowUp', [0, 1]],
  ['ArrowDown', [0, -1]],
]);
/** With and without shift: where + and − lie differs from keyboard to keyboard. */
const zooms: ReadonlyMap<string, number> = new Map([
  ['+', keyZoom],
  ['=', keyZoom],
  ['-', 1 / keyZoom],
  ['_', 1 / keyZoom],
]);
/** Zoom of one pixel of wheel, as a natural logarithm; a notch of a mouse counts as 25 of them. */
const wheelRate = 0.01;
const mostWheelPx = 25;
const linePx = 16;

interface Held {
  x: number;
  y: number;
  readonly startX: number;
  readonly startY: number;
  readonly startMs: number;
  readonly button: number;
  readonly pans: boolean;
}
type Motion = 'none' | 'orbit' | 'pan' | 'pinch';

/** Starts reading the element's events; what it returns stops it. */
export function bindGestures(element: HTMLElement, handlers: GestureHandlers): () => void {
  const held = new Map<number, Held>();
  let motion: Motion = 'none';
  let lastPress = { x: 0, y: 0, ms: -Infinity };
  let lastPointerType = '';
  let silencesMenu = false;

  /** Size of the view, never nothing. */
  const size = (): { width: number; height: number } => {
    const { width, height } = element.getBoundingClientRect();
    return { width: Math.max(width, 1), height: Math.max(height, 1) };
  };
  const placeOf = (event: MouseEvent): [x: number, y: number] => {
    const { left, top } = element.getBoundingClientRect();
    const { width, height } = size();
    return [(2 * (event.clientX - left)) / width - 1, 1 - (2 * (event.clientY - top)) / height];
  };

  const begin = (next: Exclude<Motion, 'none'>): void => {
    for (const id of held.keys()) element.setPointerCapture(id);
    if (motion === 'none') {
      handlers.onLeave();
      handlers.onGestureStart();
    }
    motion = next;
  };
  /** Lets go of everything; a finger left over from a pinch does nothing until it is put down anew. */
  const end = (): void => {
    const wasMoving = motion !== 'none';
    motion = 'none';
    const ids = [...held.keys()];
    held.clear();
    for (const id of ids) if (element.hasPointerCapture(id)) element.releasePointerCapture(id);
    if (wasMoving) handlers.onGestureEnd();
  };

  const onPointerDown = (event: PointerEvent): void => {
    silencesMenu = false;
    if (event.button > 2 || held.size >= 2 || held.has(event.pointerId)) return;
    // A second pointer joins only as a second finger.
    if (held.size === 1 && event.pointerType !== 'touch') return;
    const { clientX: x, clientY: y, button, shiftKey, timeStamp: startMs } = event;
    const pans = button !== 0 || shiftKey;
    held.set(event.pointerId, { x, y, startX: x, startY: y, startMs, button, pans });
    if (held.size === 2) begin('pinch');
  };

  const onPointerMove = (event: PointerEvent): void => {
    const one = held.get(event.pointerId);
    if (one !== undefined && event.pointerType === 'mouse' && event.buttons === 0) end();
    if (!held.has(event.pointerId) || one === undefined) {
      const isHovering = event.pointerType !== 'touch' && event.buttons === 0 && held.size === 0;
      if (isHovering) handlers.onHover(...placeOf(event));
      return;
    }
    const { clientX: x, clientY: y } = event;
    if (motion === 'none') {
      const [across, upright] = [Math.abs(x - one.startX), Math.abs(y - one.startY)];
      const isScroll = event.pointerType === 'touch' && upright > across;
      if (Math.hypot(across, upright) < (isScroll ? uprightDragPx : dragPx)) return;
      [one.x, one.y] = [x, y];
      begin(one.pans ? 'pan' : 'orbit');
      return;
    }
    const before = motion === 'pinch' ? spanOf(held) : undefined;
    const [dx, dy] = [x - one.x, y - one.y];
    [one.x, one.y] = [x, y];
    const { width, height } = size();
    if (motion === 'orbit') {
      // The near side of the car follows the hand, so the eye goes the other way.
      const degreesPerPx = degreesAcross / width;
      handlers.onOrbit(-dx * degreesPerPx, dy * degreesPerPx);
    } else if (motion === 'pan') {
      handlers.onPan(dx / height, -dy / height);
    } else if (before !== undefined) {
      const after = spanOf(held);
      if (before.length > 0 && after.length > 0) handlers.onZoom(after.length / before.length);
      handlers.onPan((after.x - before.x) / height, -(after.y - before.y) / height);
    }
  };

  const onPointerUp = (event: PointerEvent): void => {
    const one = held.get(event.pointerId);
    if (one === undefined) return;
    const wasMoving = motion !== 'none';
    silencesMenu = motion === 'pan' && one.button === 2;
    end();
    const strayed = Math.hypot(event.clientX - one.startX, event.clientY - one.startY) >= dragPx;
    const isShort = event.timeStamp - one.startMs < pressMs;
    if (!wasMoving && !strayed && isShort && one.button === 0) press(event);
  };

  const press = (event: PointerEvent): void => {
    const { clientX: x, clientY: y, timeStamp: ms, pointerType } = event;
    const isSecond =
      ms - lastPress.ms < doubleMs && Math.hypot(x - lastPress.x, y - lastPress.y) < doublePx;
    lastPress = { x, y, ms: isSecond ? -Infinity : ms };
    if (!isSecond) handlers.onPress(...placeOf(event));
    // With a mouse the system knows how fast its owner presses twice; see onDoubleClick.
    else if (pointerType === 'touch') handlers.onFrame(...placeOf(event));
    lastPointerType = pointerType;
  };
  const onDoubleClick = (event: MouseEvent): void => {
    if (lastPointerType !== 'touch') handlers.onFrame(...placeOf(event));
  };

  /** Cancelled, or captured by something else: what was begun ends where it stands. */
  const onPointerLost = (event: PointerEvent): void => {
    // Taking a finger over from a child of the element makes the child lose it, which is no loss.
    if (event.type === 'lostpointercapture' && event.target !== element) return;
    if (held.has(event.pointerId)) end();
  };
  const onPointerLeave = (event: PointerEvent): void => {
    if (held.has(event.pointerId) && motion === 'none') end();
    if (event.pointerType !== 'touch' && motion === 'none') handlers.onLeave();
  };

  const onWheel = (event: WheelEvent): void => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    const px = event.deltaMode === WheelEvent.DOM_DELTA_PIXEL ? 1 : linePx;
    const delta = Math.max(-mostWheelPx, Math.min(mostWheelPx, event.deltaY * px));
    handlers.onZoom(Math.exp(-delta * wheelRate));
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.target !== element || event.ctrlKey || event.altKey || event.metaKey) return;
    const step = event.shiftKey ? shiftedKeyDegrees : keyDegrees;
    const walk = walks.get(event.key);
    const zoom = zooms.get(event.key);
    if (walk !== undefined) handlers.onOrbit(walk[0] * step, walk[1] * step);
    else if (zoom !== undefined) handlers.onZoom(zoom);
    else if (event.key === 'Home') handlers.onHome();
    else return;
    event.preventDefault();
  };

  /** The page would scroll under two fingers, and the middle button would start its own scrolling. */
  const onTouch = (event: TouchEvent): void => {
    if (event.targetTouches.length > 1 && event.cancelable) event.preventDefault();
  };
  const onMouseDown = (event: MouseEvent): void => {
    if (event.button !== 1) return;
    event.preventDefault();
    element.focus({ preventScroll: true });
  };
  const onContextMenu = (event: MouseEvent): void => {
    if (silencesMenu || motion === 'pan') event.preventDefault();
    silencesMenu = false;
  };

  const listening = new AbortController();
  const { signal } = listening;
  element.addEventListener('pointerdown', onPointerDown, { signal });
  element.addEventListener('pointermove', onPointerMove, { signal });
  element.addEventListener('pointerup', onPointerUp, { signal });
  element.addEventListener('pointercancel', onPointerLost, { signal });
  element.addEventListener('lostpointercapture', onPointerLost, { signal });
  element.addEventListener('pointerleave', onPointerLeave, { signal });
  element.addEventListener('dblclick', onDoubleClick, { signal });
  element.addEventListener('wheel', onWheel, { signal, passive: false });
  element.addEventListener('keydown', onKeyDown, { signal });
  element.addEventListener('touchstart', onTouch, { signal, passive: false });
  element.addEventListener('touchmove', onTouch, { signal, passive: false });
  element.addEventListener('mousedown', onMouseDown, { signal });
  element.addEventListener('contextmenu', onContextMenu, { signal });
  return () => {
    listening.abort();
    end();
  };
}

/** Length and middle of the line between two fingers, px. */
function spanOf(held: ReadonlyMap<number, Held>): { length: number; x: number; y: number } {
  const [a, b] = [...held.values()];
  if (a === undefined || b === undefined) return { length: 0, x: 0, y: 0 };
  return { length: Math.hypot(b.x - a.x, b.y - a.y), x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}
