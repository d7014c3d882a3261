/** The line beneath the cars: letters to move along them, what hands and keys do, what is missing. */
import { type RefObject, useState } from 'react';
import { letterOf } from '../../build/build.ts';
import { OnStage } from '../alternatives/OnStage.tsx';
import { type Liveness, useViewing } from '../live/viewing.ts';
import { lay } from '../overlay/overlay.ts';
import { useWork } from '../store.ts';
import { useLetterKeys } from './card/keys.ts';
import { StandHint } from './card/Stand.tsx';
import { Letters } from './Letters.tsx';

/** Why there are drawings, where there could be cars. */
const reasons: Readonly<Partial<Record<Liveness, string>>> = {
  impossible: 'This browser shows drawings; 3D needs WebGL 2.',
  unfetched: 'The 3D car did not arrive; these are drawings.',
  lost: 'The 3D picture was lost; drawings stand in until it is back.',
};

/** `A, B or C`; of many only the ends. */
function lettersOf(count: number): string {
  const last = letterOf(Math.min(count, 26) - 1);
  if (count === 2) return `A or ${last}`;
  return count === 3 ? `A, B or ${last}` : `a letter from A to ${last}`;
}

/** The foot of the stage. */
export function Foot({ strip }: { strip: RefObject<HTMLElement | null> }) {
  const { alternatives } = useWork().build;
  const liveness = useViewing((viewing) => viewing.liveness);
  const [hasKeys, setKeys] = useState(true);
  useLetterKeys(hasKeys);
  const reason = reasons[liveness];
  return (
    <div className="stage-foot">
      <Letters strip={strip} />
      <OnStage />
      {reason === undefined ? null : <p>{reason}</p>}
      {liveness === 'live' ? (
        <>
          <StandHint press="press a part to choose its spoon" />
          <p className="for-mouse">Drag a car to turn them all.</p>
        </>
      ) : null}
      {alternatives.length < 2 ? null : (
        <p className="for-mouse">
          {hasKeys ? `Hold ${lettersOf(alternatives.length)} to see it in every place. ` : ''}
          <button type="button" className="text-button" onClick={() => setKeys(!hasKeys)}>
            {hasKeys ? 'Switch these keys off' : 'Switch the letter keys on'}
          </button>
        </p>
      )}
      <p className="for-mouse">
        <button
          type="button"
          className="text-button"
          onClick={() => lay({ kind: 'commands', isKeys: true })}
        >
          All keys
        </button>
      </p>
    </div>
  );
}
