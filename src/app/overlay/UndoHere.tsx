/** Undo within a dialog, which covers the one in the head. It never goes back to other work. */
import { undo, useHistory, useWork } from '../store.ts';

/** A button that takes back the last change of the open build or of the racks, one by one. */
export function UndoHere() {
  const { key } = useWork();
  const isOwn = useHistory(({ pastStates }) => pastStates.at(-1)?.work?.key === key);
  return (
    <button type="button" className="button" disabled={!isOwn} onClick={undo}>
      Undo
    </button>
  );
}
