/** Beneath the rows: what each rule costs, and what the numbers rest on. */
import type { Build } from '../../build/build.ts';
import type { RuleCosts } from '../../ranking/answer/price.ts';
import { priceSentence } from '../../ranking/answer/priced.ts';
import { takeOut } from '../rules/RuleRow.tsx';
import { Sentence } from '../rules/Sentence.tsx';
import '../rules/rules.css';
import type { Answer } from './search.ts';

interface CostsProps {
  readonly build: Build;
  readonly costs: RuleCosts;
  /** The build has changed since: numbers of rules may have moved. */
  readonly isStale?: boolean;
}

/** Rule by rule, the best with it against the best without it. */
export const Costs = ({ build, costs, isStale = false }: CostsProps) => (
  <ol className="rules ranking-costs">
    {costs.rules.map((cost) => (
      <li key={cost.rule} className="rule">
        <span className="rule-number" aria-hidden="true">
          {cost.rule + 1}
        </span>
        <div className="rule-told">
          <p className="rule-sentence">
            <Sentence rule={build.rules[cost.rule]!} />
          </p>
          <p className={cost.kind === 'free' ? 'quiet' : undefined}>
            {priceSentence(build, cost, costs)}
          </p>
        </div>
        <div className="rule-tools">
          <button
            type="button"
            className="text-button"
            disabled={isStale}
            onClick={() => {
              takeOut(cost.rule);
              // This list is made anew; what changes first stands at the top.
              document.getElementById('ranking-title')?.focus();
            }}
          >
            Take out<span className="unseen"> rule {cost.rule + 1}</span>
          </button>
        </div>
      </li>
    ))}
  </ol>
);

interface BeneathProps {
  readonly answer: Answer;
  readonly isStale: boolean;
}

/** Prices once they are known, what would be best under other weights, then limits. */
export function Beneath({ answer: { question, about }, isStale }: BeneathProps) {
  const { build } = question;
  const { costs, unbeaten } = about;
  return (
    <>
      {build.rules.length === 0 || costs === undefined ? null : (
        <section aria-labelledby="ranking-costs">
          <h3 id="ranking-costs" className="section-title">
            What each rule costs
            <small>the best with all rules against the best without this one</small>
          </h3>
          <Costs build={build} costs={costs} isStale={isStale} />
        </section>
      )}
      {unbeaten === undefined || unbeaten.sentence === '' ? null : (
        <section aria-labelledby="ranking-weighed">
          <h3 id="ranking-weighed" className="section-title">
            However you weigh it
          </h3>
          <p className="ranking-limits">{unbeaten.sentence}</p>
        </section>
      )}
      <p className="quiet ranking-limits">
        Each overall is that of the score sheet, proved to 0.001 point where it says proved. Colours
        and sheens are as stated, not measured on your model; differences are CIEDE2000, and what
        counts is our judgement. Rows a few points apart are for your eye to settle, best with
        spoons in hand.
      </p>
    </>
  );
}
