/**
 * Did a text arrive as it was sent? CRC-32 as in ISO 3309 and gzip: polynomial 04C11DB7 reflected,
 * all ones before and after ([RFC1952], section 8). It finds accidents, never intent.
 *
 * In: bytes, or text taken as UTF-8. Out: a whole number from 0 to 2^32 − 1.
 */
const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** CRC-32 of bytes, or of a text's UTF-8. */
export function crc32(content: Uint8Array | string): number {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  let value = 0xffffffff;
  for (const byte of bytes) value = (value >>> 8) ^ table[(value ^ byte) & 0xff]!;
  return (value ^ 0xffffffff) >>> 0;
}
