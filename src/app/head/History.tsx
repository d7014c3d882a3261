/** Undo and redo, by button and by the usual keys. */
import { useEffect } from 'react';
import { redo, undo, useHistory } from '../store.ts';

/** Whether a text field is being typed in, which keeps its own undo. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && ['search', 'text'].includes(target.type);

function onKey(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
  const key = event.key.toLowerCase();
  const wanted = key === 'z' ? (event.shiftKey ? redo : undo) : key === 'y' ? redo : undefined;
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
