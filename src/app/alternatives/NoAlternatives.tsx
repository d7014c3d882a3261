/** What stands on the stage while there is nothing to compare: what an alternative is, and the first. */
import { add } from './moving.ts';

/** The invitation. */
export const NoAlternatives = () => (
  <div className="no-alternatives">
    <h2>Nothing to compare yet</h2>
    <p>An alternative is the whole car in one choice of finishes. Two of them make a comparison.</p>
    <button type="button" className="button button-strong" onClick={() => add()}>
      Add the first alternative
    </button>
  </div>
);
