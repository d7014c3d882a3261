/**
 * What lies beneath the cars: the bench (part table, rules, score sheets) or the rack. Kept out of
 * the undo history.
 */
import { create } from 'zustand';

export type Area = 'bench' | 'rack';

interface Shown {
  readonly area: Area;
}

export const useArea = create<Shown>()(() => ({ area: 'bench' }));

/** Lays out the bench or the rack beneath the cars. */
export const goTo = (area: Area): void => useArea.setState({ area });
