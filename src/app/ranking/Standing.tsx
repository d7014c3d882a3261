/** How far has the search come? What is proved, or what could still be better; stop and go on. */
import { useEffect, useState } from 'react';
import { headSentence } from '../../ranking/answer/sure.ts';
import { standingSentence, stoppedSentence } from '../../ranking/answer/words.ts';
import { Refused } from './Nothing.tsx';
import { isSameQuestion, type Question } from './question.ts';
import { startSearch, stopSearch, useSearch } from './search.ts';

/** A search that takes no longer is not told of, ms. */
const blinkMs = 250;

interface StandingProps {
  readonly question: Question;
  /** What is shown answers what was asked before. */
  readonly isStale: boolean;
}

/** A line of words, a button, and a thin line that fills as the gap closes. */
export function Standing({ question, isStale }: StandingProps) {
  const { running, last, answer, problems, inTheWay } = useSearch();
  const { isLong, wasLong } = useLong(running);
  if (running === undefined && last?.end === 'refused' && isSameQuestion(last.question, question)) {
    return <Refused build={question.build} problems={problems} costs={inTheWay} />;
  }
  const soFar = isStale ? undefined : answer?.ranking;
  const sureness = isStale ? undefined : answer?.about.sureness;
  const endWords = (): string => {
    if (isStale) return 'The build has changed since: these rows answer what was asked before.';
    if (last?.end === 'failed') return 'The search ended unexpectedly. Your work is as it was.';
    if (soFar === undefined) return last?.end === 'stopped' ? 'Stopped; nothing found yet.' : '';
    const words = standingSentence(soFar, { ...question.wanted, build: question.build });
    return last?.end === 'stopped' ? `Stopped. ${words}` : words;
  };
  const best = soFar?.rows[0]?.sheet.overall ?? 0;
  const reached = soFar === undefined || soFar.atMost <= 0 ? 0 : Math.min(1, best / soFar.atMost);
  // The button stays where it was pressed, so that the focus does.
  const isButton =
    isLong || (running === undefined && (isStale || wasLong || last?.end !== 'found'));
  return (
    <div className="ranking-standing">
      <div className="ranking-words">
        <p role="status">{isLong ? 'Searching …' : endWords()}</p>
        {isLong && soFar !== undefined ? <p>{stoppedSentence(soFar)}</p> : null}
        {running === undefined && sureness !== undefined ? <p>{headSentence(sureness)}</p> : null}
        {isButton ? (
          <button
            type="button"
            className="button"
            onClick={() => (running === undefined ? startSearch(question) : stopSearch())}
          >
            {isLong ? 'Stop' : isStale ? 'Rank anew' : 'Rank again'}
          </button>
        ) : null}
      </div>
      <span className="ranking-line" aria-hidden="true" data-running={isLong}>
        <span style={{ inlineSize: `${100 * reached}%` }} />
      </span>
    </div>
  );
}

/** Whether a search has been going on for longer than a blink, and whether the last one did. */
function useLong(running: object | undefined): { isLong: boolean; wasLong: boolean } {
  const [long, setLong] = useState<object>();
  useEffect(() => {
    if (running === undefined) return;
    const timer = setTimeout(() => setLong(running), blinkMs);
    return () => {
      clearTimeout(timer);
    };
  }, [running]);
  return {
    isLong: running !== undefined && long === running,
    wasLong: running === undefined && long !== undefined,
  };
}
