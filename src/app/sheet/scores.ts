/** The letters that sentences about two alternatives call them by. */
import type { Comparison } from '../../score/comparison.ts';

/** Letters of a comparison by alternative id. */
export const lettersOf = (comparison: Comparison): ((id: string) => string) => {
  const letters = new Map(comparison.alternatives.map(({ id, letter }) => [id, letter]));
  return (id) => letters.get(id) ?? '?';
};
