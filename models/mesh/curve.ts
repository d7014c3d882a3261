/**
 * A character line: the smooth curve a body maker draws through a few measured points without
 * ever overshooting them. In: knots (position, value) in rising position, usually metres. Out: a
 * function of position, constant outside the knots.
 * Monotone cubic Hermite interpolation with harmonic-mean slopes, [FritschCarlson1980].
 */
export type Knot = readonly [at: number, value: number];
export type Curve = (at: number) => number;

/** The monotone cubic through `knots`; throws where they are fewer than two or do not rise. */
export function curveThrough(knots: readonly Knot[]): Curve {
  const at = knots.map((knot) => knot[0]);
  const value = knots.map((knot) => knot[1]);
  if (at.length < 2 || at.some((here, k) => k > 0 && here <= at[k - 1]!)) {
    throw new RangeError('A character line needs two or more knots in rising position.');
  }
  const slopes = slopesOf(at, value);
  const last = at.length - 1;
  return (x) => {
    if (x <= at[0]!) return value[0]!;
    if (x >= at[last]!) return value[last]!;
    let k = 0;
    while (x > at[k + 1]!) k++;
    const width = at[k + 1]! - at[k]!;
    const t = (x - at[k]!) / width;
    const square = t * t;
    const cube = square * t;
    return (
      (2 * cube - 3 * square + 1) * value[k]! +
      (cube - 2 * square + t) * width * slopes[k]! +
      (3 * square - 2 * cube) * value[k + 1]! +
      (cube - square) * width * slopes[k + 1]!
    );
  };
}

// Harmonic mean of the neighbouring chords keeps each piece monotone; a turning point lies flat.
function slopesOf(at: readonly number[], value: readonly number[]): number[] {
  const last = at.length - 1;
  const chords = at.slice(1).map((here, k) => (value[k + 1]! - value[k]!) / (here - at[k]!));
  return at.map((_, k) => {
    if (k === 0) return chords[0]!;
    if (k === last) return chords[last - 1]!;
    const before = chords[k - 1]!;
    const after = chords[k]!;
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  });
}
