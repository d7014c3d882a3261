/**
 * What follows a change by itself. Until the answer comes, the one before it is withheld where it
 * speaks of something that has changed; it keeps its room, so that nothing moves under the hand.
 */
import { useState } from 'react';

export interface Followed<Answer> {
  /** The last answer there was; undefined before the first. */
  readonly answer: Answer | undefined;
  /** Whether it speaks of what has changed since: it keeps its room, and is neither seen nor told. */
  readonly isWithheld: boolean;
}

/** Says in the document that something only keeps its room. */
export const withheld = (isWithheld: boolean): { 'data-withheld': '' | undefined } => ({
  'data-withheld': isWithheld ? '' : undefined,
});

/**
 * The answer, or the last one while it is being worked out anew. `about` is all that it rests on; it
 * stays in sight for as long as each of these is the same. An answer must be the same object from
 * one drawing to the next.
 */
export function useFollowed<Answer>(
  about: readonly unknown[],
  answer: Answer | undefined,
): Followed<Answer> {
  const [last, setLast] = useState({ about, answer });
  const isAlike = about.every((one, k) => one === last.about[k]);
  if (answer !== undefined && !(answer === last.answer && isAlike)) setLast({ about, answer });
  return answer === undefined
    ? { answer: last.answer, isWithheld: !isAlike }
    : { answer, isWithheld: false };
}
