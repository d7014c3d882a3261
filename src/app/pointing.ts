/**
 * What the builder is pointing at, by mouse, finger or keyboard focus: the parts that light up on
 * every picture, in the table and in the evidence. Kept out of the undo history.
 */
import { create } from 'zustand';

export interface Pointing {
  /** Build part ids that are lit. */
  readonly parts: readonly string[];
  /** Pointed at on a picture: ringed, with the rest of the car left as it is. */
  readonly isGentle: boolean;
  /** Build part ids that stay lit while nothing else is pointed at. */
  readonly pinned: readonly string[];
  /** The part whose other places are being asked about; stays until asked again. */
  readonly asked: string | undefined;
}

const nothing: readonly string[] = [];

export const usePointing = create<Pointing>()(() => ({
  parts: nothing,
  isGentle: false,
  pinned: nothing,
  asked: undefined,
}));

const isSame = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((part, k) => part === other[k]);

/** Lights these parts everywhere; none leaves only what is pinned. */
export function pointAt(parts: readonly string[], isGentle = false): void {
  const { parts: before, pinned } = usePointing.getState();
  const after = parts.length === 0 ? pinned : parts;
  if (!isSame(before, after)) usePointing.setState({ parts: after, isGentle });
}

/** Keeps these parts lit until they are pinned again, or others are. */
export const pin = (parts: readonly string[]): void =>
  usePointing.setState(({ pinned }) => {
    const after = isSame(pinned, parts) ? nothing : parts;
    return { pinned: after, parts: after, isGentle: false };
  });

/** Puts every light out. */
export const pointNowhere = (): void => usePointing.setState({ parts: nothing, pinned: nothing });

/** Asks where else the colour of this part appears; asking twice closes the answer. */
export const ask = (part: string): void =>
  usePointing.setState(({ asked }) => ({ asked: asked === part ? undefined : part }));

/** Whether any of these parts is lit. */
export const useIsLit = (parts: readonly string[]): boolean =>
  usePointing(({ parts: lit }) => parts.some((part) => lit.includes(part)));

/** Whether exactly these parts are pinned. */
export const useIsPinned = (parts: readonly string[]): boolean =>
  usePointing(({ pinned }) => pinned.length > 0 && isSame(pinned, parts));

/** While spoons are chosen, and as the focus goes back after, nothing is pointed at by focus. */
let isHushed = false;
export const hush = (on: boolean): void => {
  isHushed = on;
};

/** Handlers for anything that stands for parts: pointing or focusing it lights them. */
export const pointsAt = (parts: readonly string[]) => ({
  onPointerEnter: () => pointAt(parts),
  onPointerLeave: () => pointAt(nothing),
  onFocus: ({ target }: { readonly target: Element }) => {
    // Focus that a mouse left behind is no pointing: it would keep the cars dimmed.
    if (!isHushed && target.matches(':focus-visible')) pointAt(parts);
  },
  onBlur: () => pointAt(nothing),
});
