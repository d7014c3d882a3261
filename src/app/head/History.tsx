/** Undo, redo and saving, by button and by the usual keys. */
import { useEffect } from 'react';
import { saveWork } from '../opening/save.ts';
import { redo, undo, useHistory } from '../store.ts';
import { isTyping } from './typing.ts';

function actionOf({ key, shiftKey, target }: KeyboardEvent): (() => void) | undefined {
  const letter = key.toLowerCase();
  if (letter === 's') return shiftKey ? undefined : () => void saveWork();
  if (isTyping(target)) return undefined;
  if (letter === 'z') return shiftKey ? redo : undo;
  return letter === 'y' ? redo : undefined;
}

function onKey(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const wanted = actionOf(event);
  if (wanted === undefined) return;
  event.preventDefault();
  wanted();
}

/** The two buttons; the keys work anywhere on the page. */
export function History() {
  const undoable = useHistory(({ pastStates }) => pastStates.length);
  const redoable = useHistory(({ futureStates }) => futureStates.length);
  useEffect(() => {
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
  return (
    <>
      <button
        type="button"
        className="button"
        disabled={undoable === 0}
        onClick={undo}
        title="Undo (Ctrl or ⌘ and Z)"
      >
        Undo
      </button>
      <button
        type="button"
        className="button"
        disabled={redoable === 0}
        onClick={redo}
        title="Redo (Shift, Ctrl or ⌘ and Z)"
      >
        Redo
      </button>
    </>
  );
}
