/**
 * Which rack is looked at, and what can be done with it: a new one, another name, a new finish on
 * it, files, and taking it away, which says what goes and what stays.
 */
import { memo, useState } from 'react';
import { refOf } from '../../build/build.ts';
import type { Rack } from '../../finish/rack/rack.ts';
import { freshRack, makeFinish } from '../finish/fresh.ts';
import { later } from '../later.tsx';
import { Field } from '../pieces/Field.tsx';
import { nameFault } from '../pieces/naming.ts';
import { sayDone } from '../pieces/said.ts';
import { editRacks, endStep, useRacks, useWork } from '../store.ts';
import { everywhere, inBuild } from './finishes.ts';
import { seek, useSeeking } from './seeking.ts';
import { countOf, numberInWords } from './told.ts';

const RackFiles = later(
  'What brings finishes in',
  async () => (await import('./files/RackFiles.tsx')).RackFiles,
);

/** The line above the search. */
export const RackHead = memo(function RackHead() {
  const { build } = useWork();
  const racks = useRacks() ?? [];
  const scope = useSeeking((seeking) => seeking.scope);
  const rack = racks.find(({ id }) => id === scope);
  const [isNaming, setNaming] = useState(false);
  return (
    <div className="rack-head">
      <h2 id="rack-title">Rack</h2>
      <label className="rack-choice">
        <span className="unseen">Which rack</span>
        <select
          className="entry"
          value={scope}
          onChange={({ currentTarget }) => {
            seek({ scope: currentTarget.value });
            setNaming(false);
          }}
        >
          <option value={everywhere}>All racks</option>
          <option value={inBuild}>In this build ({build.finishes.length})</option>
          {racks.map(({ id, name, finishes }) => (
            <option key={id} value={id}>
              {name} ({numberInWords(finishes.length)})
            </option>
          ))}
        </select>
      </label>
      <div className="buttons">
        <NewFinish racks={racks} rack={rack} />
        <button
          type="button"
          className="button"
          onClick={() => {
            addRack(racks);
            setNaming(true);
          }}
        >
          New rack
        </button>
        {rack === undefined ? null : (
          <>
            <button
              type="button"
              className="button"
              aria-expanded={isNaming}
              onClick={() => setNaming(!isNaming)}
            >
              Rename
            </button>
            <button type="button" className="button" onClick={() => removeRack(rack)}>
              Delete rack
            </button>
          </>
        )}
        <RackFiles rack={rack?.id} />
      </div>
      {rack === undefined || !isNaming ? null : (
        <RackName key={rack.id} rack={rack} onDone={() => setNaming(false)} />
      )}
    </div>
  );
});

/** A new finish on the rack looked at, on the first where all are, on a new one where there is none. */
function NewFinish({ racks, rack }: { racks: readonly Rack[]; rack: Rack | undefined }) {
  const onto = rack ?? racks[0];
  return (
    <button
      type="button"
      className="button"
      title={`Onto ${onto?.name ?? freshRack(racks).name}`}
      onClick={() => makeFinish({}, onto?.id, (finish) => seek({ inHand: refOf(finish) }))}
    >
      New finish
    </button>
  );
}

/** Adds an empty rack and looks at it. */
function addRack(racks: readonly Rack[]): void {
  const rack = freshRack(racks);
  endStep();
  editRacks((all) => [...all, rack]);
  endStep();
  seek({ scope: rack.id });
}

function removeRack({ id, name, finishes }: Rack): void {
  endStep();
  editRacks((all) => all.filter((one) => one.id !== id));
  endStep();
  seek({ scope: everywhere });
  const what = finishes.length === 0 ? 'It was empty.' : `It held ${countOf(finishes.length)}.`;
  sayDone(`${name} is gone. ${what} What this build holds of it stays in the build.`);
}

function RackName({ rack, onDone }: { rack: Rack; onDone: () => void }) {
  return (
    <form
      className="rack-name"
      onSubmit={(event) => {
        event.preventDefault();
        endStep();
        onDone();
      }}
    >
      <Field
        label="Name of the rack"
        value={rack.name}
        onType={(text) => {
          const fault = nameFault(text);
          if (fault !== undefined) return fault;
          editRacks(
            (all) => all.map((one) => (one.id === rack.id ? { ...one, name: text.trim() } : one)),
            `name of rack ${rack.id}`,
          );
          return undefined;
        }}
      />
      <button type="submit" className="button">
        Done
      </button>
    </form>
  );
}
