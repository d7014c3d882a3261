/**
 * From an empty bench to a comparison: three questions that tick themselves off, each with a way to
 * answer it. A line that can be folded or put away, never in the way.
 */
import type { ReactNode } from 'react';
import { isOpen, type OpenPart } from '../../build/build.ts';
import { alternativePerCandidate, toCompare } from '../../build/edit/alternative.ts';
import { add } from '../alternatives/moving.ts';
import { PerShared } from '../alternatives/PerShared.tsx';
import { lay } from '../overlay/overlay.ts';
import { edit, endStep, useWork } from '../store.ts';
import { useDone } from './done.ts';
import { answer } from './putAway.ts';
import type { Step } from './steps.ts';
import './questions.css';

/** The three questions of the open build. */
export function Questions() {
  const work = useWork();
  const { build, key } = work;
  const { steps, done } = useDone(work);
  const [first, open, compared] = steps;
  const openParts = build.parts.filter((part) => isOpen(part) && !part.absent) as OpenPart[];
  const waiting = openParts.find(({ candidates }) => candidates.length < 2);
  return (
    <details className="questions" open>
      <summary>
        Three questions to a comparison{' '}
        <span className="quiet">
          {done < 3 ? `${done} of 3 answered` : 'all answered: the score sheets say the rest'}
        </span>
      </summary>
      <ol>
        <Question at={1} step={first}>
          <button
            type="button"
            className="button"
            onClick={() => lay({ kind: 'parts', asks: 'painted' })}
          >
            Mark what is painted…
          </button>
          {first.answer === undefined ? (
            <button type="button" className="button" onClick={() => answer('bare', key)}>
              Nothing yet
            </button>
          ) : null}
        </Question>
        <Question at={2} step={open}>
          {waiting === undefined ? null : (
            <button
              type="button"
              className="button"
              onClick={() => lay({ kind: 'part', part: waiting.id })}
            >
              Candidates for {waiting.name}…
            </button>
          )}
          <button
            type="button"
            className="button"
            onClick={() => lay({ kind: 'parts', asks: 'open' })}
          >
            Open {openParts.length === 0 ? '' : 'other '}parts…
          </button>
        </Question>
        <Question at={3} step={compared}>
          <PerShared />
          {toCompare(build) === undefined ? <Spread parts={openParts} /> : null}
          <button type="button" className="button" onClick={() => add(build.alternatives[0]?.id)}>
            {build.alternatives.length === 0 ? 'Add the first' : 'Add one like A'}
          </button>
        </Question>
      </ol>
      <button type="button" className="text-button" onClick={() => answer('away', key)}>
        Put these questions away
      </button>
    </details>
  );
}

interface QuestionProps {
  readonly at: number;
  readonly step: Step;
  readonly children: ReactNode;
}

function Question({ at, step, children }: QuestionProps) {
  const isDone = step.answer !== undefined;
  return (
    <li className={isDone ? 'is-done' : undefined}>
      <span className="question-mark" aria-hidden="true">
        {isDone ? '✓' : at}
      </span>
      <div>
        <h3>{step.question}</h3>
        <p>
          {isDone ? <span className="unseen">Answered: </span> : null}
          {step.answer ?? 'Not answered yet.'}
        </p>
        <div className="buttons">{children}</div>
      </div>
    </li>
  );
}

/** An alternative for each candidate of the first open part that has some nobody wears. */
function Spread({ parts }: { parts: readonly OpenPart[] }) {
  const { build } = useWork();
  const part = parts.find(({ id, candidates }) => {
    const worn = new Set(build.alternatives.map(({ choices }) => choices[id]));
    return candidates.length > 1 && candidates.some((ref) => !worn.has(ref));
  });
  if (part === undefined) return null;
  return (
    <button
      type="button"
      className="button"
      onClick={() => {
        endStep();
        edit((now) => alternativePerCandidate(now, part.id));
      }}
    >
      One for each candidate of {part.name}
    </button>
  );
}
