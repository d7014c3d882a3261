/**
 * How do bytes and numbers become characters that no address needs to escape? Six bits each, by the
 * alphabet for addresses of [RFC4648], section 5, without padding.
 */
export const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

const digitValue = new Map([...alphabet].map((one, at) => [one, at]));

export const isDigit = (character: string): boolean => digitValue.has(character);

/** A whole number as so many characters, the highest first. */
export const digits = (value: number, count: number): string =>
  Array.from(
    { length: count },
    (_, at) => alphabet[Math.floor(value / 64 ** (count - 1 - at)) % 64],
  ).join('');

/** The number in characters of the alphabet. */
export const numberIn = (text: string): number =>
  [...text].reduce((sum, one) => sum * 64 + (digitValue.get(one) ?? 0), 0);

/** Characters for bytes. */
export function charactersOf(bytes: Uint8Array): string {
  let text = '';
  let held = 0;
  let bits = 0;
  for (const byte of bytes) {
    held = (held << 8) | byte;
    bits += 8;
    while (bits >= 6) {
      bits -= 6;
      text += alphabet[(held >> bits) & 63];
    }
    held &= (1 << bits) - 1;
  }
  return bits > 0 ? text + alphabet[(held << (6 - bits)) & 63] : text;
}

/** Bytes in characters of the alphabet; bits left over at the end are no byte. */
export function bytesOf(text: string): Uint8Array {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (const one of text) {
    held = (held << 6) | (digitValue.get(one) ?? 0);
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = held >> bits;
    held &= (1 << bits) - 1;
  }
  return bytes;
}
