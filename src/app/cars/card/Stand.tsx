/**
 * The place where a live car stands, as a control: hands and keys on it move the one camera. While
 * a drawing stands there it is no control, since a drawing cannot be turned.
 */
import { useViewing } from '../../live/viewing.ts';

/** Id of the words that say what hands and keys do on a stand. */
const standHintId = 'stand-hint';

interface StandProps {
  readonly alternative: string;
  readonly letter: string;
}

/** Arrow keys go to the stand itself, also while a screen reader listens. */
const turning = (letter: string) =>
  ({
    role: 'application',
    'aria-label': `Car ${letter}, to be turned`,
    'aria-describedby': standHintId,
    tabIndex: 0,
  }) as const;

/** The stand of one alternative. */
export function Stand({ alternative, letter }: StandProps) {
  const isLive = useViewing(({ liveness }) => liveness === 'live');
  if (!isLive) return <div className="stand" data-stand={alternative} />;
  return <div className="stand" data-stand={alternative} {...turning(letter)} />;
}

interface StandHintProps {
  /** What a press does besides. */
  readonly press: string;
}

/** What hands and keys do on a stand, for those who come to it by keyboard. */
export const StandHint = ({ press }: StandHintProps) => (
  <p id={standHintId} className="unseen">
    Drag or arrow keys turn all cars; plus and minus bring them closer and take them away; Home goes
    back to the front; {press}.
  </p>
);

const closer = 1.3;

/** Closer, farther and the whole car, for hands without wheel, keys or a second finger. */
export function Steer() {
  const steer = useViewing((viewing) => viewing.steer);
  const isLive = useViewing(({ liveness }) => liveness === 'live');
  const isTrueSize = useViewing((viewing) => viewing.isTrueSize);
  if (steer === undefined || !isLive || isTrueSize) return null;
  return (
    <div className="steer">
      <button
        type="button"
        className="small-button"
        aria-label="Cars farther away"
        title="Farther away"
        onClick={() => steer.zoom(1 / closer)}
      >
        −
      </button>
      <button
        type="button"
        className="small-button"
        aria-label="Cars closer"
        title="Closer"
        onClick={() => steer.zoom(closer)}
      >
        +
      </button>
      <button type="button" className="small-button" onClick={steer.stepBack}>
        Whole car
      </button>
    </div>
  );
}
