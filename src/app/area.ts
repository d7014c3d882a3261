/**
 * What lies beneath the cars: the bench (part table, rules, score sheets), the rack or the ranking.
 * Kept out of the undo history.
 */
import { create } from 'zustand';

export type Area = 'bench' | 'rack' | 'ranking';

interface Shown {
  readonly area: Area;
}

export const useArea = create<Shown>()(() => ({ area: 'bench' }));

/** Lays out one of them beneath the cars. */
export const goTo = (area: Area): void => useArea.setState({ area });
