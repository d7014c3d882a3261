/**
 * Text from a file or from standard input (`-`), bounded: a file over the limit is refused by its
 * size before a byte is read, a stream as soon as it grows past it.
 */
import { createReadStream, type Stats } from 'node:fs';
import { stat } from 'node:fs/promises';
import { mostBytes } from '../finish/parse.ts';
import { InputError, type Problem } from '../ground/problem.ts';

/** How a source is called in messages. */
export const sourceName = (path: string): string => (path === '-' ? 'standard input' : path);

/** The text at `path`. Throws `InputError` where there is none, too much, or no UTF-8. */
export async function textFrom(path: string): Promise<string> {
  const source = sourceName(path);
  const stream = path === '-' ? process.stdin : createReadStream(await readable(path));
  const chunks: Buffer[] = [];
  let size = 0;
  try {
    for await (const chunk of stream) {
      chunks.push(chunk as Buffer);
      size += (chunk as Buffer).length;
      if (size > mostBytes) throw new InputError([tooLarge(size)], source);
    }
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
  } catch (error) {
    if (error instanceof InputError) throw error;
    const isCoding = error instanceof TypeError;
    throw new InputError([isCoding ? notText : unreadable((error as Error).message)], source);
  }
}

/** `path` once it is known to be a file of bearable size. */
async function readable(path: string): Promise<string> {
  let stats: Stats;
  try {
    stats = await stat(path);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const isMissing = code === 'ENOENT' || code === 'ENOTDIR';
    throw new InputError([isMissing ? missing : unreadable(message)], path);
  }
  if (stats.isDirectory()) throw new InputError([isFolder], path);
  if (stats.size > mostBytes) throw new InputError([tooLarge(stats.size)], path);
  return path;
}

const missing: Problem = {
  place: '',
  found: 'no such file',
  expected: 'a file',
  mend: 'Check the path. “testspoon new FILE” writes a build to start from.',
};
const isFolder: Problem = {
  place: '',
  found: 'a folder',
  expected: 'a file',
  mend: 'Name a file inside it.',
};
const notText: Problem = {
  place: '',
  found: 'bytes that are not UTF-8 text',
  expected: 'JSON or CSV text in UTF-8',
  mend: 'Check that this is the file you meant, or save it again as UTF-8.',
};
const tooLarge = (size: number): Problem => ({
  place: '',
  found: `${(size / 1e6).toFixed(0)} MB or more`,
  expected: `at most ${mostBytes / 1e6} MB`,
  mend: 'Check that this is the file you meant, or split it.',
});
const unreadable = (message: string): Problem => ({
  place: '',
  found: message,
  expected: 'a file that may be read',
  mend: 'Check who may read it.',
});
