/**
 * `testspoon open LINK`: what does a link ask? Told in words, however it was pasted; saved as a
 * build of one's own where asked to. A link that was cut, altered or is too new is a fault of the
 * input and says which.
 */
import type { Command } from 'commander';
import { checkAgainstCar } from '../../build/coverage.ts';
import { buildFrom } from '../../build/read/document.ts';
import { InputError } from '../../ground/problem.ts';
import { roundFrom } from '../../opinion/link/link.ts';
import { markOf } from '../../opinion/mark.ts';
import { buildOf } from '../../opinion/own.ts';
import { lettersIn, type Round } from '../../opinion/round.ts';
import { printJson, printLines } from '../argument.ts';
import { roundLines } from '../draw/round.ts';
import { screenOf } from '../draw/screen.ts';
import { saveBuild, savedWords } from '../save.ts';
import { carNameOf, sightOf } from '../shelf.ts';
import { textFrom } from '../source.ts';

interface Asked {
  readonly save?: string;
  readonly force?: true;
  readonly json?: true;
}

/** Adds the command. */
export function addOpen(program: Command): void {
  program
    .command('open')
    .summary('tell what a link asks')
    .description(
      'Tells what a link asks, and saves what it shows as a build of your own. Put the link in ' +
        'quotes, or paste the message that holds it into standard input.',
    )
    .argument('<link>', 'the link as it was pasted, or - for standard input')
    .option('--save <file>', 'write what it shows as a build')
    .option('--force', 'write over a file that is there already')
    .option('--json', 'print the round as JSON')
    .action(open);
}

async function open(link: string, { save, force, json }: Asked): Promise<void> {
  const round = roundFrom(link === '-' ? await textFrom(link) : link);
  const saved = save === undefined ? [] : await savedFrom(round, save, force === true);
  if (json) printJson({ mark: markOf(round), letters: lettersIn(round), ...round });
  else {
    const lines = roundLines(screenOf(process.stdout), round, carNameOf(round.build.car));
    printLines(saved.length === 0 ? lines : [...lines, '', ...saved]);
  }
}

/** Writes what a round shows once its car is known to have all its parts. */
async function savedFrom(round: Round, file: string, isForced: boolean): Promise<string[]> {
  const source = 'the link';
  const build = buildFrom(buildOf(round), source);
  const strangers = checkAgainstCar(build, sightOf(build.car, source));
  if (strangers.length > 0) throw new InputError(strangers, source);
  await saveBuild(file, build, isForced);
  return savedWords(file, build);
}
