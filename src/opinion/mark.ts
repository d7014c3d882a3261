/**
 * Which round is a reply about? Links in comments are often held back, so a reply carries a short
 * mark of its round instead: the upper 20 bits of the CRC-32 of the round's canonical text, as four
 * characters of Crockford's base 32, which has no I, L, O or U to misread ([Crockford2019]).
 *
 * In: a round. Out: four characters. Limits: about one in a million other rounds has the same mark;
 * it tells a builder's own rounds apart and proves nothing. Whatever becomes of links, a mark stays
 * that of the text as version 1 writes it, so that replies outlive it.
 */
import { crc32 } from './crc.ts';
import { textFrom } from './link/layout.ts';
import type { Round } from './round.ts';

/** Digits of Crockford's base 32 in the order of their values. */
export const markDigits = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

const known = new WeakMap<Round, string>();

/** The mark of a round: the same question has the same mark, whoever made the link. */
export function markOf(round: Round): string {
  const found = known.get(round);
  if (found !== undefined) return found;
  const bits = crc32(textFrom(round)) >>> 12;
  const mark = [15, 10, 5, 0].map((shift) => markDigits[(bits >>> shift) & 31]).join('');
  known.set(round, mark);
  return mark;
}

/** A mark as somebody typed it, as it was meant: upper case, O for 0, I and L for 1. */
export const meantMark = (typed: string): string =>
  typed.toUpperCase().replace(/O/g, '0').replace(/[IL]/g, '1');
