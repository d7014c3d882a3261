/**
 * How are points and counts told? Rounded so that nothing sounds surer than it is: a gap upwards,
 * a difference too small to show as such.
 *
 * Points are those of the overall, 0–100.
 */

/** Two overalls nearer than this are level: a ranking is proved to no finer. */
export const levelWithin = 0.001;

const numerals = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** A count as a word up to ten, then in figures: `four`, `1,296`. */
export const inNumerals = (count: number): string =>
  count === 10 ? 'ten' : (numerals[count] ?? count.toLocaleString('en-GB'));

/** `one bottle`, `three bottles`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${inNumerals(count)} ${count === 1 ? one : many}`;

/** An overall or a score as it is shown: `71.3`. */
export const shownScore = (value: number): string => value.toFixed(1);

/** A difference: `2.3 points`, `1.0 point`, `less than 0.1 points`. */
export function points(difference: number): string {
  const shown = Math.abs(difference).toFixed(1);
  if (shown === '0.0') return 'less than 0.1 points';
  return `${shown} ${shown === '1.0' ? 'point' : 'points'}`;
}

/** What something comes to at most, rounded up: `3.2 points`. */
export function atMostPoints(most: number): string {
  // Binary fractions: 2.3 × 10 must not become 2.4.
  const tenths = Math.max(1, Math.ceil(most * 10 - 1e-9));
  return points(tenths / 10);
}

/** A difference with its sign, for brackets: `+2.3`, `−0.4`. */
export const signed = (difference: number): string =>
  `${difference < 0 ? '−' : '+'}${Math.abs(difference).toFixed(1)}`;
