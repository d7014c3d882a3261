/** What was wrong with a file, shown whole: place, what was found, what was expected, how to mend. */
import { useEffect, useRef } from 'react';
import { cutText } from '../../ground/id.ts';
import { type Problem, problemSentence } from '../../ground/problem.ts';

interface ProblemsProps {
  readonly name: string;
  readonly problems: readonly Problem[];
  readonly onClose: () => void;
}

/** A dialog over the untouched work. */
export function Problems({ name, problems, onClose }: ProblemsProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className="problems" aria-labelledby="problems-title" onClose={onClose}>
      <h2 id="problems-title">{cutText(name)} was not opened</h2>
      <p>
        {problems.length === 1 ? 'One thing is' : `${problems.length} things are`} wrong with it.
        What you had open is untouched.
      </p>
      <ol>
        {problems.map((problem) => (
          <li key={problemSentence(problem)}>
            {problem.place === '' ? null : <h3>{problem.place}</h3>}
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
      <button type="button" className="button" onClick={() => dialog.current?.close()}>
        Back to the bench
      </button>
    </dialog>
  );
}
