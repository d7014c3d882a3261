/**
 * Rules that cannot hold together: the smallest set of them, why in plain steps, and ways out as
 * buttons that do it, each saying what it would leave.
 */
import type { Build } from '../../build/build.ts';
import type { Told } from '../../build/choice/because.ts';
import { combinationsInWords } from '../../build/choice/combination.ts';
import { type Remedy, type WayOut, withRemedy } from '../../build/choice/remedy.ts';
import { namesIn, partsNamed } from '../../build/rule.ts';
import { sayDone } from '../pieces/said.ts';
import { pointsAt } from '../pointing.ts';
import { edit, endStep, useWork } from '../store.ts';
import { Sentence } from './Sentence.tsx';
import type { Clash as Clashing } from './thinking.ts';

interface ClashProps {
  readonly clash: Clashing;
  /** Hears that a way out was taken. */
  readonly onMended: () => void;
}

/** A box above the rules. */
export function Clash({ clash, onMended }: ClashProps) {
  const { build } = useWork();
  const { rules, isSmallest, told, remedies } = clash;
  const isOne = rules.length === 1;
  return (
    <section className="clash" aria-labelledby="clash-title">
      <h3 id="clash-title">
        {isOne
          ? 'With these candidates one rule can never be kept'
          : `${rules.length} rules cannot hold together`}
      </h3>
      <ul className="clash-rules">
        {rules.map((at) => (
          <li key={at} {...pointsAt(partsNamed(build.rules[at]!))}>
            <span className="rule-number" aria-hidden="true">
              {at + 1}
            </span>
            <span className="rule-sentence">
              <span className="unseen">Rule {at + 1}: </span>
              <Sentence rule={build.rules[at]!} />
            </span>
          </li>
        ))}
      </ul>
      {isOne ? null : (
        <p className="quiet">
          {isSmallest
            ? 'Without any one of them the others can hold.'
            : 'Perhaps fewer of them clash; narrowing it down took too long.'}
        </p>
      )}
      <div className="clash-columns">
        <div>
          <h4>Why</h4>
          {told === undefined ? (
            <p>Every combination was tried; no short argument shows it.</p>
          ) : (
            <Argument told={told} />
          )}
        </div>
        <div>
          <h4>Ways out</h4>
          <ul className="ways">
            {remedies.map((remedy) => (
              <li key={JSON.stringify(remedy.way)}>
                <button
                  type="button"
                  className="button"
                  onClick={() => {
                    take(remedy.way, doneWords(build, remedy.way));
                    onMended();
                  }}
                >
                  {wayWords(build, remedy.way)}
                </button>
                <span className="quiet">{leavesWords(remedy)}</span>
              </li>
            ))}
          </ul>
        </div>
      </div>
    </section>
  );
}

function Argument({ told }: { told: Told }) {
  return (
    <ol className="argument">
      {told.steps.map((step) => (
        <li key={step}>{step}</li>
      ))}
      {told.cases.map(({ suppose, follows }) => (
        <li key={suppose}>
          {suppose}
          <Argument told={follows} />
        </li>
      ))}
    </ol>
  );
}

function take(way: WayOut, words: string): void {
  endStep();
  edit((build) => withRemedy(build, way));
  endStep();
  sayDone(words);
}

function wayWords(build: Build, way: WayOut): string {
  if (way.kind === 'take-out') return `Take out rule ${way.rule + 1}`;
  const names = namesIn(build);
  return `Let ${names.part(way.part)} wear ${names.finish(way.finish)} too`;
}

function doneWords(build: Build, way: WayOut): string {
  if (way.kind === 'take-out') return `Rule ${way.rule + 1} taken out.`;
  const names = namesIn(build);
  return `${names.finish(way.finish)} is a candidate of ${names.part(way.part)} now.`;
}

function leavesWords({ kind, leaves }: Remedy): string {
  if (kind === 'stuck') return 'other rules would still clash';
  if (kind === 'unsure') return 'whether the others can hold then takes too long to say';
  return leaves === undefined
    ? 'the rules can hold then; counting takes too long'
    : `leaves ${combinationsInWords(leaves)}`;
}
