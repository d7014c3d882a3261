/**
 * `testspoon new FILE`: writes a build to start from, or the demo. A file that is there already is
 * kept unless `--force` says otherwise.
 */
import type { Command } from 'commander';
import type { Build } from '../build/build.ts';
import { parseBuild } from '../build/file.ts';
import { buildFrom } from '../build/read/document.ts';
import { startingBuild } from '../build/start.ts';
import { numberFrom, printLines } from './argument.ts';
import { saveBuild, savedWords } from './save.ts';
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
  await saveBuild(file, build, force === true);
  printLines(savedWords(file, build));
}

function freshBuild(name = 'New build', scale = usualScale): Build {
  const car = carIds[0] ?? '';
  return startingBuild({ car, name, scale }, sightOf(car, 'new'));
}

function demoBuild(name?: string, scale?: number): Build {
  const demo = parseBuild(demoText, 'the demo');
  return buildFrom({ ...demo, name: name ?? demo.name, scale: scale ?? demo.scale }, 'the demo');
}
