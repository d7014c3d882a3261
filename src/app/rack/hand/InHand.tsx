/**
 * The spoon in the hand: what a rack knows of its finish, who wears it, and what can be done with
 * it: put on a car, compared, edited, copied, taken out.
 */
import { memo, useId, useState } from 'react';
import {
  assignmentOf,
  type Build,
  type EmbeddedFinish,
  letterOf,
  refOf,
} from '../../../build/build.ts';
import { bottlesOf } from '../../../finish/finish.ts';
import { uncertaintyOf } from '../../../finish/provenance.ts';
import { removeFinish } from '../../../finish/rack/edit.ts';
import type { Rack } from '../../../finish/rack/rack.ts';
import { startEditing } from '../../finish/editing.ts';
import { addFreshFinish } from '../../finish/fresh.ts';
import { kindOf, lookOf } from '../../pieces/look.ts';
import { Bowl } from '../../pieces/Spoon.tsx';
import { sayDone } from '../../pieces/said.ts';
import { editRacks, endStep, useRacks, useWork } from '../../store.ts';
import { carries } from '../../table/carrying.ts';
import { seek, seekNear, toTheSpoons } from '../seeking.ts';
import { daysInWords, nearInWords } from '../told.ts';
import { PutOn } from './PutOn.tsx';

interface InHandProps {
  readonly finish: EmbeddedFinish;
  /** Name of the colour looked for. */
  readonly near: string | undefined;
  /** ΔE2000 to it. */
  readonly deltaE: number | undefined;
}

const ways = {
  measured: 'measured',
  photo: 'from a photograph',
  swatch: 'beside a swatch',
  guess: 'a guess',
} as const;

/** All that is told of one finish, and its actions. */
export const InHand = memo(function InHand({ finish, near, deltaE }: InHandProps) {
  const { build } = useWork();
  const racks = useRacks() ?? [];
  const titleId = useId();
  const [isWhole, setWhole] = useState(false);
  const { light } = build.viewing;
  const look = lookOf(finish, light);
  const rack = racks.find(({ id, finishes }) => id === finish.rack && holds(finishes, finish.id));
  const isEmbedded = build.finishes.some((one) => refOf(one) === refOf(finish));
  const worn = wornBy(build, finish);
  return (
    <section className={isWhole ? 'in-hand is-whole' : 'in-hand'} aria-labelledby={titleId}>
      <div className="in-hand-spoon" {...carries(finish)}>
        <Bowl finish={finish} light={light} />
        <span className="swatch" style={{ background: look.hex }} title="Its colour as scored" />
      </div>
      <div className="in-hand-words">
        <h3 id={titleId}>
          <bdi>{finish.name}</bdi>
        </h3>
        <p>
          {kindOf(finish, look)}
          {finish.chemistry === 'none' ? '' : `, ${finish.chemistry}`}; {Math.round(finish.gloss60)}{' '}
          GU
        </p>
        {near === undefined || deltaE === undefined ? null : (
          <p>
            <strong>{nearInWords(deltaE)}</strong> beside {near}.
          </p>
        )}
        <p className="quiet in-hand-more">
          Colour {ways[finish.provenance.how]}, good to about ΔE {uncertaintyOf(finish.provenance)}.
          {rack === undefined ? ' In this build only.' : ` On ${rack.name}.`}
          {rack !== undefined && isEmbedded ? ' In this build too.' : ''}
        </p>
        <div className="in-hand-more">
          <Bottles finish={finish} />
        </div>
        {worn.length === 0 ? null : <p className="in-hand-more">Worn by {worn.join('; ')}.</p>}
        {finish.note === undefined ? null : (
          <p className="in-hand-note in-hand-more">{finish.note}</p>
        )}
      </div>
      <PutOn finish={finish} />
      <div className="buttons">
        <button
          type="button"
          className="button in-hand-unfold"
          aria-expanded={isWhole}
          onClick={() => setWhole(!isWhole)}
        >
          About it
        </button>
        <button type="button" className="button" onClick={() => seekNear(finish)}>
          Near this
        </button>
        <button
          type="button"
          className="button"
          onClick={() => startEditing(finish.rack, finish.id)}
        >
          Edit
        </button>
        {(rack ?? racks[0]) === undefined ? null : (
          <button
            type="button"
            className="button"
            onClick={() => copyOnto((rack ?? racks[0])!, finish)}
          >
            {rack === undefined ? `Copy onto ${racks[0]!.name}` : 'Copy'}
          </button>
        )}
        {rack === undefined ? null : (
          <button
            type="button"
            className="button"
            onClick={() => takeOut(rack, finish, isEmbedded)}
          >
            Delete
          </button>
        )}
      </div>
    </section>
  );
});

const holds = (finishes: readonly { readonly id: string }[], id: string): boolean =>
  finishes.some((one) => one.id === id);

/** Every bottle it takes, and whether it is there. */
function Bottles({ finish }: { finish: EmbeddedFinish }) {
  const bottles = bottlesOf(finish);
  if (bottles.length === 0) return <p className="quiet">No bottle recorded.</p>;
  return (
    <ul className="in-hand-bottles">
      {bottles.map(({ id, name, onHand, leadDays }) => (
        <li key={id}>
          {name}:{' '}
          {onHand ? 'on hand' : leadDays === 0 ? 'to buy' : `to buy, ${daysInWords(leadDays)}`}
        </li>
      ))}
    </ul>
  );
}

/** `Mirrors of A and C`, by part. */
function wornBy(build: Build, finish: EmbeddedFinish): string[] {
  const ref = refOf(finish);
  const assignments = build.alternatives.map((alternative) => assignmentOf(build, alternative));
  return build.parts.flatMap(({ id, name }) => {
    const letters = assignments.flatMap((worn, at) => (worn.get(id) === ref ? [letterOf(at)] : []));
    if (letters.length === 0) return [];
    const isAll = letters.length === assignments.length && letters.length > 1;
    return [isAll ? `${name} of all` : `${name} of ${letters.join(', ')}`];
  });
}

/** A copy beside the original, in the hand and open to be changed. */
function copyOnto(rack: Rack, finish: EmbeddedFinish): void {
  const id = addFreshFinish(rack.id, finish);
  if (id === undefined) return;
  seek({ inHand: `${rack.id}/${id}` });
  startEditing(rack.id, id);
}

function takeOut(rack: Rack, { id, name }: EmbeddedFinish, isEmbedded: boolean): void {
  endStep();
  editRacks((all) => all.map((one) => (one.id === rack.id ? removeFinish(one, id) : one)));
  endStep();
  toTheSpoons();
  sayDone(
    `${name} is off ${rack.name}.${isEmbedded ? ' This build holds it still, and wears it as before.' : ''}`,
  );
}
