/**
 * Would one see the difference? Another alternative stands in this one's place for as long as its
 * letter is held; the eye catches a change in place that it misses side by side. By mouse, finger,
 * Space or Enter; software that can only press switches it on and off. The letters of a car are one
 * stop for Tab; arrow keys go from one to the next.
 */
import { type KeyboardEvent, type SyntheticEvent, useState } from 'react';
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
  const [stop, setStop] = useState(0);
  const own = alternatives.findIndex(({ id }) => id === alternative);
  const others = alternatives
    .map(({ id }, at) => ({ id, at, letter: letterOf(at) }))
    .filter(({ at }) => at !== own)
    .sort((one, other) => Math.abs(one.at - own) - Math.abs(other.at - own))
    .slice(0, mostLetters)
    .sort((one, other) => one.at - other.at);
  if (others.length === 0) return null;
  const stopAt = Math.min(stop, others.length - 1);
  return (
    <div
      className="blink"
      role="toolbar"
      aria-label={`Others in the place of ${letter}`}
      onKeyDown={(event) => {
        const next = nextStop(event, stopAt, others.length);
        if (next === undefined) return;
        event.preventDefault();
        setStop(next);
        event.currentTarget.querySelectorAll('button')[next]?.focus();
      }}
    >
      <span aria-hidden="true">Hold to see</span>
      {others.map((other, index) => (
        <Hold
          key={other.id}
          shown={other.id}
          at={alternative}
          letter={other.letter}
          own={letter}
          isStop={index === stopAt}
          onFocus={() => setStop(index)}
        />
      ))}
    </div>
  );
}

/** Where an arrow key leads from the letter at `at`, counted from 0; undefined for any other key. */
function nextStop({ key, currentTarget }: KeyboardEvent, at: number, count: number) {
  const isRtl = getComputedStyle(currentTarget).direction === 'rtl';
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: isRtl ? -1 : 1,
    ArrowLeft: isRtl ? 1 : -1,
    Home: -at,
    End: count - 1 - at,
  };
  const step = steps[key];
  return step === undefined ? undefined : (at + step + count) % count;
}

interface HoldProps {
  readonly shown: string;
  readonly at: string;
  readonly letter: string;
  readonly own: string;
  /** Whether Tab stops here. */
  readonly isStop: boolean;
  readonly onFocus: () => void;
}

const presses = ({ key }: KeyboardEvent): boolean => key === ' ' || key === 'Enter';

function Hold({ shown, at, letter, own, isStop, onFocus }: HoldProps) {
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
      tabIndex={isStop ? 0 : -1}
      onFocus={onFocus}
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
