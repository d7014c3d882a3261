/**
 * What did viewers answer? Reads one reply, or every reply in a pasted thread, after whatever
 * channels do to text: lines joined or broken, quoting with ">", names before and buttons after,
 * entities of HTML, curly quotes, dashes for hyphens, a code retyped by hand.
 *
 * In: text and the round it is about. Out: answers with their places, and each code that is not
 * counted with why. Words belong to the code that follows them: those between the opening sentence
 * and the code; where a viewer wrote over the opening, what stands before the code up to an empty
 * line. Limits: what follows a code is shown and belongs to nobody; who wrote it is not asked here.
 */
import { type Problem, shown } from '../../ground/problem.ts';
import type { Answer } from '../answer.ts';
import { markOf } from '../mark.ts';
import type { Round } from '../round.ts';
import { type Fault, problemOf, ReplyError } from './fault.ts';
import { choiceFrom } from './grammar.ts';
import { afterOpening, namesAnother } from './opening.ts';
import { type Span, spansIn } from './scan.ts';
import { plainText, wordsFrom } from './words.ts';

interface Place {
  /** Line of the text where the code begins, from 1. */
  readonly line: number;
  /** The code as it stands there, in one line, 200 UTF-16 units at most. */
  readonly code: string;
  /** The words that belong to it, as an answer has them. */
  readonly words: string;
  /** What stands behind the code on its line, as words; whose it is, nobody can tell. */
  readonly after: string;
  /** Whether the opening was found as it was written, so that the words are surely the viewer's. */
  readonly isOpened: boolean;
  /** Whether its line was quoted with ">". */
  readonly isQuoted: boolean;
}
/** A reply that counts. */
export interface Counted extends Place {
  readonly answer: Answer;
}
/** A code that does not. */
export interface SetAside extends Place {
  readonly fault: Fault;
}
/** Whatever looked like a reply. */
export type Found = Counted | SetAside;

/** Whether a reply counts. */
export const isCounted = (found: Found): found is Counted => 'answer' in found;

/** The answer in a text with one reply. Throws `ReplyError`. */
export function readReply(text: string, round: Round): Answer {
  const found = repliesIn(text, round);
  const counted = found.filter(isCounted);
  const [first] = counted;
  if (first !== undefined && counted.length === 1) return first.answer;
  if (first !== undefined) throw new ReplyError(severalProblem(counted.length));
  const [aside] = found;
  if (aside === undefined || isCounted(aside)) throw new ReplyError(noneProblem(text));
  throw new ReplyError(problemOf(aside, round), aside.fault);
}

/** Everything in a text that looks like a reply, in order. */
export function repliesIn(text: string, round: Round): readonly Found[] {
  const thread = threadFrom(text);
  const spans = spansIn(thread.text, markOf(round));
  const found: Found[] = [];
  let from = 0;
  let line = 1;
  let counted = 0;
  for (const [at, span] of spans.entries()) {
    line += breaksIn(thread.text.slice(counted, span.start));
    counted = span.start;
    const to = spans[at + 1]?.start ?? thread.text.length;
    found.push(foundAt(span, thread, { from, to, line }, round));
    from = span.end;
  }
  return withoutEchoes(found);
}

interface Thread {
  readonly text: string;
  /** Numbers of the lines that were quoted. */
  readonly quoted: ReadonlySet<number>;
}

function threadFrom(pasted: string): Thread {
  const quoted = new Set<number>();
  const lines = plainText(pasted)
    .split(/\r\n|[\n\r\u2028\u2029]/)
    .map((line, at) => {
      if (/^\s*>/.test(line)) quoted.add(at + 1);
      return line.replace(/^[\s>]+/, '');
    });
  return { text: lines.join('\n'), quoted };
}

const breaksIn = (text: string): number => text.split('\n').length - 1;

function foundAt(
  span: Span,
  { text, quoted }: Thread,
  { from, to, line }: { readonly from: number; readonly to: number; readonly line: number },
  round: Round,
): Found {
  const choice = span.isCut ? 'damaged' : choiceFrom(span.groups, round);
  const before = text.slice(from, span.start);
  const opened = typeof choice === 'string' ? undefined : afterOpening(before, choice, round);
  const near = before.slice(before.lastIndexOf('\n\n') + 1);
  const place: Place = {
    line,
    code: text.slice(span.start, span.end).replace(/\s+/g, ' ').slice(0, 200),
    words: wordsFrom(opened ?? near),
    after: wordsFrom(/^[^\n]*/.exec(text.slice(span.end, to))?.[0] ?? '').replace(/^\p{P}+$/u, ''),
    isOpened: opened !== undefined,
    isQuoted: quoted.has(line),
  };
  if (typeof choice === 'string') return { ...place, fault: choice };
  if (opened === undefined && namesAnother(near, choice, round)) {
    return { ...place, fault: 'contradicts itself' };
  }
  return { ...place, answer: { ...choice, words: place.words } };
}

/** A reply that is only quoted counts; one that also stands unquoted counts there. */
function withoutEchoes(found: readonly Found[]): readonly Found[] {
  const keyOf = ({ words, answer }: Counted): string => JSON.stringify({ ...answer, words });
  const said = new Set(
    found
      .filter(isCounted)
      .filter((one) => !one.isQuoted)
      .map(keyOf),
  );
  return found.map((one) => {
    if (!isCounted(one) || !one.isQuoted || !said.has(keyOf(one))) return one;
    const { answer: _answer, ...place } = one;
    return { ...place, fault: 'quoted again' };
  });
}

const noneProblem = (text: string): Problem => ({
  place: '',
  found: shown(text.trim()),
  expected: 'a reply that ends in a code in square brackets',
  mend: 'Copy the whole reply, to the closing bracket.',
});
const severalProblem = (count: number): Problem => ({
  place: '',
  found: `${count} replies`,
  expected: 'one',
  mend: 'Paste one reply, or read the text as a thread.',
});
