/**
 * In which order does this viewer see the cars? By chance, and the same again after a reload, so
 * that nobody loses their place and no alternative stands first for everyone.
 */

const keyOf = (mark: string): string => `testspoon.order.${mark}`;

/** A seed 0 to 2³² − 1 for the round with this mark; a new one where none could be kept. */
export function seedFor(mark: string): number {
  const kept = Number(readKept(keyOf(mark)) ?? Number.NaN);
  if (Number.isInteger(kept) && kept >= 0 && kept < 2 ** 32) return kept;
  const [fresh] = crypto.getRandomValues(new Uint32Array(1));
  keep(keyOf(mark), String(fresh));
  return fresh!;
}

/** A browser may refuse to keep anything; then the order holds as long as the page is open. */
function readKept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function keep(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // Nothing depends on it.
  }
}
