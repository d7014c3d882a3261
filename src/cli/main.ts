/**
 * `testspoon`: score, rank, see, check and start builds, ask viewers and count what they answered, from a
 * terminal.
 * Exit status 0 done, 1 the input is wrong, 2 the command line is, 130 stopped by Ctrl-C.
 */
import { Command, CommanderError } from 'commander';
import { version } from '../../package.json';
import { InputError } from '../ground/problem.ts';
import { addCheck } from './check.ts';
import { refusalLines } from './draw/refusal.ts';
import { screenOf } from './draw/screen.ts';
import { addNew } from './new.ts';
import { addLink } from './opinion/link.ts';
import { addOpen } from './opinion/open.ts';
import { addReplies } from './opinion/replies.ts';
import { addRank } from './rank/rank.ts';
import { answeredAsThread } from './rank/search.ts';
import { addScore } from './score.ts';
import { addSee } from './see.ts';

const exit = { done: 0, input: 1, usage: 2 } as const;

function program(): Command {
  const command = new Command('testspoon')
    .description('Settles the colour and finish of a scale-model car before the paint goes on.')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [COMMAND]', 'print help on a command')
    .showHelpAfterError('“testspoon help” lists the commands.')
    .exitOverride();
  for (const add of [addScore, addRank, addSee, addCheck, addNew, addLink, addOpen, addReplies])
    add(command);
  return command;
}

async function run(): Promise<number> {
  try {
    await program().parseAsync();
    return exit.done;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exit.done : exit.usage;
    if (!(error instanceof InputError)) throw error;
    const lines = refusalLines(screenOf(process.stderr), error);
    process.stderr.write(`${lines.join('\n')}\n`);
    return exit.input;
  }
}

// A reader that has seen enough, such as a pager, closes the pipe; that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

// The search of a ranking is this program again, in a thread.
if (!answeredAsThread()) {
  const status = await run();
  // A ranking that was interrupted has set its own.
  if (status !== exit.done) process.exitCode = status;
}
