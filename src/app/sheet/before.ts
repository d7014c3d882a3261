/**
 * Where did an alternative stand before its finishes were changed? Another lamp, distance, weight or
 * rule moves the numbers too, but says nothing of the scheme, so nothing is told then.
 */
import { create } from 'zustand';
import { assignmentOf, type Build } from '../../build/build.ts';
import type { ScoreSheet } from '../../score/comparison.ts';
import { useBench, type Work } from '../store.ts';
import { sheetOf } from './compared.ts';

/** Whether what an alternative wears is all that changed, as far as its numbers go. */
export function isChangeOfFinish(before: Build, after: Build, id: string): boolean {
  const fields = ['car', 'scale', 'viewing', 'weights', 'tonal', 'mustRead', 'wantedBy'] as const;
  if (before.id !== after.id || fields.some((field) => before[field] !== after[field]))
    return false;
  const [one, other] = [before, after].map((build) => {
    const alternative = build.alternatives.find((own) => own.id === id);
    return alternative === undefined ? undefined : assignmentOf(build, alternative);
  });
  if (one === undefined || other === undefined || one.size !== other.size) return false;
  const parts = [...other.keys()];
  return (
    parts.every((part) => one.has(part)) && parts.some((part) => one.get(part) !== other.get(part))
  );
}

/** The work as it was before its build changed last, and as it is since. */
interface Changed {
  readonly before: Work | undefined;
  readonly now: Work | undefined;
}

const useChanged = create<Changed>()(() => ({ before: undefined, now: undefined }));

useBench.subscribe(({ work: now }, { work: before }) => {
  if (now?.build !== before?.build) useChanged.setState({ before, now });
});

/** The sheet as it was before the last change, where that was one of this alternative's finishes. */
export const useBefore = (id: string): ScoreSheet | undefined =>
  useChanged(({ before, now }) =>
    before !== undefined && now !== undefined && isChangeOfFinish(before.build, now.build, id)
      ? sheetOf(before, id)
      : undefined,
  );

/** `was 57`, where a number is no longer what it was. */
export const wasInWords = (before: number | undefined, now: number): string | undefined =>
  before === undefined || Math.round(before) === Math.round(now)
    ? undefined
    : `was ${Math.round(before)}`;
