/** What was wrong with files, shown whole: place, what was found, what was expected, how to mend. */
import { useEffect, useRef } from 'react';
import { cutText } from '../../ground/id.ts';
import { type Problem, problemSentence } from '../../ground/problem.ts';
import type { Refused } from '../opening/refused.ts';

interface ProblemsProps {
  readonly refused: readonly (Refused & { readonly turn: number })[];
  /** Whether nothing that came with them was opened. */
  readonly isUntouched: boolean;
  readonly onClose: () => void;
}

/** A dialog over the work; several files that were refused together stand one below the other. */
export function Problems({ refused, isUntouched, onClose }: ProblemsProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  // One that comes as the dialog closes opens it again, before the browser has told of the closing.
  useEffect(() => {
    if (refused.length > 0 && dialog.current?.open === false) dialog.current.showModal();
  }, [refused]);
  const closed = (): void => {
    if (dialog.current?.open === false) onClose();
  };
  const isOne = refused.length === 1;
  const title = isOne ? cutText(refused[0]?.name ?? '') : `${refused.length} files`;
  const outcome = isUntouched ? 'What you had open is untouched.' : 'What came with it was opened.';
  return (
    <dialog ref={dialog} className="problems" aria-labelledby="problems-title" onClose={closed}>
      <h2 id="problems-title">
        {title} {isOne ? 'was' : 'were'} not opened
      </h2>
      {isOne ? null : <p>{isUntouched ? outcome : 'What came with them was opened.'}</p>}
      {refused.map(({ name, problems, turn }) => (
        <section key={turn}>
          {isOne ? null : <h3>{cutText(name)}</h3>}
          <p>
            {problems.length === 1 ? 'One thing is' : `${problems.length} things are`} wrong with
            it. {isOne ? outcome : ''}
          </p>
          <Faults problems={problems} isUnderName={!isOne} />
        </section>
      ))}
      <button type="button" className="button" onClick={() => dialog.current?.close()}>
        Back to the bench
      </button>
    </dialog>
  );
}

function Faults(props: { readonly problems: readonly Problem[]; readonly isUnderName: boolean }) {
  const Place = props.isUnderName ? 'h4' : 'h3';
  return (
    <ol>
      {props.problems.map((problem) => (
        <li key={problemSentence(problem)}>
          {problem.place === '' ? null : <Place>{problem.place}</Place>}
          <dl>
            <dt>Found</dt>
            <dd>{problem.found}</dd>
            <dt>Expected</dt>
            <dd>{problem.expected}</dd>
            <dt>To mend it</dt>
            <dd>{problem.mend}</dd>
          </dl>
        </li>
      ))}
    </ol>
  );
}
