/**
 * What stands behind `#` in the address that viewers are given? A round, packed so that it fits
 * where people talk, and sealed so that one that was cut or altered on the way is told, never
 * guessed at. Fragments are not sent to any server [RFC3986].
 *
 * In: a round. Out: letters, digits, `-` and `_` only [RFC4648]. And back, from whatever was pasted;
 * throws `LinkError`. The envelope is frozen for every version to come:
 *
 *     version  one character
 *     length   three characters: how many the body has, base 64
 *     check    one character over those four, so that what they say can be believed
 *     body     of version 1: the text of `layout`, raw deflate [RFC1951] with the dictionary of
 *              `words/first`, base 64
 *     seal     six characters: CRC-32 of everything before them, as they stand
 */
import { deflateSync, Inflate } from 'fflate';
import { InputError } from '../../ground/problem.ts';
import { crc32 } from '../crc.ts';
import type { Round } from '../round.ts';
import { roundIn, textFrom } from './layout.ts';
import { pastedLink } from './pasted.ts';
import { dictionary } from './words/first.ts';

/** Page that shows a round, beside the bench. */
export const roundPage = 'round.html';
/** Links of more characters are held back or cut in some places; common practice, no source. */
export const longestComfortable = 2000;
/** Longest link that is written or read, characters. */
export const longestLink = 65_536;
/** Most bytes that a body may unpack to. */
const mostText = 262_144;

export type LinkFault = 'none' | 'cut' | 'altered' | 'newer' | 'unreadable';

/** Why a link does not open. */
export class LinkError extends InputError {
  readonly fault: LinkFault;
  /** Characters that arrived, of how many; of cut links only. */
  readonly arrived: number | undefined;
  readonly of: number | undefined;

  constructor(fault: LinkFault, found: string, mend: string, arrived?: number, of?: number) {
    super([{ place: '', found, expected: 'a whole link to a round', mend }], 'the link');
    this.name = 'LinkError';
    this.fault = fault;
    this.arrived = arrived;
    this.of = of;
  }
}

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const digitOf = new Map([...alphabet].map((one, at) => [one, at]));
const version = '1';
const headLength = 5;
const sealLength = 6;
const dictionaryBytes = new TextEncoder().encode(dictionary);

/** `value` as so many characters, base 64, the highest first. */
const digits = (value: number, count: number): string =>
  Array.from(
    { length: count },
    (_, at) => alphabet[Math.floor(value / 64 ** (count - 1 - at)) % 64],
  ).join('');
const numberIn = (text: string): number =>
  [...text].reduce((sum, one) => sum * 64 + (digitOf.get(one) ?? 0), 0);
const checkOf = (head: string): string => alphabet[crc32(head) % 64]!;
const sealOf = (before: string): string => digits(crc32(before), sealLength);

/** Characters for bytes, six bits each, without padding. */
function charactersOf(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const three = (bytes[at]! << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    text += digits(three, 4).slice(0, Math.min(4, bytes.length - at + 1));
  }
  return text;
}

function bytesOf(text: string): Uint8Array {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (const one of text) {
    held = ((held << 6) | (digitOf.get(one) ?? 0)) & 0xfff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = held >> bits;
  }
  return bytes;
}

/** The link to a round. Throws `InputError` where it would be too long to be of use anywhere. */
export const linkOf = (round: Round): string => sealed(textFrom(round));

/** A text of `layout`, packed and sealed. */
export function sealed(text: string): string {
  const bytes = new TextEncoder().encode(text);
  const body = charactersOf(deflateSync(bytes, { level: 9, dictionary: dictionaryBytes }));
  if (body.length > longestLink - headLength - sealLength || bytes.length > mostText) {
    const found = `${body.length} characters`;
    const expected = `at most ${longestLink}`;
    const mend = 'Ask about fewer alternatives, or leave the story out.';
    throw new InputError([{ place: 'the link', found, expected, mend }]);
  }
  const head = `${version}${digits(body.length, 3)}`;
  const before = `${head}${checkOf(head)}${body}`;
  return `${before}${sealOf(before)}`;
}

/** Address of a round; `base` is the folder of the page, with a slash at its end. */
export const addressOf = (base: string, round: Round): string =>
  `${base}${roundPage}#${linkOf(round)}`;

const again = 'Ask for it again where it came from, and open it from there.';

/** The round of a link, as pasted: a whole address, a fragment, in quotes or brackets. */
export function roundFrom(pasted: string): Round {
  const link = pastedLink(pasted);
  if (link === '') {
    throw new LinkError('none', 'no link', 'Paste the whole address you were given.');
  }
  if (link.length > longestLink) {
    throw new LinkError('unreadable', `${link.length} characters`, again);
  }
  const stranger = [...link].find((one) => !digitOf.has(one));
  if (stranger !== undefined) {
    throw new LinkError('altered', `the character “${stranger}”, which no link has`, again);
  }
  const head = link.slice(0, headLength - 1);
  if (link.length < headLength) {
    throw new LinkError('cut', `${link.length} characters, its beginning`, again, link.length);
  }
  if (checkOf(head) !== link[headLength - 1]) {
    throw new LinkError('altered', 'a beginning that was altered on the way', again);
  }
  const of = headLength + numberIn(head.slice(1)) + sealLength;
  if (link.length < of) {
    const found = `${link.length} of ${of} characters`;
    throw new LinkError('cut', found, again, link.length, of);
  }
  const seal = link.slice(of - sealLength, of);
  if (link.length > of || sealOf(link.slice(0, of - sealLength)) !== seal) {
    throw new LinkError('altered', 'a link that was altered on the way', again);
  }
  if (head[0] !== version) {
    const mend = 'Reload this page, or ask for a page that is up to date.';
    throw new LinkError('newer', 'a link of a newer kind than this page reads', mend);
  }
  return roundIn(textIn(link.slice(headLength, of - sealLength)));
}

/** Bytes unpacked at a time; deflate can make a thousand of each, so a bomb is stopped early. */
const slice = 64;

function textIn(body: string): string {
  const pieces: Uint8Array[] = [];
  let size = 0;
  const inflate = new Inflate({ dictionary: dictionaryBytes }, (piece) => {
    pieces.push(piece);
    size += piece.length;
  });
  const bytes = bytesOf(body);
  try {
    for (let at = 0; at < bytes.length && size <= mostText; at += slice) {
      inflate.push(bytes.subarray(at, at + slice), at + slice >= bytes.length);
    }
    if (size > mostText) throw new Error('too much');
    const all = new Uint8Array(size);
    let at = 0;
    for (const piece of pieces) {
      all.set(piece, at);
      at += piece.length;
    }
    return new TextDecoder('utf-8', { fatal: true }).decode(all);
  } catch {
    throw new LinkError('unreadable', 'a link that unpacks to nothing of use', again);
  }
}
