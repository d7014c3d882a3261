/**
 * Which of all combinations are best? What is ranked, how far the search has come, the best ones in
 * rows that can be put on the stage, and what each rule costs.
 */
import { useEffect, useMemo, useRef } from 'react';
import { partsWithChoice } from '../../ranking/held.ts';
import { useToday } from '../sheet/today.ts';
import { useWork } from '../store.ts';
import { Asked } from './Asked.tsx';
import { Beneath } from './Beneath.tsx';
import { NothingOpen } from './Nothing.tsx';
import { isSameQuestion, type Question } from './question.ts';
import './ranking.css';
import { Ranked } from './Ranked.tsx';
import { Standing } from './Standing.tsx';
import { isAsked, isQuick, startSearch, stopSearch, useSearch } from './search.ts';

/** The whole area. */
export function RankingArea() {
  const { build } = useWork();
  const isOpen = partsWithChoice(build).length > 0;
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // What was pressed to come here may be gone.
    if (document.activeElement === document.body) title.current?.focus();
  }, []);
  return (
    <section className="ranking-area" aria-labelledby="ranking-title">
      <h2 ref={title} id="ranking-title" className="section-title" tabIndex={-1}>
        Every combination, best first
      </h2>
      {isOpen ? <Search /> : <NothingOpen />}
    </section>
  );
}

function Search() {
  const question = useQuestion();
  const answer = useSearch((search) => search.answer);
  const isStale = answer !== undefined && !isSameQuestion(answer.question, question);
  return (
    <>
      <Asked question={question} />
      <Standing question={question} isStale={isStale} />
      {answer === undefined ? null : <Ranked answer={answer} isStale={isStale} />}
      {answer === undefined ? null : <Beneath answer={answer} isStale={isStale} />}
    </>
  );
}

/** What is asked now; begins to search for it where that was not done before. */
function useQuestion(): Question {
  const { build, car } = useWork();
  const today = useToday();
  const { count, isDifferent, held } = useSearch();
  const question = useMemo(
    () => ({ build, sight: car.sight, wanted: { today, count, isDifferent }, held }),
    [build, car.sight, today, count, isDifferent, held],
  );
  useEffect(() => {
    if (isAsked(question)) return;
    const { running, last } = useSearch.getState();
    const before = running ?? last?.question;
    // What is asked here is searched for; a build that changed only where that takes no time.
    if (before === undefined || isSameBuild(before, question) || isQuick(question)) {
      startSearch(question);
    } else stopSearch();
  }, [question]);
  return question;
}

/** Whether only the asking differs. */
const isSameBuild = (one: Question, now: Question): boolean => {
  const { today } = now.wanted;
  return isSameQuestion(one, { ...now, wanted: { ...one.wanted, today }, held: one.held });
};
