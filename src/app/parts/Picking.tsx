/** A button that unfolds the spoons of the build and all racks, fetched when they are first wanted. */
import { useId, useState } from 'react';
import type { EmbeddedFinish, FinishRef } from '../../build/build.ts';
import { later } from '../later.tsx';
import { useWork } from '../store.ts';

const FinishPicker = later(
  'The spoons',
  async () => (await import('../rack/FinishPicker.tsx')).FinishPicker,
  { meanwhile: 'The spoons are on their way.' },
);

interface PickingProps {
  /** What the button says. */
  readonly words: string;
  /** What the spoons are for. */
  readonly label: string;
  readonly chosen?: FinishRef;
  readonly isDisabled?: boolean;
  /** Laid out from the first. */
  readonly isLaidOut?: boolean;
  readonly onPick: (finish: EmbeddedFinish) => void;
}

/** Spoons on request; they stay laid out, so that one after the other can be tried. */
export function Picking(props: PickingProps) {
  const { words, label, chosen, isDisabled = false, isLaidOut = false, onPick } = props;
  const { light } = useWork().build.viewing;
  const [isUnfolded, setUnfolded] = useState(isLaidOut);
  const id = useId();
  const isShown = isUnfolded && !isDisabled;
  return (
    <>
      <button
        type="button"
        className="button picking"
        disabled={isDisabled}
        aria-expanded={isShown}
        aria-controls={id}
        onClick={() => setUnfolded(!isUnfolded)}
      >
        {isShown ? 'Put the spoons away' : words}
      </button>
      <div id={id} hidden={!isShown}>
        {isShown ? (
          <FinishPicker
            label={label}
            light={light}
            onPick={onPick}
            {...(chosen !== undefined && { chosen })}
          />
        ) : null}
      </div>
    </>
  );
}
