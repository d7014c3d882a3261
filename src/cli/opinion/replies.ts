/**
 * `testspoon replies LINK [FILE]`: what did viewers answer? Reads every reply to a round out of a
 * pasted thread, counts letters and parts, and tells what is not counted and why. A name is no part
 * of a reply: one viewer who answers twice counts twice here.
 */
import type { Command } from 'commander';
import { InputError, problemSentence } from '../../ground/problem.ts';
import { roundFrom } from '../../opinion/link/link.ts';
import { markOf } from '../../opinion/mark.ts';
import { problemOf } from '../../opinion/reply/fault.ts';
import { type Found, isCounted, repliesIn } from '../../opinion/reply/read.ts';
import { lettersIn, type Round } from '../../opinion/round.ts';
import { printJson, printLines } from '../argument.ts';
import { countsOf, repliesLines } from '../draw/replies.ts';
import { screenOf } from '../draw/screen.ts';
import { sourceName, textFrom } from '../source.ts';

/** Adds the command. */
export function addReplies(program: Command): void {
  program
    .command('replies')
    .summary('count what viewers answered')
    .description(
      'Reads every reply to a round out of text pasted from wherever viewers answered, counts ' +
        'letters and parts, and tells what is not counted and why.',
    )
    .argument('<link>', 'the link of the round, or its part behind #')
    .argument('[file]', 'text with the replies, or - for standard input', '-')
    .option('--json', 'print the replies and counts as JSON')
    .action(replies);
}

async function replies(link: string, file: string, { json }: { json?: true }): Promise<void> {
  const round = roundFrom(link);
  const found = repliesIn(await textFrom(file), round);
  if (found.length === 0) throw new InputError([nothingFound(round)], sourceName(file));
  if (json) printJson(jsonFrom(round, found));
  else printLines(repliesLines(screenOf(process.stdout), round, found));
}

const nothingFound = (round: Round) => ({
  place: '',
  found: 'no reply',
  expected: `codes in square brackets, such as [${markOf(round)}-A-…]`,
  mend: 'Paste the comments as they stand, with the codes at their ends.',
});

const jsonFrom = (round: Round, found: readonly Found[]) => ({
  mark: markOf(round),
  build: round.build.name,
  letters: lettersIn(round),
  asks: round.asks,
  ...countsOf(round, found),
  replies: found.filter(isCounted).map(({ line, code, answer, after, isQuoted, isOpened }) => ({
    line,
    code,
    ...answer,
    after,
    isQuoted,
    isOpened,
  })),
  setAside: found.flatMap((one) =>
    isCounted(one)
      ? []
      : [
          {
            line: one.line,
            code: one.code,
            fault: one.fault,
            words: one.words,
            sentence: problemSentence(problemOf(one, round)),
          },
        ],
  ),
});
