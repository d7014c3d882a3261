/**
 * `testspoon link FILE`: the address to ask viewers by. It alone goes to standard output, so that it
 * can be piped; what it asks, how long it is and what costs most stand on standard error.
 */
import type { Command } from 'commander';
import { checkAgainstCar } from '../../build/coverage.ts';
import { openBuild } from '../../build/file.ts';
import { InputError } from '../../ground/problem.ts';
import { costsOf } from '../../opinion/link/cost.ts';
import { addressOf, linkOf } from '../../opinion/link/link.ts';
import { markOf } from '../../opinion/mark.ts';
import { lettersIn, roundOf } from '../../opinion/round.ts';
import { printJson, printLines } from '../argument.ts';
import { flagFor, type Linked, linkLines } from '../draw/link.ts';
import { screenOf } from '../draw/screen.ts';
import { sightOf } from '../shelf.ts';
import { sourceName, textFrom } from '../source.ts';
import { askingFrom, baseFrom, lettersFrom } from './asking.ts';

interface Asked {
  readonly base?: string;
  readonly ask?: readonly string[];
  readonly letters?: readonly string[];
  readonly story?: true;
  readonly spectra: boolean;
  readonly finishNames: boolean;
  readonly json?: true;
}

/** Adds the command. */
export function addLink(program: Command): void {
  program
    .command('link')
    .summary('make the link to ask viewers by')
    .description(
      'Makes the link that asks viewers which alternative they would choose. Everything they need ' +
        'is in it; it opens wherever the page stands.',
    )
    .argument('<file>', 'build file, or - for standard input')
    .option('--base <url>', 'address of the folder where the page’s files stand', baseFrom)
    .option('--ask <part...>', 'parts to ask about one by one, by name or id; after the file')
    .option('--letters <letters>', 'ask about these alternatives only, such as A,C', lettersFrom)
    .option('--story', 'the story of the build goes along')
    .option('--no-spectra', 'tell measured spectra as colours by daylight')
    .option('--no-finish-names', 'call finishes by their effect only')
    .option('--json', 'print the link, its length and what costs most as JSON')
    .action(link);
}

async function link(file: string, asked: Asked): Promise<void> {
  const source = sourceName(file);
  const build = openBuild(await textFrom(file), source);
  const strangers = checkAgainstCar(build, sightOf(build.car, source));
  if (strangers.length > 0) throw new InputError(strangers, source);
  const asking = {
    ...askingFrom(build, { ask: asked.ask ?? [], letters: asked.letters }),
    withStory: asked.story === true,
    withSpectra: asked.spectra,
    withFinishNames: asked.finishNames,
  };
  const round = roundOf(build, asking);
  const fragment = linkOf(round);
  const address = asked.base === undefined ? undefined : addressOf(asked.base, round);
  const linked: Linked = {
    build,
    round,
    address,
    characters: (address ?? fragment).length,
    costs: costsOf(build, asking),
    isStoryMissing: asked.story === true && round.build.story === undefined,
  };
  if (asked.json) printJson({ ...jsonFrom(linked), link: fragment });
  else {
    printLines([address ?? fragment]);
    process.stderr.write(`${linkLines(screenOf(process.stderr), linked).join('\n')}\n`);
  }
}

const jsonFrom = ({ build, round, address, characters, costs }: Linked) => ({
  ...(address !== undefined && { address }),
  characters,
  mark: markOf(round),
  letters: lettersIn(round),
  asks: round.asks,
  costs: costs.map((cost) => ({
    kind: cost.kind,
    what: cost.what,
    characters: cost.characters,
    loses: cost.loses,
    to: flagFor(cost, build),
  })),
});
