/**
 * Why is a reply not counted, and what can be done about it? One word for each reason, and the
 * sentence that goes with it, the same on the page and on a terminal.
 *
 * In: a code that was set aside. Out: a `Problem` with its line, what stands there, what would count
 * and how to mend it.
 */
import { InputError, type Problem, shown } from '../../ground/problem.ts';
import { markOf } from '../mark.ts';
import type { Round } from '../round.ts';
import type { Fault as CodeFault } from './grammar.ts';

/** Why a reply is not counted. */
export type Fault =
  | CodeFault
  /** Its sentence and its code name different letters. */
  | 'contradicts itself'
  /** Quoted with ">", and the same reply stands elsewhere unquoted. */
  | 'quoted again';

/** A code that is not counted, where it stands, and why. */
interface AtFault {
  /** Line of the text, from 1. */
  readonly line: number;
  readonly code: string;
  readonly fault: Fault;
}

/** One reply that cannot be taken; `fault` is absent where there is none or more than one. */
export class ReplyError extends InputError {
  readonly fault: Fault | undefined;

  constructor(problem: Problem, fault?: Fault) {
    super([problem], 'the reply');
    this.name = 'ReplyError';
    this.fault = fault;
  }
}

/** Why a code is not counted, as everyone reports bad input. */
export function problemOf({ line, code, fault }: AtFault, round: Round): Problem {
  const { expected, mend } = said[fault];
  const expectedHere = expected.replace('MARK', markOf(round));
  return { place: `line ${line}`, found: shown(code), expected: expectedHere, mend };
}

const said: Readonly<Record<Fault, { readonly expected: string; readonly mend: string }>> = {
  'other round': {
    expected: 'a code of this round, which begins with MARK',
    mend: 'It answers another round: count it with that round’s link.',
  },
  damaged: {
    expected: 'a whole code, whose last character checks the others',
    mend: 'It was cut or mistyped: ask its writer to copy the reply again.',
  },
  newer: {
    expected: 'a code without parts that this version does not know',
    mend: 'It was written by a newer version: open it with that one.',
  },
  'not of this round': {
    expected: 'letters and parts that this round asks about',
    mend: 'Check that the link is the one the viewers got.',
  },
  'contradicts itself': {
    expected: 'the same letter in the sentence and in the code',
    mend: 'Ask its writer which of the two is meant.',
  },
  'quoted again': {
    expected: 'a reply that stands here only once',
    mend: 'It is counted where it was written; nothing needs doing.',
  },
};
