/**
 * `testspoon rank FILE`: every combination of the open parts, best first, with proof or with what no
 * combination can beat.
 *
 * As JSON: `{ light, today, combinations (text, it may be long), isProved, atMost, gap, rows, rules }`;
 * a row has `place, choices (part → rack/finish), overall, scores, toBuy (bottle ids), aheadOfNext`
 * (of 100 draws; null for the last) and `why`; a rule has `rule` (its place in the build, from 1),
 * `kind` (`costs`, `free`, `frees`, `stuck`, `unsure`), `least` and `most` points, and `without`, the
 * best overall without it.
 */
import type { Command } from 'commander';
import { checkAgainstCar } from '../../build/coverage.ts';
import { parseBuild } from '../../build/file.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { InputError } from '../../ground/problem.ts';
import { whyAbove } from '../../ranking/answer/why.ts';
import { gapOf } from '../../ranking/answer/words.ts';
import { withHeld } from '../../ranking/held.ts';
import type { Wanted } from '../../ranking/ranking.ts';
import { dateFrom, lightOption, numberFrom, printJson, printLines, today } from '../argument.ts';
import { type Answered, rankingLines } from '../draw/ranking.ts';
import { screenOf } from '../draw/screen.ts';
import { sightOf } from '../shelf.ts';
import { sourceName, textFrom } from '../source.ts';
import { heldFrom, moreOpen, type Widening } from './asked.ts';
import { searched } from './search.ts';

interface Asked extends Widening {
  readonly top: number;
  readonly different?: true;
  readonly lock?: readonly string[];
  readonly limitSeconds?: number;
  readonly light?: LightId;
  readonly distance?: number;
  readonly today?: string;
  readonly json?: true;
}

const longestSeconds = 86_400;
/** What shells take for a program that Ctrl-C has ended. */
const interruptedExit = 130;

/** Adds the command. */
export function addRank(program: Command): void {
  program
    .command('rank')
    .summary('every combination of the open parts, best first')
    .description(
      'Ranks every combination of the open parts that keeps the rules: the best rows in order, ' +
        'proved; why each beats the next, what has to be bought, and what each rule costs. ' +
        'Stopped by Ctrl-C or --limit-seconds it shows the best found and what no combination can beat.',
    )
    .argument('<file>', 'build file, or - for standard input')
    .option('--top <rows>', 'rows to show', numberFrom(1, 1000, '', true), 20)
    .option('--different', 'only rows that differ plainly from every row above, in some open part')
    .option(
      '--limit-seconds <s>',
      'stop searching after so long',
      numberFrom(0, longestSeconds, ' s'),
    )
    .option(
      '--lock <part=finish>',
      'hold an open part at one of its candidates; may be repeated',
      gather,
    )
    .option('--anything-on-hand', 'let open parts wear anything that nothing has to be bought for')
    .option(
      '--from <rack>',
      'let open parts wear every finish of this rack; may be repeated',
      gather,
    )
    .addOption(lightOption('judge under this light instead of the build’s own'))
    .option('--distance <mm>', 'judge from this distance, mm', numberFrom(50, 20_000, ' mm'))
    .option('--today <date>', 'count readiness from this date instead of today', dateFrom)
    .option('--json', 'print the ranking as JSON')
    .action(rank);
}

/** Takes one more of an option that may be repeated; a list after it would swallow the file. */
const gather = (one: string, before: readonly string[] = []): string[] => [...before, one];

async function rank(file: string, asked: Asked): Promise<void> {
  const source = sourceName(file);
  const read = parseBuild(await textFrom(file), source);
  const sight = sightOf(read.car, source);
  const strangers = checkAgainstCar(read, sight);
  if (strangers.length > 0) throw new InputError(strangers, source);
  const opened = moreOpen(read, asked);
  const build = withHeld(opened, heldFrom(opened, asked.lock ?? []));
  const wanted: Wanted = {
    count: asked.top,
    isDifferent: asked.different === true,
    today: asked.today ?? today(),
    light: asked.light,
    distanceMm: asked.distance,
  };
  const { found, isInterrupted } = await searched({
    build,
    sight,
    wanted,
    limitSeconds: asked.limitSeconds,
  });
  const answered: Answered = { build, wanted, ...found };
  if (asked.json) printJson(jsonFrom(answered));
  else printLines(rankingLines(screenOf(process.stdout), sight.name, answered));
  if (isInterrupted) process.exitCode = interruptedExit;
}

/** The ranking in its published shape. */
const jsonFrom = ({ build, wanted, ranking, sureness, costs }: Answered) => ({
  light: wanted.light ?? build.viewing.light,
  today: wanted.today,
  combinations: String(ranking.combinations),
  isProved: ranking.isProved,
  atMost: ranking.atMost,
  gap: gapOf(ranking),
  rows: ranking.rows.map((row, at) => {
    const next = ranking.rows[at + 1];
    return {
      place: at + 1,
      choices: row.choices,
      overall: row.sheet.overall,
      scores: row.sheet.scores,
      toBuy: row.toBuy.map(({ bottle }) => bottle.id),
      aheadOfNext: sureness.rows[at]?.aheadOfNext ?? null,
      why: next === undefined ? null : whyAbove(build, row, next).sentence,
    };
  }),
  rules: (costs?.rules ?? []).map(({ rule, kind, least, most, without }) => ({
    rule: rule + 1,
    kind,
    least: least ?? null,
    most: most ?? null,
    without: without.row?.sheet.overall ?? null,
  })),
});
