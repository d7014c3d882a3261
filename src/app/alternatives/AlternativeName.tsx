/** Where an alternative is named on the page: its name opens its card, arrow keys with Shift move it. */
import type { KeyboardEvent } from 'react';
import type { Staged } from '../onStage.ts';
import { lay } from '../overlay/overlay.ts';
import { Letter } from '../pieces/Letter.tsx';
import './names.css';

/** Letter and name. */
export function AlternativeName({
  staged: { alternative, letter, at },
}: {
  readonly staged: Staged;
}) {
  const move = (event: KeyboardEvent<HTMLElement>): void => {
    const way = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (way === undefined || !event.shiftKey) return;
    event.preventDefault();
    const isMirrored = getComputedStyle(event.currentTarget).direction === 'rtl';
    const to = at + (isMirrored ? -way : way);
    void import('./moving.ts').then(({ moveTo }) => moveTo(alternative.id, to));
  };
  return (
    <button
      type="button"
      className="alternative-name"
      aria-haspopup="dialog"
      title={`${alternative.name}: name, note and place; Shift with an arrow key moves it`}
      onClick={() => lay({ kind: 'alternative', alternative: alternative.id })}
      onKeyDown={move}
      aria-keyshortcuts="Shift+ArrowLeft Shift+ArrowRight"
    >
      <Letter letter={letter} /> <bdi>{alternative.name}</bdi>
    </button>
  );
}
