/**
 * Which finish is it to be? Every finish of the build and of all racks, found by words, as spoons
 * in rows. Picking one hands it on with the id of its rack.
 */
import { useId, useMemo, useState } from 'react';
import { type EmbeddedFinish, type FinishRef, refOf } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { useRacks, useWork } from '../store.ts';

interface FinishPickerProps {
  readonly label: string;
  readonly light: LightId;
  readonly chosen?: FinishRef;
  readonly onPick: (finish: EmbeddedFinish) => void;
}

const mostShown = 48;

/** A search with spoons to pick from. */
export function FinishPicker({ label, light, chosen, onPick }: FinishPickerProps) {
  const id = useId();
  const [sought, setSought] = useState('');
  const finishes = useFinishes();
  const words = sought.toLowerCase().split(/\s+/);
  const matching = finishes.filter(({ name }) =>
    words.every((word) => name.toLowerCase().includes(word)),
  );
  return (
    <fieldset className="racks">
      <legend className="unseen">{label}</legend>
      <label className="seek" htmlFor={id}>
        Find{' '}
        <input
          id={id}
          type="search"
          value={sought}
          onChange={({ currentTarget }) => setSought(currentTarget.value)}
        />
      </label>
      <div className="rack">
        {matching.slice(0, mostShown).map((finish) => (
          <label key={refOf(finish)}>
            <input
              type="radio"
              name={`${id}-finish`}
              checked={refOf(finish) === chosen}
              onChange={() => onPick(finish)}
            />
            <Spoon finish={finish} light={light} />
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** Finishes of the build, then of the racks what the build does not hold. */
function useFinishes(): readonly EmbeddedFinish[] {
  const { finishes } = useWork().build;
  const racks = useRacks();
  return useMemo(() => {
    const shelved = (racks ?? []).flatMap((rack) =>
      rack.finishes.map((finish): EmbeddedFinish => ({ rack: rack.id, ...finish })),
    );
    return [...new Map([...shelved, ...finishes].map((one) => [refOf(one), one])).values()];
  }, [racks, finishes]);
}
