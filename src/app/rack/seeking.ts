/**
 * What is looked for on the rack, near which spoon, and which spoon is in the hand. Kept out of the
 * undo history, and as it was while the bench is worked at.
 */
import { create } from 'zustand';
import type { EmbeddedFinish, FinishRef } from '../../build/build.ts';
import type { Chemistry, Effect } from '../../finish/finish.ts';
import type { Stock } from '../../finish/rack/find.ts';
import { everywhere, type Scope } from './finishes.ts';

export interface Seeking {
  readonly scope: Scope;
  /** As typed: words, perhaps with a colour among them. */
  readonly text: string;
  readonly effect: Effect | undefined;
  /** Id of a sheen class. */
  readonly sheen: string | undefined;
  readonly chemistry: Chemistry | undefined;
  readonly stock: Stock | undefined;
  /** The finish whose neighbours are looked for. */
  readonly near: EmbeddedFinish | undefined;
  /** The finish of which more is told. */
  readonly inHand: FinishRef | undefined;
}

/** Nothing asked for. */
const open = {
  text: '',
  effect: undefined,
  sheen: undefined,
  chemistry: undefined,
  stock: undefined,
  near: undefined,
} as const;

export const useSeeking = create<Seeking>()(() => ({
  scope: everywhere,
  ...open,
  inHand: undefined,
}));

/** Looks for what is near to a finish, whatever it is called. */
export const seekNear = (near: EmbeddedFinish): void => useSeeking.setState({ near, text: '' });

export const seek = (change: Partial<Seeking>): void => useSeeking.setState(change);

/** The focus goes to the spoons once they have been drawn: the button pressed may be gone by then. */
export const toTheSpoons = (): void => {
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>('.rack-body .spoon-rows')?.focus({ preventScroll: true });
  });
};

/** Asks for nothing any more; rack and spoon in the hand stay. */
export const seekAll = (): void => {
  useSeeking.setState(open);
  toTheSpoons();
};

/** Whether anything is asked for. */
export const isAsking = (seeking: Seeking): boolean =>
  seeking.text.trim() !== '' ||
  (['effect', 'sheen', 'chemistry', 'stock', 'near'] as const).some(
    (field) => seeking[field] !== undefined,
  );
