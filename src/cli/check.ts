/**
 * `testspoon check FILE`: is this one of our files, and is it sound? What it is, is read from its
 * content, never from its name.
 */
import type { Command } from 'commander';
import { type Build, isOpen } from '../build/build.ts';
import { checkAgainstCar, uncoveredParts } from '../build/coverage.ts';
import { parseBuild } from '../build/file.ts';
import { fittedBuild } from '../build/fitted.ts';
import type { SightTable } from '../car/table.ts';
import { parseJson } from '../finish/parse.ts';
import type { Rack } from '../finish/rack/rack.ts';
import { InputError, shown } from '../ground/problem.ts';
import { printLines } from './argument.ts';
import { told } from './draw/progress.ts';
import { harmless, screenOf } from './draw/screen.ts';
import { hanging } from './draw/table.ts';
import { isJson, rackFrom } from './rack.ts';
import { sightFrom, sightOf } from './shelf.ts';
import { sourceName, textFrom } from './source.ts';

/** Adds the command. */
export function addCheck(program: Command): void {
  program
    .command('check')
    .summary('validate a build, rack or sight table')
    .description(
      'Validates a build, a rack (JSON, or a table as CSV) or a sight table, and tells everything that is ' +
        'wrong with it. What kind of file it is, is read from its content.',
    )
    .argument('<file>', 'the file, or - for standard input')
    .action(check);
}

async function check(file: string): Promise<void> {
  const text = await textFrom(file);
  const sentences = await told('Checking', () => findingsOf(text, file));
  const screen = screenOf(process.stdout);
  printLines(sentences.flatMap((sentence) => hanging(screen, '', 0, harmless(sentence))));
}

/** What a sound file holds, in sentences. Throws `InputError` where it is not sound. */
function findingsOf(text: string, file: string): string[] {
  const source = sourceName(file);
  if (!isJson(text)) return rackFindings(text, file);
  const format = formatOf(parseJson(text, source));
  switch (format) {
    case 'testspoon-build':
      return buildFindings(parseBuild(text, source), source);
    case 'testspoon-rack':
      return rackFindings(text, file);
    case 'testspoon-sight':
      return sightFindings(sightFrom(text, source), source);
    default:
      throw new InputError(
        [
          {
            place: 'format',
            found: shown(format),
            expected: 'testspoon-build, testspoon-rack or testspoon-sight',
            mend: 'Check that this is the file you meant; our files name their format first.',
          },
        ],
        source,
      );
  }
}

const formatOf = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined;

function buildFindings(build: Build, source: string): string[] {
  const sight = sightOf(build.car, source);
  const strangers = checkAgainstCar(build, sight);
  if (strangers.length > 0) throw new InputError(strangers, source);
  const fitted = fittedBuild(build).parts;
  const open = fitted.filter(isOpen).length;
  const absent = build.parts.filter((part) => part.absent).map(({ name }) => name);
  const bare = uncoveredParts(build, sight);
  return [
    `${source} is a sound build, ${build.name}: ${counted(fitted.length, 'part')}, ${open} of ` +
      `them open; ${counted(build.finishes.length, 'finish', 'finishes')}, ` +
      `${counted(build.rules.length, 'rule')}, ${counted(build.alternatives.length, 'alternative')}.`,
    ...(absent.length === 0 ? [] : [`Not on this model, and not scored: ${absent.join(', ')}.`]),
    ...(bare.length === 0
      ? []
      : [`Parts of the car that it leaves out, and that are not scored: ${bare.join(', ')}.`]),
  ];
}

function rackFindings(text: string, file: string): string[] {
  const source = sourceName(file);
  const { rack, problems, granted } = rackFrom(text, file);
  if (problems.length > 0) throw new InputError(problems, source);
  return [
    `${source} is a sound rack, ${rack.name}: ${rackCount(rack)}.`,
    ...(granted.length === 0 ? [] : ['What is taken for granted where it is brought in:']),
    ...granted,
  ];
}

function rackCount({ finishes }: Rack): string {
  const effects = new Map<string, number>();
  for (const { effect } of finishes) effects.set(effect, (effects.get(effect) ?? 0) + 1);
  const list = [...effects].map(([effect, count]) => `${count} ${effect}`).join(', ');
  return `${counted(finishes.length, 'finish', 'finishes')}${list === '' ? '' : ` (${list})`}`;
}

function sightFindings(sight: SightTable, source: string): string[] {
  const ids = new Set(sight.parts.map(({ id }) => id));
  const strangers = sight.borders.flatMap(({ a, b }, at) =>
    [a, b]
      .filter((id) => !ids.has(id))
      .map((id) => ({
        place: `borders › ${at + 1}`,
        found: shown(id),
        expected: 'the id of a part of this table',
        mend: 'Measure the car again; a sight table is never typed by hand.',
      })),
  );
  if (strangers.length > 0) throw new InputError(strangers, source);
  return [
    `${source} is a sound sight table, ${sight.name}: ${counted(sight.parts.length, 'part')} seen ` +
      `in ${counted(sight.looks.length, 'look')}, ${counted(sight.borders.length, 'border')}.`,
  ];
}

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
