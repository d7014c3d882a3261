/** What was wrong with the file or text that came in last; small, since the page waits for it. */
import { create } from 'zustand';
import type { Problem } from '../../ground/problem.ts';

export interface Refused {
  readonly name: string;
  readonly problems: readonly Problem[];
  /** Which opening it answers, so that each refusal gets a dialog of its own. */
  readonly turn: number;
}

export const useRefused = create<{ readonly refused: Refused | undefined }>()(() => ({
  refused: undefined,
}));

/** The refusal was read. */
export const refusalRead = (turn: number): void =>
  useRefused.setState(({ refused }) => (refused?.turn === turn ? { refused: undefined } : {}));
