/**
 * Which dialog lies over the page, and on what? One at a time, kept out of the undo history; each
 * is fetched when it is first asked for. The focus goes back to what opened it.
 */
import { create } from 'zustand';

export type Overlay =
  /** Standing, name, candidates and cover of one part of the build. */
  | { readonly kind: 'part'; readonly part: string }
  /** All parts of the build, to mark many at once; opened to answer a question, called by that. */
  | { readonly kind: 'parts'; readonly asks?: 'painted' | 'open' }
  /** Name, note, place of one alternative. */
  | { readonly kind: 'alternative'; readonly alternative: string }
  /** What the model is: name, scale, distance, date, story; parts left out. */
  | { readonly kind: 'build' }
  /** A new build. */
  | { readonly kind: 'new' }
  /** Every build this browser keeps. */
  | { readonly kind: 'builds' }
  /** Finishes from files or a paste, onto a rack. */
  | { readonly kind: 'bring'; readonly into?: string }
  /** Viewers are asked: a link, a code, a picture, a text. */
  | { readonly kind: 'ask' }
  /** Anything that can be done, by its name; or which keys do what. */
  | { readonly kind: 'commands'; readonly isKeys?: boolean };

interface Laid {
  readonly overlay: Overlay | undefined;
}

export const useOverlay = create<Laid>()(() => ({ overlay: undefined }));

/** Lays a dialog over the page, in the place of any other. */
export const lay = (overlay: Overlay): void => useOverlay.setState({ overlay });

/** Takes the dialog away. */
export const clear = (): void => useOverlay.setState({ overlay: undefined });

/**
 * Takes a dialog away that has been closed, unless another lies there by now: the browser tells of
 * the closing only after keys that were pressed meanwhile.
 */
export function cleared(kind: Overlay['kind']): void {
  if (useOverlay.getState().overlay?.kind === kind) clear();
}
