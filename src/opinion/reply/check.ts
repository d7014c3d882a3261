/**
 * Was a code typed as it was written? One check character by ISO/IEC 7064, MOD 37,36: it finds every
 * single wrong character and nearly every swap of neighbours ([ISO7064]).
 *
 * In: digits and upper-case letters; anything else is passed over, as the standard's users do with
 * hyphens. Out: one of the same 36 characters.
 */
const characters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The check character that belongs after a text. */
export function checkOf(text: string): string {
  let product = 36;
  for (const character of text) {
    const value = characters.indexOf(character);
    if (value < 0) continue;
    const sum = (product + value) % 36 || 36;
    product = (sum * 2) % 37;
  }
  return characters[(37 - product) % 36]!;
}
