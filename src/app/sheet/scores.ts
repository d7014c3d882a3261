/** How sentences about several alternatives call them, and which of them beat one throughout. */
import { listed } from '../../build/rule.ts';
import { beating, type Comparison, type ScoreSheet } from '../../score/comparison.ts';

/** `C is nowhere worse than this, and better on some`; undefined where none is. */
export function beatenInWords(sheet: ScoreSheet, all: readonly ScoreSheet[]): string | undefined {
  const better = beating(sheet, all).map(({ letter }) => letter);
  if (better.length === 0) return undefined;
  return `${listed(better)} ${better.length === 1 ? 'is' : 'are'} as good on every score, and better on some`;
}

/** Letters of a comparison by alternative id. */
export const lettersOf = (comparison: Comparison): ((id: string) => string) => {
  const letters = new Map(comparison.alternatives.map(({ id, letter }) => [id, letter]));
  return (id) => letters.get(id) ?? '?';
};
