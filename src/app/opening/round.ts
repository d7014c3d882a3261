/**
 * How does a round come onto the bench? As a build of one's own: the alternatives that were asked
 * about, in their order, named by what they wear. From a viewer's page it comes with the letter
 * that was chosen there, from a paste or a drop without. It is opened as a file is: kept like one,
 * one undo away from what was open, and refused whole where anything is wrong.
 */
import { letterOf } from '../../build/build.ts';
import { roundFrom } from '../../opinion/link/link.ts';
import { buildOf } from '../../opinion/own.ts';
import { lettersIn, type Round } from '../../opinion/round.ts';
import { goTo } from '../area.ts';
import { sayDone } from '../pieces/said.ts';
import { openWhenRead } from './incoming.ts';
import { type FreshWork, workFromKept } from './start.ts';

const source = 'The link';
/** What a viewer's page puts before a link, `0` where nothing was chosen: `B-`. */
const chosenMark = /^([A-Z0])-/;

/** What is said once it lies there: which was chosen, and which letter that is here. */
export function openedWords(round: Round, chosen: string | undefined): string {
  const name = round.build.name;
  const at = chosen === undefined ? -1 : lettersIn(round).indexOf(chosen);
  if (at < 0) return `${name} lies on the bench, as a build of your own.`;
  const here = letterOf(at);
  const choice =
    here === chosen ? `You chose ${here}.` : `You chose ${chosen}, which is ${here} here.`;
  return `${name} lies on the bench, as a build of your own. ${choice}`;
}

const workOf = (round: Round): Promise<FreshWork> => workFromKept(buildOf(round), source);

/** Opens what follows `#start-` in an address: `B-` and a link. */
export async function bringStart(text: string): Promise<void> {
  const [mark = '', letter] = chosenMark.exec(text) ?? [];
  await openRound(() => roundFrom(text.slice(mark.length)), letter === '0' ? undefined : letter);
}

/** An address that can only be one of ours, whether or not its link is whole. */
const oursOnly = /round\.html\s*#|#start-[A-Z0]-/;
/** A link alone, without the address before it. */
const bareLink = /^\W*1[\w-]{30,}\W*$/;
/** Longer texts are no message. */
const longestMessage = 100_000;

/**
 * Opens a link that was pasted or dropped, alone or within a message. What is surely meant as one
 * and does not open is refused; any other text is left alone.
 */
export async function bringLink(text: string): Promise<void> {
  if (text.length > longestMessage) return;
  const letter = /#start-([A-Z])-/.exec(text)?.[1];
  const opened = wayTo(text);
  const isMeant = oursOnly.test(text) || bareLink.test(text);
  if (opened !== undefined) await openRound(opened, letter);
  else if (isMeant) await openRound(() => roundFrom(text), undefined);
}

/** A way to the round of a text; undefined where it leads to none. */
function wayTo(text: string): (() => Round) | undefined {
  try {
    const round = roundFrom(text);
    return () => round;
  } catch {
    return undefined;
  }
}

async function openRound(read: () => Round, chosen: string | undefined): Promise<void> {
  let words = '';
  const work = async (): Promise<FreshWork> => {
    const round = read();
    words = openedWords(round, chosen);
    return workOf(round);
  };
  if (!(await openWhenRead(source, work()))) return;
  goTo('bench');
  sayDone(words);
}
