/**
 * Would one see the difference? Another alternative stands in this one's place for as long as its
 * letter is held; the eye catches a change in place that it misses side by side. By mouse, finger,
 * Space or Enter; software that can only press switches it on and off.
 */
import type { KeyboardEvent, SyntheticEvent } from 'react';
import { letterOf } from '../../../build/build.ts';
import { standDown, standIn, useViewing } from '../../live/viewing.ts';
import { useWork } from '../../store.ts';

/** Of many alternatives only the nearest get a letter here; the keyboard has them all. */
const mostLetters = 5;

interface BlinkProps {
  readonly alternative: string;
  readonly letter: string;
}

/** A letter to hold for every other alternative. */
export function Blink({ alternative, letter }: BlinkProps) {
  const { alternatives } = useWork().build;
  const own = alternatives.findIndex(({ id }) => id === alternative);
  const others = alternatives
    .map(({ id }, at) => ({ id, at, letter: letterOf(at) }))
    .filter(({ at }) => at !== own)
    .sort((one, other) => Math.abs(one.at - own) - Math.abs(other.at - own))
    .slice(0, mostLetters)
    .sort((one, other) => one.at - other.at);
  if (others.length === 0) return null;
  return (
    <div className="blink">
      <span aria-hidden="true">Hold to see</span>
      {others.map((other) => (
        <Hold key={other.id} shown={other.id} at={alternative} letter={other.letter} own={letter} />
      ))}
    </div>
  );
}

interface HoldProps {
  readonly shown: string;
  readonly at: string;
  readonly letter: string;
  readonly own: string;
}

const presses = ({ key }: KeyboardEvent): boolean => key === ' ' || key === 'Enter';

function Hold({ shown, at, letter, own }: HoldProps) {
  const isHeld = useViewing(({ standIn: now }) => now?.shown === shown && now.at === at);
  const hold = (): void => standIn(shown, at);
  const release = (): void => {
    const now = useViewing.getState().standIn;
    if (now?.shown === shown && now.at === at) standDown();
  };
  const still = (event: SyntheticEvent): void => event.preventDefault();
  return (
    <button
      type="button"
      className="small-button"
      aria-pressed={isHeld}
      aria-label={`Hold to see ${letter} in the place of ${own}`}
      title={`Hold to see ${letter} here`}
      onPointerDown={({ button }) => {
        if (button === 0) hold();
      }}
      onPointerUp={release}
      onPointerCancel={release}
      onPointerLeave={release}
      onLostPointerCapture={release}
      onKeyDown={(event) => {
        if (!presses(event)) return;
        event.preventDefault();
        if (!event.repeat) hold();
      }}
      onKeyUp={(event) => {
        if (!presses(event)) return;
        event.preventDefault();
        release();
      }}
      onBlur={release}
      onClick={({ detail }) => {
        if (detail === 0) isHeld ? release() : hold();
      }}
      onContextMenu={still}
      onDragStart={still}
    >
      {letter}
    </button>
  );
}
