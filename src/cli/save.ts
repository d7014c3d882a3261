/** A build written as a file. One that is there already is kept unless the builder says otherwise. */
import { writeFile } from 'node:fs/promises';
import type { Build } from '../build/build.ts';
import { textOf } from '../build/file.ts';
import { InputError, type Problem } from '../ground/problem.ts';
import { harmless } from './draw/screen.ts';

/** Writes the file. Throws `InputError` where it is there already, or may not be written. */
export async function saveBuild(file: string, build: Build, isForced: boolean): Promise<void> {
  try {
    await writeFile(file, textOf(build), { flag: isForced ? 'w' : 'wx' });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new InputError([code === 'EEXIST' ? taken : unwritable(message)], file);
  }
}

/** What is said once it is written. */
export const savedWords = (file: string, { name, scale }: Build): string[] => [
  `Wrote ${harmless(file)}: ${harmless(name)}, 1:${scale}.`,
  `Compare its alternatives with: testspoon score ${harmless(file)}`,
];

const taken: Problem = {
  place: '',
  found: 'a file of this name already',
  expected: 'a new name',
  mend: 'Choose another name, or write over it with --force.',
};
const unwritable = (message: string): Problem => ({
  place: '',
  found: message,
  expected: 'a place where a file may be written',
  mend: 'Check the path and who may write there.',
});
