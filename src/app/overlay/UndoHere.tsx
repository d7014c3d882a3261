/** Undo within a dialog, which covers the one in the head: as far back as when it was opened. */
import { useState } from 'react';
import { undo, useHistory } from '../store.ts';

/** A button that takes back, one by one, what was changed since it was first shown. */
export function UndoHere() {
  const steps = useHistory(({ pastStates }) => pastStates.length);
  const [before] = useState(steps);
  return (
    <button type="button" className="button" disabled={steps <= before} onClick={undo}>
      Undo
    </button>
  );
}
