/** Which finish is being edited: its rack and its id. Kept out of the undo history. */
import { create } from 'zustand';
import { endStep } from '../store.ts';

export interface Edited {
  /** Rack id; a rack the builder does not have stands for a finish that only the build holds. */
  readonly rack: string;
  readonly finish: string;
}

export const useEditing = create<{ readonly edited: Edited | undefined }>()(() => ({
  edited: undefined,
}));

/** Opens the editor on a finish. */
export function startEditing(rack: string, finish: string): void {
  endStep();
  useEditing.setState({ edited: { rack, finish } });
}

/** Puts the editor away; the next change is an undo step of its own. */
export function stopEditing(): void {
  endStep();
  useEditing.setState({ edited: undefined });
}
