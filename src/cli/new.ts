/**
 * `testspoon new FILE`: writes a build to start from, or the demo. A file that is there already is
 * kept unless `--force` says otherwise.
 */
import { writeFile } from 'node:fs/promises';
import type { Command } from 'commander';
import type { Build } from '../build/build.ts';
import { parseBuild, textOf } from '../build/file.ts';
import { buildFrom } from '../build/read/document.ts';
import { startingBuild } from '../build/start.ts';
import { InputError, type Problem } from '../ground/problem.ts';
import { numberFrom, printLines } from './argument.ts';
import { harmless } from './draw/screen.ts';
import { carIds, demoText, sightOf } from './shelf.ts';

/** The commonest scale of car kits; common practice, no source. */
const usualScale = 24;

interface Asked {
  readonly name?: string;
  readonly scale?: number;
  readonly force?: true;
  readonly demo?: true;
}

/** Adds the command. */
export function addNew(program: Command): void {
  program
    .command('new')
    .summary('write a build to start from')
    .description(
      'Writes a build to start from: every part of the car with a plain finish, ' +
        'one of them open, and alternatives to compare at once.',
    )
    .argument('<file>', 'where to write it')
    .option('--name <name>', 'name of the build')
    .option('--scale <number>', 'scale of the model, 24 for 1:24', numberFrom(1, 200, ''))
    .option('--demo', 'write the demo build instead')
    .option('--force', 'write over a file that is there already')
    .action(create);
}

async function create(file: string, { name, scale, force, demo }: Asked): Promise<void> {
  const build = demo === true ? demoBuild(name, scale) : freshBuild(name, scale);
  await write(file, build, force === true);
  printLines([
    `Wrote ${harmless(file)}: ${harmless(build.name)}, 1:${build.scale}.`,
    `Compare its alternatives with: testspoon score ${harmless(file)}`,
  ]);
}

function freshBuild(name = 'New build', scale = usualScale): Build {
  const car = carIds[0] ?? '';
  return startingBuild({ car, name, scale }, sightOf(car, 'new'));
}

function demoBuild(name?: string, scale?: number): Build {
  const demo = parseBuild(demoText, 'the demo');
  return buildFrom({ ...demo, name: name ?? demo.name, scale: scale ?? demo.scale }, 'the demo');
}

async function write(file: string, build: Build, isForced: boolean): Promise<void> {
  try {
    await writeFile(file, textOf(build), { flag: isForced ? 'w' : 'wx' });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new InputError([code === 'EEXIST' ? taken : unwritable(message)], file);
  }
}

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
