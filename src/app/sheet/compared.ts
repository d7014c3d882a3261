/**
 * The comparison of the open work, worked out once per build and day and shared by every place
 * that shows a number or a sentence. Scores and sentences come at once; what rests on draws follows
 * from a worker (`drawn.ts`). The day comes from the clock here, never in the scores.
 */
import { assignmentOf, type Build } from '../../build/build.ts';
import type { RuleFacts } from '../../build/rule.ts';
import type { SightTable } from '../../car/table.ts';
import type { Comparison, ScoreSheet } from '../../score/comparison.ts';
import { type Judged, judgeAgain } from '../../score/judged.ts';
import { comparisonOf } from '../../score/sheet.ts';
import { type Elsewhere, whereElse } from '../../score/where.ts';
import { useBench, useWork, type Work } from '../store.ts';
import { todayHere, useToday } from './today.ts';

/** Remembers an answer per build for as long as the day lasts. */
function perBuild<Answer>(answer: (build: Build, sight: SightTable, today: string) => Answer) {
  const known = new WeakMap<Build, { today: string; answer: Answer }>();
  return (build: Build, sight: SightTable): Answer => {
    const today = todayHere();
    const before = known.get(build);
    if (before?.today === today) return before.answer;
    const now = { today, answer: answer(build, sight, today) };
    known.set(build, now);
    return now.answer;
  };
}

/** Laid out last; a change of finish on one alternative needs no new tables. */
let latest: Judged | undefined;
const judgedOf = perBuild((build, sight, today): Judged => {
  latest = judgeAgain(latest, build, sight, { today });
  return latest;
});
const scoresOf = perBuild((build, sight, today) =>
  comparisonOf(judgedOf(build, sight), { today, withoutCloseness: true }),
);

/** Scores and sentences of the open work, without closeness. */
export function useComparison(): Comparison {
  const { build, car } = useWork();
  useToday();
  return scoresOf(build, car.sight);
}

/** The score sheet of one alternative of some work, as of today. */
export const sheetOf = ({ build, car }: Work, id: string): ScoreSheet | undefined =>
  scoresOf(build, car.sight).alternatives.find((sheet) => sheet.id === id);

/** The score sheet of one alternative of the open work; what else changes leaves it as it is. */
export function useSheet(id: string): ScoreSheet | undefined {
  useToday();
  return useBench(({ work }) => work && sheetOf(work, id));
}

/** Where else the colour of a part appears, on each alternative in order. */
export function useElsewhere(part: string): readonly (Elsewhere | undefined)[] {
  const { build, car } = useWork();
  const judged = judgedOf(build, car.sight);
  return build.alternatives.map((alternative) =>
    whereElse(judged, judged.choiceOf(assignmentOf(build, alternative)), part),
  );
}

/** What rules ask about each alternative of a build, in order. */
export const ruleFactsOf = perBuild((build, sight): readonly RuleFacts[] => {
  const judged = judgedOf(build, sight);
  return build.alternatives.map((alternative) =>
    judged.factsOf(judged.choiceOf(assignmentOf(build, alternative))),
  );
});

/** What rules ask about each alternative, in order; the same list for the same build. */
export function useRuleFacts(): readonly RuleFacts[] {
  const { build, car } = useWork();
  return ruleFactsOf(build, car.sight);
}
