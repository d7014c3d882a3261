/**
 * A row of spoons to pick from: the part's candidates first, then what else the build holds.
 * Radio buttons underneath, so arrow keys try one spoon after the other.
 */
import { useId, useState } from 'react';
import {
  type Build,
  type EmbeddedFinish,
  type FinishRef,
  finishesByRef,
  isOpen,
  type Part,
  refOf,
} from '../../build/build.ts';
import { bottlesOf } from '../../finish/finish.ts';
import { kindOf, lookOf } from '../pieces/look.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { carries } from './carrying.ts';

/** More spoons than this are searched rather than scanned. */
const mostShown = 48;

interface SpoonRackProps {
  readonly build: Build;
  readonly part: Part;
  readonly chosen: FinishRef;
  readonly onChoose: (ref: FinishRef) => void;
}

/** Candidates, and on demand every other finish of the build. */
export function SpoonRack({ build, part, chosen, onChoose }: SpoonRackProps) {
  const name = useId();
  const [sought, setSought] = useState('');
  const finishes = finishesByRef(build);
  const own = isOpen(part) ? part.candidates : [part.finish];
  const candidates = [...new Set([...own, chosen])].flatMap((ref) => finishes.get(ref) ?? []);
  const isCandidate = new Set(candidates.map(refOf));
  const others = build.finishes.filter((finish) => !isCandidate.has(refOf(finish)));
  const matching = others.filter((finish) =>
    finish.name.toLowerCase().includes(sought.trim().toLowerCase()),
  );
  const spoons = (list: readonly EmbeddedFinish[]) => (
    <div className="rack">
      {list.map((finish) => (
        <label key={refOf(finish)} {...carries(refOf(finish))}>
          <input
            type="radio"
            name={name}
            checked={refOf(finish) === chosen}
            onChange={() => onChoose(refOf(finish))}
          />
          <Spoon finish={finish} light={build.viewing.light} note={noteOf(finish, build)} />
        </label>
      ))}
    </div>
  );
  return (
    <fieldset className="racks">
      <legend className="unseen">Finish of {part.name}</legend>
      {spoons(candidates)}
      {others.length === 0 ? null : (
        <details>
          <summary>
            {others.length} more {others.length === 1 ? 'finish' : 'finishes'} in this build
          </summary>
          {others.length > 12 ? (
            <label className="seek">
              Find by name{' '}
              <input
                type="search"
                value={sought}
                onChange={({ currentTarget }) => setSought(currentTarget.value)}
              />
            </label>
          ) : null}
          {spoons(matching.slice(0, mostShown))}
          {matching.length > mostShown ? (
            <p className="quiet">
              The first {mostShown} of {matching.length}; find others by name.
            </p>
          ) : null}
        </details>
      )}
    </fieldset>
  );
}

/** Kind of finish, and whether anything for it is to be bought. */
function noteOf(finish: EmbeddedFinish, build: Build): string {
  const kind = kindOf(finish, lookOf(finish, build.viewing.light));
  return bottlesOf(finish).some(({ onHand }) => !onHand) ? `${kind}; to buy` : kind;
}
