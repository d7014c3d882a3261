/** How surely one alternative is ahead of another, in words. */
import type { Closeness, Comparison } from '../../score/comparison.ts';

/** Draws of 100 from which one alternative counts as ahead. */
const clearlyAhead = 90;

/** One comparison of two alternatives in words. */
export function closenessSentence(pair: Closeness, letterOf: (id: string) => string): string {
  const isTurned = pair.aheadIn100 < 50;
  const [ahead, behind] = isTurned ? [pair.b, pair.a] : [pair.a, pair.b];
  const draws = Math.round(isTurned ? 100 - pair.aheadIn100 : pair.aheadIn100);
  const [first, second] = [letterOf(ahead), letterOf(behind)];
  return draws >= clearlyAhead
    ? `${first} stays ahead of ${second} in ${draws} of 100 draws of colour uncertainty.`
    : `${first} and ${second} are too close to call (${first} ahead in ${draws} of 100 draws of colour uncertainty); ` +
        'ask your viewers.';
}

/** Letters of a comparison by alternative id. */
export const lettersOf = (comparison: Comparison): ((id: string) => string) => {
  const letters = new Map(comparison.alternatives.map(({ id, letter }) => [id, letter]));
  return (id) => letters.get(id) ?? '?';
};
