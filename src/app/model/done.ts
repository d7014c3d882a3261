/** How many of the three questions of a build are answered, and whether they were put away. */
import type { Work } from '../store.ts';
import { useAnswered } from './putAway.ts';
import { type Step, stepsOf } from './steps.ts';

export interface Done {
  readonly steps: readonly [Step, Step, Step];
  /** 0–3. */
  readonly done: number;
  readonly isAway: boolean;
}

/** The questions with what the build and its builder answer. */
export function useDone({ key, build }: Work): Done {
  const isBare = useAnswered(({ bare }) => bare.includes(key));
  const isAway = useAnswered(({ away }) => away.includes(key));
  const [painted, open, compared] = stepsOf(build);
  const first = isBare && painted.answer === undefined ? 'Nothing yet' : painted.answer;
  const steps = [{ ...painted, answer: first }, open, compared] as const;
  return { steps, done: steps.filter(({ answer }) => answer !== undefined).length, isAway };
}
