/** One alternative: its name and note, a copy of it, its place among the others, the way out. */
import { useEffect } from 'react';
import { letterOf } from '../../build/build.ts';
import {
  copyAlternative,
  mostAlternatives,
  noteAlternative,
  renameAlternative,
} from '../../build/edit/alternative.ts';
import { clear, cleared, lay } from '../overlay/overlay.ts';
import { UndoHere } from '../overlay/UndoHere.tsx';
import { Dialog } from '../pieces/Dialog.tsx';
import { Field } from '../pieces/Field.tsx';
import { nameFault, noteFault } from '../pieces/naming.ts';
import { edit, endStep, useBench, useWork } from '../store.ts';
import { bringIntoSight } from '../table/place.ts';
import { moveTo, takeOut } from './moving.ts';
import './alternatives.css';

/** The card of one alternative; goes when it does. */
export function AlternativeCard({ alternative: id }: { readonly alternative: string }) {
  const { alternatives } = useWork().build;
  const at = alternatives.findIndex((one) => one.id === id);
  const alternative = alternatives[at];
  const isThere = alternative !== undefined;
  useEffect(() => bringIntoSight(id), [id]);
  useEffect(() => {
    if (!isThere) clear();
  }, [isThere]);
  if (alternative === undefined) return null;
  const { name, note = '' } = alternative;
  const close = (): void => {
    endStep();
    cleared('alternative');
  };
  return (
    <Dialog title={`Alternative ${letterOf(at)}`} place="side" onClose={close} tools={<UndoHere />}>
      <div className="alternative-card">
        <Field
          label="Name"
          value={name}
          onType={(text) => {
            const fault = nameFault(text);
            if (fault === undefined) {
              edit((build) => renameAlternative(build, id, text.trim()), `name of ${id}`);
            }
            return fault;
          }}
        />
        <Field
          label="Note"
          lines={3}
          value={note}
          hint="What it is after, in your words."
          onType={(text) => {
            const fault = noteFault(text);
            if (fault === undefined) {
              edit((build) => noteAlternative(build, id, text), `note of ${id}`);
            }
            return fault;
          }}
        />
        <div className="buttons">
          <button
            type="button"
            className="button"
            disabled={at === 0}
            onClick={() => moveTo(id, at - 1)}
          >
            Move left
          </button>
          <button
            type="button"
            className="button"
            disabled={at === alternatives.length - 1}
            onClick={() => moveTo(id, at + 1)}
          >
            Move right
          </button>
          <button
            type="button"
            className="button"
            disabled={alternatives.length >= mostAlternatives}
            onClick={() => {
              endStep();
              edit((build) => copyAlternative(build, id));
              const copy = useBench.getState().work?.build.alternatives[at + 1];
              if (copy !== undefined) lay({ kind: 'alternative', alternative: copy.id });
            }}
          >
            Make a copy
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              clear();
              takeOut(id);
            }}
          >
            Take out
          </button>
        </div>
        <p className="quiet">
          Letters follow the order: the first is A. Taking it out asks nothing, since undo brings it
          back.
        </p>
      </div>
    </Dialog>
  );
}
