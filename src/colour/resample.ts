/**
 * A measurement was taken at other wavelengths: what is it at ours?
 *
 * Monotone piecewise cubic interpolation [FritschCarlson1980] of any ascending table. Chosen over
 * Sprague's fifth-order rule because it takes unequal steps, never overshoots (a reflectance
 * stays within its measured neighbours) and returns measured values untouched; over straight
 * lines because those flatten peaks in 20 nm tables. Beyond the ends the end value is repeated.
 */
import type { Problem } from '../ground/problem.ts';
import { InputError, shown } from '../ground/problem.ts';

// A table must reach across the range that carries 99.9 % of luminance, in steps a curve can bear.
const mustStartByNm = 400;
const mustReachNm = 700;
const widestGapNm = 50;

/** Values at `wanted` (any order) from an ascending table; ends are repeated outside it. */
export function resampled(
  nm: readonly number[],
  values: readonly number[],
  wanted: readonly number[],
): Float64Array {
  const slopes = slopesOf(nm, values);
  return Float64Array.from(wanted, (at) => valueAt(nm, values, slopes, at));
}

function valueAt(
  nm: readonly number[],
  values: readonly number[],
  slopes: readonly number[],
  at: number,
): number {
  const last = nm.length - 1;
  if (at <= nm[0]!) return values[0]!;
  if (at >= nm[last]!) return values[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (nm[middle]! <= at) low = middle;
    else high = middle;
  }
  const width = nm[high]! - nm[low]!;
  const t = (at - nm[low]!) / width;
  // Cubic Hermite basis on [0, 1].
  const rest = 1 - t;
  return (
    values[low]! * rest * rest * (1 + 2 * t) +
    values[high]! * t * t * (3 - 2 * t) +
    width * (slopes[low]! * t * rest * rest - slopes[high]! * t * t * rest)
  );
}

/** Slopes that keep every piece monotone: weighted harmonic mean inside, 0 at a turn. */
function slopesOf(nm: readonly number[], values: readonly number[]): number[] {
  const widths = nm.slice(1).map((value, index) => value - nm[index]!);
  const rises = values.slice(1).map((value, index) => (value - values[index]!) / widths[index]!);
  return nm.map((_, index) => {
    const before = rises[index - 1];
    const after = rises[index];
    if (before === undefined) return after ?? 0;
    if (after === undefined) return before;
    if (before * after <= 0) return 0;
    const left = 2 * widths[index]! + widths[index - 1]!;
    const right = widths[index]! + 2 * widths[index - 1]!;
    return (left + right) / (left / before + right / after);
  });
}

/** Throws an `InputError` naming every fault of a spectral table. */
export function checkTable(nm: readonly number[], values: readonly number[]): void {
  const problems: Problem[] = [];
  const report = (place: string, found: string, expected: string, mend: string): void => {
    problems.push({ place, found, expected, mend });
  };
  if (nm.length !== values.length) {
    report(
      'spectrum',
      `${nm.length} wavelengths and ${values.length} reflectances`,
      'one reflectance for each wavelength',
      'Add or remove the entries that have no partner.',
    );
  }
  nm.forEach((wavelength, index) => {
    const place = `spectrum › nm › ${index + 1}`;
    const before = nm[index - 1];
    if (!Number.isFinite(wavelength)) {
      report(place, shown(wavelength), 'a wavelength in nm', 'Write a plain number such as 550.');
    } else if (before !== undefined && wavelength <= before) {
      report(
        place,
        `${wavelength} nm after ${before} nm`,
        'wavelengths that rise from entry to entry',
        'Sort the table by wavelength and keep each wavelength once.',
      );
    } else if (before !== undefined && wavelength - before > widestGapNm) {
      report(
        place,
        `a gap from ${before} to ${wavelength} nm`,
        `steps of ${widestGapNm} nm or less`,
        'Measure or export the table with finer steps; 10 nm is usual.',
      );
    }
  });
  values.forEach((value, index) => {
    if (Number.isFinite(value)) return;
    const place = `spectrum › reflectance › ${index + 1}`;
    report(place, shown(value), 'a reflectance from 0 to 1', 'Write a plain number such as 0.42.');
  });
  const start = nm[0];
  const end = nm[nm.length - 1];
  if (start === undefined || end === undefined || start > mustStartByNm || end < mustReachNm) {
    report(
      'spectrum › nm',
      start === undefined ? 'no wavelengths' : `${start} to ${end} nm`,
      `a table that covers at least ${mustStartByNm}–${mustReachNm} nm`,
      'Use a measurement of the whole visible range, or give the colour as Lab or sRGB.',
    );
  }
  if (problems.length > 0) throw new InputError(problems);
}
