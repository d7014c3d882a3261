/**
 * `testspoon score FILE`: compares the alternatives of a build, with reasons.
 */
import type { Command } from 'commander';
import { checkAgainstCar } from '../build/coverage.ts';
import { parseBuild } from '../build/file.ts';
import type { LightId } from '../colour/illuminant.ts';
import { InputError } from '../ground/problem.ts';
import type { Comparison } from '../score/comparison.ts';
import type { Quantity } from '../score/evidence.ts';
import { sentenceOf } from '../score/sentence.ts';
import { compareAlternatives } from '../score/sheet.ts';
import { dateFrom, lightOption, numberFrom, printJson, printLines, today } from './argument.ts';
import { comparisonLines } from './draw/comparison.ts';
import { told } from './draw/progress.ts';
import { screenOf } from './draw/screen.ts';
import { sightOf } from './shelf.ts';
import { sourceName, textFrom } from './source.ts';

interface Asked {
  readonly light?: LightId;
  readonly distance?: number;
  readonly today?: string;
  readonly json?: true;
}

/** Adds the command. */
export function addScore(program: Command): void {
  program
    .command('score')
    .summary('compare the alternatives of a build, with reasons')
    .description(
      'Compares the alternatives of a build: six scores and an overall, reasons worst first, ' +
        'broken rules, and how sure the order is given how uncertain the colours are.',
    )
    .argument('<file>', 'build file, or - for standard input')
    .addOption(lightOption('judge under this light instead of the build’s own'))
    .option('--distance <mm>', 'judge from this distance, mm', numberFrom(50, 20_000, ' mm'))
    .option('--today <date>', 'count readiness from this date instead of today', dateFrom)
    .option('--json', 'print the comparison as JSON')
    .action(score);
}

async function score(file: string, asked: Asked): Promise<void> {
  const source = sourceName(file);
  const build = parseBuild(await textFrom(file), source);
  const sight = sightOf(build.car, source);
  const strangers = checkAgainstCar(build, sight);
  if (strangers.length > 0) throw new InputError(strangers, source);
  const comparison = await told('Scoring the alternatives', () =>
    compareAlternatives(build, sight, {
      today: asked.today ?? today(),
      light: asked.light,
      distanceMm: asked.distance,
    }),
  );
  if (asked.json) printJson(jsonFrom(comparison));
  else printLines(comparisonLines(screenOf(process.stdout), build, sight.name, comparison));
}

/** The comparison in its published shape. */
const jsonFrom = ({ light, distanceMm, today: day, alternatives, closeness }: Comparison) => ({
  light,
  distanceMm,
  today: day,
  alternatives: alternatives.map((sheet) => ({
    id: sheet.id,
    letter: sheet.letter,
    name: sheet.name,
    overall: sheet.overall,
    pareto: sheet.pareto,
    broken: sheet.broken,
    scores: sheet.scores,
    evidence: sheet.evidence.map((evidence) => ({
      score: evidence.score,
      kind: evidence.kind,
      parts: evidence.parts,
      numbers: finiteOnly(evidence.numbers),
      sentence: sentenceOf(evidence),
    })),
  })),
  closeness,
});

/** JSON has no infinity: a bound that does not exist is left out. */
const finiteOnly = (numbers: Readonly<Record<string, Quantity>>): Record<string, Quantity> =>
  Object.fromEntries(Object.entries(numbers).filter(([, { value }]) => Number.isFinite(value)));
