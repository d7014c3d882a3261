/** What each score is called on screen and what it asks; words for closeness and standing. */
import type { Closeness, Comparison } from '../../score/comparison.ts';
import type { ScoreKey } from '../../score/evidence.ts';

interface ScoreWords {
  readonly name: string;
  readonly asks: string;
}

export const scoreWords: Readonly<Record<ScoreKey, ScoreWords>> = {
  contrast: {
    name: 'Contrast',
    asks: 'Does each part read against its neighbours at this distance?',
  },
  accent: {
    name: 'Accent balance',
    asks: 'Is there an accent, is it repeated, and are its places seen together?',
  },
  sheen: {
    name: 'Sheen pairing',
    asks: 'Are neighbouring sheens equal or clearly apart, and so meant?',
  },
  harmony: {
    name: 'Nearly the same',
    asks:
      'Are two colours too close to be meant? No formula tells whether colours please: the ' +
      'best-known one does no better than chance on published combinations, so this only looks ' +
      'for near misses, a weak sign at that.',
  },
  steadiness: {
    name: 'Steadiness',
    asks: 'Do small parts still read under other lamps and to colour-weak eyes?',
  },
  readiness: {
    name: 'Readiness',
    asks: 'What is still to buy, to strip and to wait for?',
  },
};

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
