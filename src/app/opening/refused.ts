/** What was wrong with files and texts that came in; small, since the page waits for it. */
import { create } from 'zustand';
import type { Problem } from '../../ground/problem.ts';

export interface Refused {
  readonly name: string;
  readonly problems: readonly Problem[];
}
interface Told {
  /** Refused and not read yet, in the order they came. */
  readonly refused: readonly (Refused & { readonly turn: number })[];
  /** Whether nothing that came with them was opened. */
  readonly isUntouched: boolean;
}

const nothing: Told = { refused: [], isUntouched: true };
export const useRefused = create<Told>()(() => nothing);

let turn = 0;

/** Tells of refusals, after those that have not been read. */
export const tellRefused = (more: readonly Refused[], isUntouched: boolean): void =>
  useRefused.setState((now) => ({
    refused: [
      ...now.refused,
      ...more.map((one) => {
        turn += 1;
        return { ...one, turn };
      }),
    ],
    isUntouched: now.isUntouched && isUntouched,
  }));

/** All were read; the answer is what they were. */
export function refusalsRead(): readonly Refused[] {
  const { refused } = useRefused.getState();
  useRefused.setState(nothing);
  return refused;
}
