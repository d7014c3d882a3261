/** Pictures to take away: the comparison, or one car on clear ground, saved or copied. */
import { useEffect, useId, useRef, useState } from 'react';
import { letterOf } from '../../build/build.ts';
import { Choice } from '../pieces/Choice.tsx';
import { useComparison } from '../sheet/compared.ts';
import { useWork } from '../store.ts';
import { placeBeside } from '../table/place.ts';
import type { Shape } from './compose.ts';
import { canCopy, copyPicture, savePicture } from './handing.ts';
import { fileNameOf } from './words.ts';

const shapes: readonly { value: Shape; name: string; note: string }[] = [
  { value: 'wide', name: 'Wide', note: '16 : 9' },
  { value: 'square', name: 'Square', note: '1 : 1' },
];
/** As many as the picture holds; known here so that drawing is fetched only once it is asked for. */
const mostCars = 4;

/** The button and what it opens. */
export function Pictures() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  useEffect(() => {
    const element = dialog.current;
    const press = ({ target }: Event): void => {
      if (target === element) element?.close();
    };
    element?.addEventListener('click', press);
    return () => element?.removeEventListener('click', press);
  }, []);
  return (
    <>
      <button
        type="button"
        className="toggle"
        aria-haspopup="dialog"
        onClick={({ currentTarget }) => {
          setOpen(true);
          dialog.current?.showModal();
          requestAnimationFrame(() => {
            if (dialog.current) placeBeside(dialog.current, currentTarget.getBoundingClientRect());
          });
        }}
      >
        Picture…
      </button>
      <dialog
        ref={dialog}
        className="chooser pictures"
        aria-labelledby={id}
        onClose={() => setOpen(false)}
      >
        {isOpen ? (
          <div className="chooser-inside">
            <header>
              <h2 id={id}>Picture</h2>
              <button type="button" className="button" onClick={() => dialog.current?.close()}>
                Done
              </button>
            </header>
            <Taking />
          </div>
        ) : null}
      </dialog>
    </>
  );
}

/** What can be taken, and what has become of the last one. */
function Taking() {
  const work = useWork();
  const { build } = work;
  const { alternatives } = useComparison();
  const [shape, setShape] = useState<Shape>('wide');
  const [hasScores, setScores] = useState(false);
  const [told, setTold] = useState('');
  const letters = build.alternatives.map((_, at) => letterOf(at));
  const shown = letters.slice(0, mostCars);

  const comparison = async (): Promise<HTMLCanvasElement> => {
    const { comparisonPicture } = await import('./compose.ts');
    const scores = new Map(alternatives.map(({ id, overall }) => [id, overall]));
    return comparisonPicture(work, shape, { scores: hasScores ? scores : undefined });
  };
  const car = async (alternative: string): Promise<HTMLCanvasElement> =>
    (await import('./compose.ts')).carPicture(work, alternative);
  const tell = (done: Promise<void>, words: string): void => {
    setTold('Drawing…');
    done.then(
      () => setTold(words),
      (error: unknown) => {
        const reason = error instanceof Error ? error.message : String(error);
        setTold(`No picture: ${reason}. Try again, or take a smaller one.`);
      },
    );
  };
  const save = (canvas: Promise<HTMLCanvasElement>, name: string): void =>
    tell(savePicture(canvas, name), `Saved as ${name}.`);

  return (
    <div className="taking">
      <Choice legend="The cars together" value={shape} options={shapes} onChoose={setShape} />
      <label className="with-scores">
        <input
          type="checkbox"
          checked={hasScores}
          onChange={({ currentTarget }) => setScores(currentTarget.checked)}
        />
        With the scores <small>A picture for asking others is better without.</small>
      </label>
      {letters.length > mostCars ? <p>The first {mostCars} alternatives are in it.</p> : null}
      <div className="taking-row">
        <button
          type="button"
          className="button"
          onClick={() => save(comparison(), fileNameOf(build, shown, shape))}
        >
          Save picture
        </button>
        {canCopy() ? (
          <button
            type="button"
            className="button"
            onClick={() => tell(copyPicture(comparison()), 'Copied.')}
          >
            Copy picture
          </button>
        ) : null}
      </div>
      <fieldset className="choice">
        <legend>One car on clear ground</legend>
        <div className="taking-row">
          {build.alternatives.map((alternative, at) => (
            <button
              key={alternative.id}
              type="button"
              className="button"
              aria-label={`Save car ${letterOf(at)}`}
              title={alternative.name}
              onClick={() => save(car(alternative.id), fileNameOf(build, [letterOf(at)]))}
            >
              {letterOf(at)}
            </button>
          ))}
        </div>
      </fieldset>
      <p role="status">{told}</p>
    </div>
  );
}
