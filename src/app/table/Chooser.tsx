/**
 * The spoons for one cell: choosing changes the car at once, and the rest of the bench stays in
 * sight. A native dialog, so that Escape closes it and the focus goes back to the cell.
 */
import { useEffect, useRef } from 'react';
import { assignmentOf, isOpen, letterOf, type Part } from '../../build/build.ts';
import { pointNowhere } from '../pointing.ts';
import { chooseFrom, useWork } from '../store.ts';
import { stopChoosing, useChoosing } from './choosing.ts';
import { bringIntoSight, placeBeside } from './place.ts';
import { SpoonRack } from './SpoonRack.tsx';

/** The dialog with the spoons; empty while nothing is being chosen. */
export function Chooser() {
  const { build } = useWork();
  const { cell, from } = useChoosing();
  const dialog = useRef<HTMLDialogElement>(null);
  const part = build.parts.find(({ id }) => id === cell?.part);
  const at = build.alternatives.findIndex(({ id }) => id === cell?.alternative);
  const alternative = build.alternatives[at];
  const isChoosing = part !== undefined && alternative !== undefined;
  const alternativeId = isChoosing ? alternative.id : undefined;

  useEffect(() => {
    const element = dialog.current;
    if (element === null) return;
    if (alternativeId === undefined) {
      element.close();
      return;
    }
    if (!element.open) element.showModal();
    if (from !== undefined) placeBeside(element, from);
    element.querySelector<HTMLInputElement>('input:checked')?.focus({ preventScroll: true });
    // The cars are seen as they are while spoons are tried.
    pointNowhere();
    return bringIntoSight(alternativeId);
  }, [alternativeId, from]);

  useEffect(() => {
    const element = dialog.current;
    // Only a press that began beside the spoons closes them: the click that follows the finger
    // which opened them lands there too.
    let hasBegun = false;
    const begin = ({ target }: Event): void => {
      hasBegun = target === element;
    };
    const press = ({ target }: Event): void => {
      if (target === element && hasBegun) element?.close();
      hasBegun = false;
    };
    element?.addEventListener('pointerdown', begin);
    element?.addEventListener('click', press);
    return () => {
      element?.removeEventListener('pointerdown', begin);
      element?.removeEventListener('click', press);
    };
  }, []);

  useEffect(() => {
    const element = dialog.current;
    const inside = element?.firstElementChild;
    if (element === null || inside == null || from === undefined) return;
    // More spoons unfolded need another place, also those that arrive later.
    const watching = new ResizeObserver(() => placeBeside(element, from));
    watching.observe(inside);
    return () => watching.disconnect();
  }, [from]);

  return (
    <dialog ref={dialog} className="chooser" aria-labelledby="chooser-title" onClose={stopChoosing}>
      {isChoosing ? (
        <div className="chooser-inside">
          <header>
            <h2 id="chooser-title">
              <bdi>{part.name}</bdi> on {letterOf(at)}
            </h2>
            <button type="button" className="button" onClick={() => dialog.current?.close()}>
              Done
            </button>
          </header>
          <Standing part={part} />
          <SpoonRack
            key={`${alternative.id}/${part.id}`}
            build={build}
            part={part}
            chosen={assignmentOf(build, alternative).get(part.id) ?? ''}
            onChoose={(finish) => chooseFrom(alternative.id, part.id, finish)}
          />
        </div>
      ) : null}
    </dialog>
  );
}

/** What changing this part would mean, where that is more than picking a spoon. */
function Standing({ part }: { part: Part }) {
  if (isOpen(part)) return null;
  return (
    <p className="chooser-standing">
      {part.painted
        ? 'This part is painted already: another finish means stripping it first.'
        : 'This part is settled: another finish here departs from that on this alternative only.'}
    </p>
  );
}
