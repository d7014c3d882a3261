/**
 * Which finish is it to be? Every finish of the build and of all racks, found by words, by what is
 * on hand or by nearness to a colour, as spoons in rows. Picking one hands it on with its rack; one
 * that is missed can be made here, and is picked at once.
 */
import { useId, useMemo, useState } from 'react';
import { type EmbeddedFinish, type FinishRef, refOf } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { useRacks, useWork } from '../store.ts';
import { finishesToPick } from './finishes.ts';
import { useFound } from './found.ts';
import { MakeFinish } from './MakeFinish.tsx';
import './picker.css';
import { SpoonRows } from './SpoonRows.tsx';
import { countOf } from './told.ts';
import { paintOfColour, questionOf, typedFrom } from './typed.ts';

interface FinishPickerProps {
  readonly label: string;
  readonly light: LightId;
  readonly chosen?: FinishRef;
  /** False where only what is there can be meant. */
  readonly canMake?: boolean;
  readonly onPick: (finish: EmbeddedFinish) => void;
}

/** Two spoons beside each other in a panel along the edge, three where there is room. */
const narrowestRem = 13.5;

/** A search with spoons to pick from. */
export function FinishPicker(props: FinishPickerProps) {
  const { label, light, chosen, canMake = true, onPick } = props;
  const id = useId();
  const [text, setText] = useState('');
  const [isOnHand, setOnHand] = useState(false);
  const [isNear, setNear] = useState(false);
  const { finishes: built } = useWork().build;
  const racks = useRacks();
  const finishes = useMemo(() => finishesToPick(racks ?? [], built), [racks, built]);
  const { words, srgb } = useMemo(() => typedFrom(text), [text]);
  const worn = useMemo(
    () => finishes.find((finish) => refOf(finish) === chosen),
    [finishes, chosen],
  );
  const [besides, setBesides] = useState<EmbeddedFinish>();
  const near = useMemo(
    () => (srgb === undefined ? (isNear ? besides : undefined) : paintOfColour(srgb)),
    [srgb, isNear, besides],
  );
  const wanted = useMemo(
    () => ({ words, ...(isOnHand && { stock: 'on hand' as const }) }),
    [words, isOnHand],
  );
  const found = useFound(finishes, wanted, near, light);
  return (
    <fieldset className="picker">
      <legend className="unseen">{label}</legend>
      <div className="picker-asked">
        <label className="unseen" htmlFor={id}>
          Find by words, or near a colour like #b87333
        </label>
        <input
          id={id}
          type="search"
          className="entry"
          placeholder="Words, or a colour like #b87333"
          value={text}
          onChange={({ currentTarget }) => setText(currentTarget.value)}
        />
        <label className="tick">
          <input
            type="checkbox"
            checked={isOnHand}
            onChange={({ currentTarget }) => setOnHand(currentTarget.checked)}
          />
          On hand
        </label>
        {worn === undefined && !isNear ? null : (
          <label className="tick">
            <input
              type="checkbox"
              checked={isNear}
              onChange={({ currentTarget }) => {
                // It stays with what was worn then: trying another must not sort them anew.
                setBesides(worn);
                setNear(currentTarget.checked);
              }}
            />
            Nearest to {(isNear ? besides : worn)?.name} first
          </label>
        )}
      </div>
      <div className="picker-found">
        <p className="picker-count" role="status">
          {found.finishes.length === 0
            ? `Nothing has all of that; take a word away${canMake ? ', or make it' : ''}.`
            : countOf(found.finishes.length)}
          {found.finishes.length === 0 || near === undefined
            ? ''
            : `, nearest to ${near.name} first`}
          {racks === undefined ? '; the racks are on their way' : ''}
        </p>
        {canMake ? <MakeFinish typed={text} found={found} onMade={onPick} /> : null}
      </div>
      {found.finishes.length === 0 ? null : (
        <SpoonRows
          label={label}
          found={found}
          asked={questionOf(wanted, near)}
          light={light}
          chosen={chosen}
          narrowestRem={narrowestRem}
          onPick={onPick}
        />
      )}
    </fieldset>
  );
}
