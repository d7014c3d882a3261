/**
 * Did a link arrive whole, and is it of a version this program knows? The envelope is the same for
 * every version there will ever be, so that an old page can still tell a new link from a broken one:
 *
 *     version  one character; `1` for the layout of `layout`
 *     length   three characters: how many the body has
 *     check    one character over those four, so that what they say can be believed
 *     body     whatever the version puts there
 *     seal     six characters: CRC-32 of all the characters before it
 *
 * All by the alphabet of `base64`. The check is 1, 3, 5 and 7 times the four values, added up modulo
 * 64: being odd, they let no single wrong character pass. A body has 262,143 characters at most.
 *
 * In: a body. Out: a link; and back, throwing `LinkError`. It finds accidents, never intent.
 */
import { crc32 } from '../crc.ts';
import { alphabet, digits, isDigit, numberIn } from './base64.ts';
import { fault } from './fault.ts';

/** Version that is written. */
export const version = '1';
const headLength = 5;
const sealLength = 6;
/** Characters of a link besides its body. */
export const envelopeLength = headLength + sealLength;

const checkOf = (head: string): string =>
  alphabet[[...head].reduce((sum, one, at) => sum + (2 * at + 1) * numberIn(one), 0) % 64]!;
const sealOf = (before: string): string => digits(crc32(before), sealLength);

/** A body in its envelope. */
export function enveloped(body: string, kind = version): string {
  const head = `${kind}${digits(body.length, 3)}`;
  const before = `${head}${checkOf(head)}${body}`;
  return `${before}${sealOf(before)}`;
}

/** Characters of the link that begins so; undefined where its beginning is not one of ours. */
export function lengthFrom(link: string): number | undefined {
  const head = link.slice(0, headLength - 1);
  if (link.length < headLength || checkOf(head) !== link[headLength - 1]) return undefined;
  return numberIn(head.slice(1)) + envelopeLength;
}

/** The body of a link of our version, whole and unaltered; `link` holds only what links hold. */
export function bodyIn(link: string): string {
  if (link === '') throw fault('none', 'no link');
  const stranger = [...link].find((one) => !isDigit(one));
  if (stranger !== undefined) throw fault('altered', strangerWords(stranger));
  if (link.length < headLength) {
    const found = `${link.length} ${link.length === 1 ? 'character' : 'characters'}, too few to say of how many`;
    throw fault('cut', found, link.length);
  }
  const of = lengthFrom(link);
  if (of === undefined) {
    throw fault(
      'altered',
      'a beginning that is not as it was sent, so that its length is not known',
    );
  }
  if (link.length < of) {
    throw fault('cut', `${link.length} of ${of} characters`, link.length, of);
  }
  const before = link.slice(0, of - sealLength);
  if (link.length > of) {
    throw fault('altered', `${link.length} characters where ${of} were sent`);
  }
  if (sealOf(before) !== link.slice(-sealLength)) {
    throw fault('altered', `all ${of} characters, but not all as they were sent`);
  }
  if (link[0] !== version) {
    throw fault(
      'newer',
      `a whole link of version ${link[0]}, where this program reads version ${version}`,
    );
  }
  return before.slice(headLength);
}

/** A character that no link has, in words; hidden ones by their number. */
function strangerWords(character: string): string {
  const code = character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
  const isSeen = /^[\p{L}\p{N}\p{P}\p{S}]$/u.test(character);
  return `${isSeen ? `the character “${character}”` : `the character U+${code}`}, which no link has`;
}
