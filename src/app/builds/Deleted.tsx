/** In the place of a build that was deleted just now: what was done, and the way back. */
import { useEffect, useRef } from 'react';
import type { Kept } from '../keeping/store/builds.ts';
import { restoreBuild } from './act.ts';

/** As long as the list is open. */
export function Deleted({ deleted }: { deleted: Kept }) {
  const back = useRef<HTMLButtonElement>(null);
  // The button that was pressed has gone with the line.
  useEffect(() => back.current?.focus(), []);
  return (
    <li className="builds-line builds-deleted">
      <p role="status">
        <bdi>{deleted.card.name}</bdi> was deleted.
      </p>
      <button
        ref={back}
        type="button"
        className="button"
        onClick={() => void restoreBuild(deleted)}
      >
        Undo
      </button>
    </li>
  );
}
