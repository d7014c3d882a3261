/**
 * What is this finish, and how does it look? Everything a rack can say of one finish, filled in
 * beside the cars, which follow as one types.
 */
import { useEffect, useRef, useState } from 'react';
import { Dialog } from '../pieces/Dialog.tsx';
import { Field } from '../pieces/Field.tsx';
import { nameFault } from '../pieces/naming.ts';
import { useBench, useRacks, useWork } from '../store.ts';
import { BenchNotes } from './about/BenchNotes.tsx';
import { Origin } from './about/Origin.tsx';
import { ColourWays } from './colour/ColourWays.tsx';
import './editor.css';
import { Films } from './films/Films.tsx';
import { Gloss } from './films/Gloss.tsx';
import { Kind } from './films/Kind.tsx';
import { dropUntouched } from './fresh.ts';
import { type Live, takeBackTo, useLive } from './live.ts';
import { Seen } from './Seen.tsx';

interface FinishEditorProps {
  readonly rack: string;
  readonly finish: string;
  readonly onClose: () => void;
}

/** The form for one finish of a rack. */
export function FinishEditor({ rack, finish, onClose }: FinishEditorProps) {
  const live = useLive({ rack, finish });
  const opened = useRef(useBench.getState());
  const [before] = useState(live?.finish);
  // Fields are laid out afresh once everything is taken back, so that nothing typed stays behind.
  const [round, setRound] = useState(0);
  const isGone = live === undefined;
  useEffect(() => {
    if (isGone) onClose();
  }, [isGone, onClose]);
  useEffect(() => {
    // By keyboard one begins with the name; under a finger that would raise the keyboard at once.
    if (!window.matchMedia('(pointer: fine)').matches) return;
    document.querySelector<HTMLElement>('.editor-form input')?.focus({ preventScroll: true });
  }, []);
  if (live === undefined) return null;
  const close = (): void => {
    dropUntouched({ rack, finish });
    onClose();
  };
  return (
    <Dialog
      title={live.finish.name}
      place="side"
      className="finish-editor"
      onClose={close}
      tools={
        <button
          type="button"
          className="button"
          // Pressed while there is nothing to take back, it does no harm and keeps the focus.
          aria-disabled={live.finish === before}
          onClick={() => {
            if (live.finish !== before) takeBackTo(opened.current);
            setRound(round + 1);
          }}
        >
          Take back
        </button>
      }
    >
      <Seen live={live} rack={rack} />
      <div key={round} className="editor-form">
        <Name live={live} rack={rack} />
        <ColourWays live={live} rack={rack} />
        <Kind live={live} />
        <Gloss live={live} rack={rack} />
        <Films live={live} rack={rack} />
        <BenchNotes live={live} />
        <Origin live={live} />
      </div>
    </Dialog>
  );
}

function Name({ live: { finish, take }, rack }: { live: Live; rack: string }) {
  const { build } = useWork();
  const stored = useRacks()?.find(({ id }) => id === rack);
  const place =
    stored === undefined
      ? `In the build ${build.name} only; none of your racks holds it.`
      : `In the rack ${stored.name}.`;
  return (
    <section className="editor-section">
      <Field
        label="Name"
        value={finish.name}
        hint={place}
        onType={(name) => {
          return nameFault(name) ?? take((now) => ({ ...now, name: name.trim() }));
        }}
      />
    </section>
  );
}
