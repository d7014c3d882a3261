/** Build files in and out: open by button or drop, save, and the way back to the demo. */
import { useEffect, useRef, useState } from 'react';
import { mostBuildBytes, textOf } from '../../build/file.ts';
import { InputError, type Problem } from '../../ground/problem.ts';
import { demoWork, type FreshWork, workFrom } from '../opening/start.ts';
import { open, useBench } from '../store.ts';
import { Problems } from './Problems.tsx';

interface Refused {
  readonly name: string;
  readonly problems: readonly Problem[];
  /** Which opening it answers, so that each refusal gets a dialog of its own. */
  readonly turn: number;
}

const problemsIn = (error: unknown): readonly Problem[] => {
  if (error instanceof InputError) return error.problems;
  const found = error instanceof Error ? error.message : 'an unknown fault';
  return [{ place: '', found, expected: 'a readable file', mend: 'Try again.' }];
};

/** Text of a file from disk; one too large to be a build is refused unread. */
function textFrom(file: File): Promise<string> {
  if (file.size <= mostBuildBytes) return file.text();
  const found = `${Math.ceil(file.size / 1e6)} MB`;
  const expected = `no more than ${mostBuildBytes / 1e6} MB`;
  const mend = 'Check that this is the file you meant.';
  return Promise.reject(new InputError([{ place: '', found, expected, mend }], file.name));
}

/** Hands the open build to the browser's downloads. */
function save(): void {
  const work = useBench.getState().work;
  if (work === undefined) return;
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([textOf(work.build)], { type: 'application/json' }));
  link.download = `${work.build.id}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** Buttons for files, the drop target, and what was wrong with the last one. */
export function Files() {
  const input = useRef<HTMLInputElement>(null);
  const [refused, setRefused] = useState<Refused>();

  const latest = useRef(0);
  const take = (name: string, work: Promise<FreshWork>): void => {
    latest.current += 1;
    const turn = latest.current;
    // A slow file must not replace, nor its faults cover, one that was chosen after it.
    const isStale = (): boolean => turn !== latest.current;
    work.then(
      (found) => {
        if (isStale()) return;
        setRefused(undefined);
        open(found);
      },
      (error: unknown) => {
        if (!isStale()) setRefused({ name, problems: problemsIn(error), turn });
      },
    );
  };
  const takeFile = (file: File): void =>
    take(
      file.name,
      textFrom(file).then((text) => workFrom(text, file.name)),
    );
  const isOver = useDrop(takeFile);

  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        Open…
      </button>
      <input
        ref={input}
        className="unseen"
        type="file"
        accept=".json,application/json"
        aria-label="Build file"
        tabIndex={-1}
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0];
          if (file !== undefined) takeFile(file);
          currentTarget.value = '';
        }}
      />
      <button type="button" className="button" onClick={save}>
        Save
      </button>
      <button type="button" className="button" onClick={() => take('The demo', demoWork())}>
        <span className="roomy">Start from the </span>demo again
      </button>
      {isOver ? <p className="drop">Let go to open this build file</p> : null}
      {refused === undefined ? null : (
        <Problems
          key={refused.turn}
          name={refused.name}
          problems={refused.problems}
          onClose={() => setRefused((now) => (now?.turn === refused.turn ? undefined : now))}
        />
      )}
    </>
  );
}

/** Whether a file hangs over the page; dropping it calls `onFile`. */
function useDrop(onFile: (file: File) => void): boolean {
  const [isOver, setOver] = useState(false);
  const latest = useRef(onFile);
  latest.current = onFile;
  useEffect(() => {
    const holdsFile = (event: DragEvent): boolean =>
      event.dataTransfer?.types.includes('Files') ?? false;
    const over = (event: DragEvent): void => {
      if (!holdsFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      if (!holdsFile(event)) return;
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file !== undefined) latest.current(file);
    };
    document.addEventListener('dragover', over);
    document.addEventListener('dragleave', leave);
    document.addEventListener('drop', drop);
    return () => {
      document.removeEventListener('dragover', over);
      document.removeEventListener('dragleave', leave);
      document.removeEventListener('drop', drop);
    };
  }, []);
  return isOver;
}
