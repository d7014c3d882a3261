/** A number as a builder reads it: at most `places` decimals, trailing zeros dropped. */
export function figure(value: number, places = 0): string {
  const rounded = value.toFixed(places);
  const trimmed = places > 0 ? rounded.replace(/\.?0+$/, '') : rounded;
  return trimmed === '-0' ? '0' : trimmed.replace('-', '−');
}
