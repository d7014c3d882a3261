/**
 * How far has a new build come on its way to a comparison? Three questions, each answered by what
 * the build says; nothing is stored for it.
 */
import { assignmentOf, type Build, isOpen } from '../../build/build.ts';
import { fittedBuild } from '../../build/fitted.ts';
import { listed } from '../../build/rule.ts';

export interface Step {
  readonly question: string;
  /** What the build answers so far; undefined while it says nothing. */
  readonly answer: string | undefined;
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** Names, or of many only how many. */
const shortly = (names: readonly string[]): string =>
  names.length > 3 ? counted(names.length, 'part') : listed(names);

/** The three steps in order: painted already, still open, alternatives that differ. */
export function stepsOf(build: Build): readonly [Step, Step, Step] {
  const fitted = fittedBuild(build);
  const painted = fitted.parts.filter((part) => !isOpen(part) && part.painted);
  const undecided = fitted.parts.filter((part) => isOpen(part) && part.candidates.length > 1);
  const waiting = fitted.parts.filter((part) => isOpen(part) && part.candidates.length < 2);
  const schemes = new Set(
    fitted.alternatives.map((one) => JSON.stringify([...assignmentOf(fitted, one)].sort())),
  );
  return [
    {
      question: 'What is painted already?',
      answer: painted.length === 0 ? undefined : shortly(painted.map(({ name }) => name)),
    },
    {
      question: 'What is still open, and what could it wear?',
      answer:
        undecided.length === 0
          ? undefined
          : shortly(undecided.map(({ name }) => name)) +
            (waiting.length === 0 ? '' : `; ${counted(waiting.length, 'part')} without a choice`),
    },
    {
      question: 'Which alternatives are to be compared?',
      answer: schemes.size < 2 ? undefined : counted(build.alternatives.length, 'alternative'),
    },
  ];
}

const begun = new WeakMap<Build, boolean>();

/** Whether any of the three is answered: before, a number would speak of a car nobody means. */
export function isBegun(build: Build): boolean {
  const known = begun.get(build) ?? stepsOf(build).some(({ answer }) => answer !== undefined);
  begun.set(build, known);
  return known;
}
