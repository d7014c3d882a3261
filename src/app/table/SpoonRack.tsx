/**
 * A row of spoons to pick from: the part's candidates first, then every other finish there is, in
 * the build or on a rack. Radio buttons underneath, so arrow keys try one candidate after the other.
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
import { later } from '../later.tsx';
import { kindOf, lookOf } from '../pieces/look.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { useRacks } from '../store.ts';
import { carries } from './carrying.ts';

const FinishPicker = later(
  'The spoons',
  async () => (await import('../rack/FinishPicker.tsx')).FinishPicker,
  { meanwhile: 'The spoons are on their way.' },
);

interface SpoonRackProps {
  readonly build: Build;
  readonly part: Part;
  readonly chosen: FinishRef;
  readonly onChoose: (finish: EmbeddedFinish) => void;
}

/** Candidates, and on demand every other finish of the build and the racks. */
export function SpoonRack({ build, part, chosen, onChoose }: SpoonRackProps) {
  const name = useId();
  const [isUnfolded, setUnfolded] = useState(false);
  // As they were when the spoons came out: what is tried from elsewhere moves none of them.
  const [first] = useState(() => [
    ...new Set([...(isOpen(part) ? part.candidates : [part.finish]), chosen]),
  ]);
  const finishes = finishesByRef(build);
  const candidates = first.flatMap((ref) => finishes.get(ref) ?? []);
  return (
    <>
      <fieldset className="racks">
        <legend className="unseen">Finish of {part.name}</legend>
        <div className="rack">
          {candidates.map((finish) => (
            <label key={refOf(finish)} {...carries(finish)}>
              <input
                type="radio"
                name={name}
                checked={refOf(finish) === chosen}
                onChange={() => onChoose(finish)}
              />
              <Spoon finish={finish} light={build.viewing.light} note={noteOf(finish, build)} />
            </label>
          ))}
        </div>
      </fieldset>
      <details
        className="racks racks-all"
        onToggle={({ currentTarget }) => setUnfolded(currentTarget.open)}
      >
        <summary>{useMore(build, first.length)}</summary>
        {isUnfolded ? (
          <FinishPicker
            label={`Any finish for ${part.name}`}
            light={build.viewing.light}
            chosen={chosen}
            onPick={onChoose}
          />
        ) : null}
      </details>
    </>
  );
}

/** How many more there are to choose from, and where. */
function useMore(build: Build, shown: number): string {
  const racks = useRacks() ?? [];
  const more = Math.max(0, build.finishes.length - shown);
  const here = `${more} more ${more === 1 ? 'finish' : 'finishes'} in this build`;
  return racks.some(({ finishes }) => finishes.length > 0) ? `${here}, and all racks` : here;
}

/** Kind of finish, and whether anything for it is to be bought. */
function noteOf(finish: EmbeddedFinish, build: Build): string {
  const kind = kindOf(finish, lookOf(finish, build.viewing.light));
  return bottlesOf(finish).some(({ onHand }) => !onHand) ? `${kind}; to buy` : kind;
}
