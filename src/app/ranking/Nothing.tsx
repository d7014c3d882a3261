/** Why there is nothing to rank, and the ways to what would mend it. */
import type { Build } from '../../build/build.ts';
import type { Problem } from '../../ground/problem.ts';
import type { RuleCosts } from '../../ranking/answer/price.ts';
import { goTo } from '../area.ts';
import { goToHeading } from '../commands/go.ts';
import { lay } from '../overlay/overlay.ts';
import { Costs } from './Beneath.tsx';

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

/** Rules any one of which frees the way; or that no single one does. */
function WaysOut({ build, costs }: { build: Build; costs: RuleCosts }) {
  const freeing = costs.rules.filter(({ kind }) => kind === 'frees');
  if (freeing.length > 0) return <Costs build={build} costs={{ ...costs, rules: freeing }} />;
  return costs.rules.length < build.rules.length ? null : (
    <p className="ranking-problems">Taking out one rule alone is not enough.</p>
  );
}

interface RefusedProps {
  readonly build: Build;
  readonly problems: readonly Problem[];
  /** Which rules stand in the way, once that is known. */
  readonly costs: RuleCosts | undefined;
}

/** A box in the place of the rows. */
export const Refused = ({ build, problems, costs }: RefusedProps) => (
  <section className="clash ranking-refused" aria-labelledby="ranking-refused">
    <h3 id="ranking-refused">Nothing can be ranked as it stands</h3>
    <div role="status" className="ranking-problems">
      {problems.map((problem) => (
        <p key={`${problem.place} ${problem.found}`}>
          Found {problem.found}; expected {problem.expected}. {problem.mend}
        </p>
      ))}
    </div>
    {costs === undefined ? null : <WaysOut build={build} costs={costs} />}
    <div className="buttons">
      <button type="button" className="button" onClick={() => goToHeading('rules-title')}>
        To the rules
      </button>
      <button type="button" className="button" onClick={() => lay({ kind: 'parts', asks: 'open' })}>
        To the open parts…
      </button>
    </div>
  </section>
);
