/** What to do where there is nothing to rank. */
import { goTo } from '../area.ts';
import { lay } from '../overlay/overlay.ts';

/** How parts are left open, with the way there. */
export const NothingOpen = () => (
  <div className="ranking-none">
    <p>
      Nothing is left open yet. Leave at least one part open and give it two candidates or more;
      then every combination of them is judged, and the best come first.
    </p>
    <div className="buttons">
      <button
        type="button"
        className="button button-strong"
        onClick={() => lay({ kind: 'parts', asks: 'open' })}
      >
        Leave parts open…
      </button>
      <button type="button" className="button" onClick={() => goTo('bench')}>
        Back to the bench
      </button>
    </div>
  </div>
);
