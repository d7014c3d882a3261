/**
 * Everything about one part of the build: its name, how it stands, what it wears or may wear, which
 * parts of the car it covers, which rules speak of it. Every change is live; the part stays ringed
 * on the cars while the card is open.
 */
import { useEffect } from 'react';
import type { Part } from '../../build/build.ts';
import { isOpen } from '../../build/build.ts';
import { renamePart } from '../../build/edit/part.ts';
import { clear, cleared, lay } from '../overlay/overlay.ts';
import { UndoHere } from '../overlay/UndoHere.tsx';
import { Dialog } from '../pieces/Dialog.tsx';
import { Field } from '../pieces/Field.tsx';
import { nameFault } from '../pieces/naming.ts';
import { pointNowhere, usePointing } from '../pointing.ts';
import { edit, endStep, useWork } from '../store.ts';
import { bring } from './bring.ts';
import { Candidates } from './Candidates.tsx';
import { Cover } from './Cover.tsx';
import { PartRules } from './PartRules.tsx';
import { Settled } from './Settled.tsx';
import { type Standing, standingOf, standings } from './standing.ts';
import './parts.css';

/** The card of one part; goes when the part does. */
export function PartCard({ part: id }: { readonly part: string }) {
  const part = useWork().build.parts.find((one) => one.id === id);
  const isThere = part !== undefined;
  useEffect(() => {
    if (!isThere) {
      clear();
      return;
    }
    // Pinned, since pointing at something else and away again must come back to it.
    usePointing.setState({ parts: [id], pinned: [id], isGentle: true });
    return pointNowhere;
  }, [id, isThere]);
  if (part === undefined) return null;
  const close = (): void => {
    endStep();
    cleared('part');
  };
  return (
    <Dialog title={part.name} place="side" onClose={close} tools={<Tools />}>
      <div className="card">
        <Name part={part} />
        <Standings part={part} />
        {part.absent ? null : <Wearing part={part} />}
        {part.absent ? null : <MustRead part={part.id} />}
        <Cover part={part} />
        {part.absent ? null : <PartRules part={part} />}
      </div>
    </Dialog>
  );
}

/** The way to all other parts, and undo. */
const Tools = () => (
  <>
    <button type="button" className="button" onClick={() => lay({ kind: 'parts' })}>
      All parts
    </button>
    <UndoHere />
  </>
);

const Wearing = ({ part }: { part: Part }) =>
  isOpen(part) ? <Candidates part={part} /> : <Settled part={part} finish={part.finish} />;

function Name({ part }: { part: Part }) {
  return (
    <Field
      label="Name"
      value={part.name}
      onType={(text) => {
        const fault = nameFault(text);
        if (fault === undefined) {
          edit((build) => renamePart(build, part.id, text.trim()), `name of ${part.id}`);
        }
        return fault;
      }}
    />
  );
}

/** The four standings, each with what it means. */
function Standings({ part }: { part: Part }) {
  const now = standingOf(part);
  const choose = (standing: Standing): void => {
    endStep();
    edit((build) => bring(build, part.id, standing));
  };
  return (
    <fieldset className="standings">
      <legend className="field-label">How it stands</legend>
      {standings.map(({ standing, name, means }) => (
        <label key={standing} className="tick">
          <input
            type="radio"
            name={`standing of ${part.id}`}
            checked={standing === now}
            onChange={() => choose(standing)}
          />
          <span>
            <strong>{name}</strong>: {means}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

function MustRead({ part }: { part: string }) {
  const isMeant = useWork().build.mustRead.includes(part);
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={isMeant}
        onChange={({ currentTarget: { checked } }) => {
          endStep();
          edit((build) => ({
            ...build,
            mustRead: checked
              ? [...build.mustRead, part]
              : build.mustRead.filter((one) => one !== part),
          }));
        }}
      />
      <span>
        Must be told from its neighbours
        <small className="tick-note">
          Wearing the same finish as a neighbour then costs contrast instead of counting as meant.
        </small>
      </span>
    </label>
  );
}
