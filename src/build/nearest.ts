/**
 * Which word did the builder mean? Nearest id to a mistyped one by the optimal string alignment
 * distance: letters added, lost, swapped for another, or two neighbours exchanged, one step each.
 * Suggested only within a third of the word's length and three steps (our judgement): further off
 * a suggestion misleads.
 */
const mostSteps = 3;

/** The nearest of `words` to `typed`, or undefined where none is close. Ties: the first listed. */
export function nearestWord(typed: string, words: Iterable<string>): string | undefined {
  let best: string | undefined;
  let reach = Math.min(mostSteps, Math.ceil(typed.length / 3));
  for (const word of words) {
    const steps = stepsBetween(typed, word, reach);
    if (steps > reach) continue;
    best = word;
    reach = steps - 1;
    if (reach < 0) break;
  }
  return best;
}

/** ` Did you mean “…”?` for the end of a sentence, or nothing where no word is close. */
export function didYouMean(typed: string, words: Iterable<string>): string {
  const word = nearestWord(typed, words);
  return word === undefined ? '' : ` Did you mean “${word}”?`;
}

/** Steps from `a` to `b`; any number above `reach` once they are known to be further apart. */
function stepsBetween(a: string, b: string, reach: number): number {
  if (Math.abs(a.length - b.length) > reach) return reach + 1;
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const isAlike = a[row - 1] === b[column - 1];
      let steps = Math.min(
        above[column]! + 1,
        current[column - 1]! + 1,
        above[column - 1]! + (isAlike ? 0 : 1),
      );
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        steps = Math.min(steps, before[column - 2]! + 1);
      }
      current.push(steps);
    }
    if (Math.min(...current) > reach) return reach + 1;
    before = above;
    above = current;
  }
  return above[b.length]!;
}
