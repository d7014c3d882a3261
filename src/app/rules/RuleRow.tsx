/** One rule: its sentence, how it stands on each alternative, and what can be done with it. */
import { type Build, letterOf, type Rule } from '../../build/build.ts';
import { removeRule } from '../../build/edit/rule.ts';
import { partsNamed } from '../../build/rule.ts';
import { sayDone } from '../pieces/said.ts';
import { pointsAt, useIsLit } from '../pointing.ts';
import { edit, endStep } from '../store.ts';
import { changeRule } from './ruling.ts';
import { Sentence } from './Sentence.tsx';
import { type Breach, idleWords, lettersInWords, togetherByReason } from './standing.ts';

interface RuleRowProps {
  readonly build: Build;
  readonly rule: Rule;
  /** Position in the build, from 0. */
  readonly at: number;
  readonly breaches: readonly Breach[];
  /** What it cannot hold together with, in words. */
  readonly clash: string | undefined;
  /** Hears that the rule has gone. */
  readonly onGone: () => void;
}

/** Takes a rule out as an undo step of its own. */
export function takeOut(at: number): void {
  endStep();
  edit((build) => removeRule(build, at));
  endStep();
  sayDone(`Rule ${at + 1} taken out.`);
}

/** A row of the list; pointing at it lights its parts. */
export function RuleRow({ build, rule, at, breaches, clash, onGone }: RuleRowProps) {
  const parts = partsNamed(rule);
  const isLit = useIsLit(parts);
  return (
    <li className={isLit ? 'rule is-lit' : 'rule'} {...pointsAt(parts)}>
      <span className="rule-number" aria-hidden="true">
        {at + 1}
      </span>
      <div className="rule-told">
        <p className="rule-sentence">
          <span className="unseen">Rule {at + 1}: </span>
          <Sentence rule={rule} />
        </p>
        {clash === undefined ? null : <p className="rule-breach">{clash}</p>}
        <Standing build={build} rule={rule} breaches={breaches} />
      </div>
      <div className="rule-tools">
        <button
          type="button"
          className="text-button"
          data-rule={at}
          onClick={() => changeRule(rule)}
        >
          Change<span className="unseen"> rule {at + 1}</span>
        </button>
        <button
          type="button"
          className="text-button"
          onClick={() => {
            takeOut(at);
            onGone();
          }}
        >
          Take out<span className="unseen"> rule {at + 1}</span>
        </button>
      </div>
    </li>
  );
}

interface StandingProps {
  readonly build: Build;
  readonly rule: Rule;
  readonly breaches: readonly Breach[];
}

/** Who keeps the rule and who breaks it. */
function Standing({ build, rule, breaches }: StandingProps) {
  const idle = idleWords(build, rule);
  const isResting = idle?.startsWith('Rests') ?? false;
  const broken = breaches.map(({ letter }) => letter);
  const kept = build.alternatives
    .map((_, at) => letterOf(at))
    .filter((letter) => !broken.includes(letter));
  return (
    <>
      {togetherByReason(breaches).map(({ letters, why }) => (
        <p key={why} className="rule-breach">
          Broken by {letters}: {why}.
        </p>
      ))}
      {kept.length === 0 || isResting ? null : (
        <p className="rule-kept">Kept by {lettersInWords(kept)}.</p>
      )}
      {idle === undefined ? null : <p className="rule-idle">{idle}</p>}
    </>
  );
}
