/**
 * What the model is: name, story, scale, from how far it is looked at, when it is wanted, whether
 * quiet colours are meant. Every change is live.
 */
import { usedRefs, withoutUnused } from '../../build/edit/finish.ts';
import { cleared } from '../overlay/overlay.ts';
import { UndoHere } from '../overlay/UndoHere.tsx';
import { Dialog } from '../pieces/Dialog.tsx';
import { Field } from '../pieces/Field.tsx';
import { nameFault, noteFault } from '../pieces/naming.ts';
import { edit, endStep, useWork } from '../store.ts';
import { Distance } from './Distance.tsx';
import { Scale } from './Scale.tsx';
import { typeWanted } from './wanted.ts';
import './model.css';

/** The card of the open build. */
export function BuildCard() {
  const { build, car } = useWork();
  const close = (): void => {
    endStep();
    cleared('build');
  };
  return (
    <Dialog title="This build" place="side" onClose={close} tools={<UndoHere />}>
      <div className="model-card">
        <Field
          label="Name"
          value={build.name}
          onType={(text) => {
            const fault = nameFault(text);
            if (fault === undefined) edit((now) => ({ ...now, name: text.trim() }), 'name');
            return fault;
          }}
        />
        <Field
          label="Story"
          lines={4}
          value={build.story ?? ''}
          hint="What it is to be, in your words; it stands under the name."
          onType={(text) => {
            const fault = noteFault(text);
            if (fault === undefined) edit((now) => withStory(now, text), 'story');
            return fault;
          }}
        />
        <p>
          <span className="field-label">Model</span>
          {car.sight.name}
        </p>
        <Scale
          value={build.scale}
          onChange={(scale) => edit((now) => ({ ...now, scale }), 'scale')}
        />
        <Distance
          value={build.viewing.distanceMm}
          onChange={(distanceMm) =>
            edit((now) => ({ ...now, viewing: { ...now.viewing, distanceMm } }), 'viewing')
          }
        />
        <Wanted />
        <label className="tick">
          <input
            type="checkbox"
            checked={build.tonal}
            onChange={({ currentTarget: { checked } }) => {
              endStep();
              edit((now) => ({ ...now, tonal: checked }));
            }}
          />
          <span>
            Quiet on purpose
            <small className="tick-note">
              A close, one-colour scheme: little contrast between colours is meant and not charged.
            </small>
          </span>
        </label>
        <Unused />
      </div>
    </Dialog>
  );
}

function withStory<Told extends { story?: string | undefined }>(build: Told, text: string): Told {
  const { story: _, ...rest } = build;
  return (text.trim() === '' ? rest : { ...rest, story: text }) as Told;
}

/** The day it is wanted by, or none. */
function Wanted() {
  const { wantedBy } = useWork().build;
  return (
    <div className="with-button">
      <Field
        label="Wanted by"
        kind="date"
        value={wantedBy ?? ''}
        hint={wantedBy === undefined ? 'No date: nothing is ever late.' : ''}
        onType={typeWanted}
      />
      {wantedBy === undefined ? null : (
        <button
          type="button"
          className="button"
          onClick={() => {
            endStep();
            typeWanted('');
          }}
        >
          No date
        </button>
      )}
    </div>
  );
}

/** Finishes that the build holds and nothing wears. */
function Unused() {
  const { build } = useWork();
  const count = build.finishes.length - usedRefs(build).size;
  if (count <= 0) return null;
  return (
    <div>
      <p>
        {count === 1 ? 'One finish of this build is' : `${count} finishes of this build are`} worn
        by no part and named by no rule.
      </p>
      <button
        type="button"
        className="button"
        onClick={() => {
          endStep();
          edit(withoutUnused);
        }}
      >
        Leave {count === 1 ? 'it' : 'them'} out
      </button>
    </div>
  );
}
