/**
 * How is a text made short? Raw deflate [RFC1951] with the frozen dictionary of version 1, then
 * characters of six bits. Whatever deflate writes a text, every inflate reads it, so a better
 * packer may come later without a new version.
 *
 * In: a text. Out: characters; and back. Limits: 256 kB of text, told before more is unpacked.
 */
import { deflateSync, Inflate, inflateSync } from 'fflate';
import { InputError } from '../../ground/problem.ts';
import { bytesOf, charactersOf } from './base64.ts';
import { fault } from './fault.ts';
import { dictionary } from './words/first.ts';

/** Most bytes that a body may unpack to: many times the longest round of use. Our judgement. */
export const mostText = 262_144;
/** Most characters of a body. */
export const longestBody = 65_536;
/** Bytes unpacked at a time; deflate makes 1,032 of each at most, so a bomb ends within half a MB. */
const slice = 512;

const known = new TextEncoder().encode(dictionary);

/** A text packed. Throws `InputError` where it would be too long to be of use anywhere. */
export function packed(text: string): string {
  const bytes = new TextEncoder().encode(text);
  const body = charactersOf(deflateSync(bytes, { level: 9, dictionary: known }));
  if (body.length <= longestBody && bytes.length <= mostText) return body;
  const found = `${body.length} characters`;
  const expected = `at most ${longestBody}`;
  const mend = 'Ask about fewer alternatives, or leave the story and spectra out.';
  throw new InputError([{ place: '', found, expected, mend }], 'the link');
}

/** The text in a body. */
export function unpacked(body: string): string {
  if (body.length > longestBody) {
    throw fault('unreadable', `${body.length} characters, more than any round needs`);
  }
  const pieces: Uint8Array[] = [];
  let size = 0;
  let isWhole = false;
  const inflate = new Inflate({ dictionary: known }, (piece, isLast) => {
    pieces.push(piece);
    size += piece.length;
    isWhole ||= isLast;
  });
  const bytes = bytesOf(body);
  try {
    for (let at = 0; at < bytes.length && size <= mostText; at += slice) {
      inflate.push(bytes.subarray(at, at + slice), at + slice >= bytes.length);
    }
    if (size <= mostText && isWhole && isAll(body, bytes)) return textIn(pieces, size);
  } catch {
    throw fault('unreadable', 'a whole link that does not unpack');
  }
  const found =
    size > mostText
      ? 'a link that unpacks to far too much'
      : isWhole
        ? 'a link with more behind the end of its round'
        : 'a link that does not unpack to its end';
  throw fault('unreadable', found);
}

/** Whether a body that unpacks is needed to its last character: nothing rides behind its end. */
function isAll(body: string, bytes: Uint8Array): boolean {
  if (charactersOf(bytes) !== body) return false;
  try {
    inflateSync(bytes.subarray(0, -1), { dictionary: known });
    return false;
  } catch {
    return true;
  }
}

function textIn(pieces: readonly Uint8Array[], size: number): string {
  const all = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(all);
}
