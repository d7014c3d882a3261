/**
 * How is a text made short? Raw deflate [RFC1951] with the frozen dictionary of version 1, then
 * characters of six bits. Whatever deflate writes a text, every inflate reads it, so a better
 * packer may come later without a new version.
 *
 * In: a text. Out: characters; and back. Limits: 256 kB of text, told before more is unpacked.
 */
import { deflateSync, inflateSync } from 'fflate';
import { InputError } from '../../ground/problem.ts';
import { bytesOf, charactersOf } from './base64.ts';
import { fault } from './fault.ts';
import { dictionary } from './words/first.ts';

/** Most bytes that a body may unpack to: many times the longest round of use. Our judgement. */
export const mostText = 262_144;
/** Most characters of a body. */
export const longestBody = 65_536;

const known = new TextEncoder().encode(dictionary);
const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
/** Where links are unpacked: what would go beyond is counted, never kept, so no bomb fills memory. */
const room = new Uint8Array(mostText + 1);

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
  const bytes = bytesOf(body);
  let text: string | undefined;
  let isWhole = false;
  try {
    const piece = inflated(bytes);
    if (piece.length <= mostText) text = utf8.decode(piece);
    isWhole = text !== undefined && isAll(body, bytes);
  } catch {
    throw fault('unreadable', 'a whole link that does not unpack');
  }
  if (text === undefined) throw fault('unreadable', 'a link that unpacks to far too much');
  if (!isWhole) throw fault('unreadable', 'a link with more behind the end of its round');
  return text;
}

/** What is unpacked, till the next is; longer than the most where there would be more. */
const inflated = (bytes: Uint8Array): Uint8Array =>
  inflateSync(bytes, { dictionary: known, out: room });

/** Whether a body that unpacks is needed to its last character: nothing rides behind its end. */
function isAll(body: string, bytes: Uint8Array): boolean {
  if (charactersOf(bytes) !== body) return false;
  try {
    inflated(bytes.subarray(0, -1));
    return false;
  } catch {
    return true;
  }
}
