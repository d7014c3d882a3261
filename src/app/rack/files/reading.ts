/**
 * What racks does a file or a pasted text hold? A rack of ours as JSON, or a table in anyone's words.
 * Nothing here throws: what could not be read comes back as problems without a rack.
 */
import { mostBytes, parseJson } from '../../../finish/parse.ts';
import { rackFromText } from '../../../finish/rack/paste.ts';
import { parseRack, type Rack } from '../../../finish/rack/rack.ts';
import { nameFromFile } from '../../../finish/text/name.ts';
import { idFrom } from '../../../ground/id.ts';
import { InputError, type Problem } from '../../../ground/problem.ts';

/** What came of one file or one pasted text. */
export interface Reading {
  /** What it is called: a file name, or that it was pasted. */
  readonly source: string;
  /** Its good finishes; undefined where nothing could be read. */
  readonly rack: Rack | undefined;
  /** What is wrong: with the rows that stay out, or with the whole. */
  readonly problems: readonly Problem[];
  /** What was taken for granted, in sentences. */
  readonly granted: readonly string[];
}

const isJson = (text: string): boolean => /^\ufeff?\s*[[{]/.test(text);

/** The rack in a text; `name` is the file's, or what a rack pasted should be called. */
export function readRackText(text: string, name: string): Reading {
  const title = nameFromFile(name, 'My shelf');
  const called = { id: idFrom(title, 'rack'), name: title };
  try {
    if (!isJson(text)) return { source: name, ...rackFromText(text, called) };
    refuseBuild(text, name);
    return { source: name, rack: parseRack(text, name), problems: [], granted: [] };
  } catch (error) {
    return { source: name, rack: undefined, problems: problemsIn(error), granted: [] };
  }
}

/** The rack in a file: UTF-8, UTF-16 with its mark, else what spreadsheets on Windows write. */
export async function readRackFile(file: File): Promise<Reading> {
  const unread = (problem: Problem): Reading => ({
    source: file.name,
    rack: undefined,
    problems: [problem],
    granted: [],
  });
  if (file.size > mostBytes) return unread(tooLarge(file.size));
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch (error) {
    return unread(unreadable(error));
  }
  const isUtf16 =
    (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (isUtf16) {
    const coding = bytes[0] === 0xff ? 'utf-16le' : 'utf-16be';
    return readRackText(new TextDecoder(coding).decode(bytes), file.name);
  }
  try {
    return readRackText(new TextDecoder('utf-8', { fatal: true }).decode(bytes), file.name);
  } catch {
    const reading = readRackText(new TextDecoder('windows-1252').decode(bytes), file.name);
    return { ...reading, granted: [notUtf8, ...reading.granted] };
  }
}

function refuseBuild(text: string, source: string): void {
  const value = parseJson(text, source);
  const format = (value as { format?: unknown } | null)?.format;
  if (format !== 'testspoon-build') return;
  throw new InputError([aBuild], source);
}

const problemsIn = (error: unknown): readonly Problem[] =>
  error instanceof InputError ? error.problems : [unreadable(error)];

const notUtf8 =
  'The file is not UTF-8; it was read as Windows writes text: look at accented letters.';
const aBuild: Problem = {
  place: '',
  found: 'a build',
  expected: 'a rack',
  mend: 'Open it with “Open…” at the top of the page.',
};
const tooLarge = (size: number): Problem => ({
  place: '',
  found: `${Math.ceil(size / 1e6)} MB`,
  expected: `at most ${mostBytes / 1e6} MB`,
  mend: 'Check that this is the file you meant, or split it.',
});
const unreadable = (error: unknown): Problem => ({
  place: '',
  found: error instanceof Error ? error.message : 'an unknown fault',
  expected: 'a file that can be read',
  mend: 'Try again.',
});
