/** Where an alternative is named on the page: its name opens its card, arrow keys with Shift move it. */
import type { KeyboardEvent } from 'react';
import { moveAlternative } from '../../build/edit/alternative.ts';
import type { Staged } from '../onStage.ts';
import { lay } from '../overlay/overlay.ts';
import { Letter } from '../pieces/Letter.tsx';
import { edit, endStep } from '../store.ts';
import './names.css';

/** Letter and name; `isMovable` where the arrow keys may change the order. */
export function AlternativeName({
  staged: { alternative, letter, at },
  isMovable = false,
}: {
  readonly staged: Staged;
  readonly isMovable?: boolean;
}) {
  const move = (event: KeyboardEvent<HTMLElement>): void => {
    const way = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (way === undefined || !event.shiftKey) return;
    event.preventDefault();
    const isMirrored = getComputedStyle(event.currentTarget).direction === 'rtl';
    endStep();
    edit((build) => moveAlternative(build, alternative.id, at + (isMirrored ? -way : way)));
  };
  return (
    <button
      type="button"
      className="alternative-name"
      aria-haspopup="dialog"
      title={`Name, note and place${isMovable ? '; Shift with an arrow key moves it' : ''}`}
      onClick={() => lay({ kind: 'alternative', alternative: alternative.id })}
      {...(isMovable && {
        onKeyDown: move,
        'aria-keyshortcuts': 'Shift+ArrowLeft Shift+ArrowRight',
      })}
    >
      <Letter letter={letter} /> <bdi>{alternative.name}</bdi>
    </button>
  );
}
