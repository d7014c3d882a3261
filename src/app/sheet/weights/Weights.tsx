/** What matters to you: six weights in plain words, and at once what they do to the order. */
import { memo, useCallback, useId, useState } from 'react';
import { defaultWeights } from '../../../build/build.ts';
import type { ScoreSheet } from '../../../score/comparison.ts';
import { type ScoreKey, scoreKeys } from '../../../score/evidence.ts';
import { scoreNames } from '../../../score/name.ts';
import { edit, endStep, useBench } from '../../store.ts';
import {
  isUsual,
  mostTimes,
  orderInWords,
  shareOf,
  timesInWords,
  timesStep,
  timesUsual,
  usualOrder,
  withTimes,
  withWeights,
} from './balance.ts';
import './weights.css';

interface WeightsProps {
  /** Those of the alternatives being compared. */
  readonly sheets: readonly ScoreSheet[];
  /** Open from the start; else on windows where it has room. */
  readonly isUnfolded?: boolean;
}

/** The panel. */
export function Weights({ sheets, isUnfolded = isRoomy() }: WeightsProps) {
  const weights = useBench(({ work }) => work!.build.weights);
  const [refused, setRefused] = useState<ScoreKey>();
  const set = useCallback(
    (key: ScoreKey, times: number): void => {
      const changed = withTimes(weights, key, times);
      setRefused(changed === undefined ? key : undefined);
      if (changed !== undefined) edit((build) => withWeights(build, changed), `weight/${key}`);
    },
    [weights],
  );
  const letters = usualOrder(sheets);
  const now = [...sheets].sort((one, other) => other.overall - one.overall);
  const isSameOrder = now.map(({ letter }) => letter).join(', ') === letters;
  return (
    <details className="weights" open={isUnfolded}>
      <summary>
        <h3>What matters to you</h3>
      </summary>
      {scoreKeys.map((key) => (
        <Weight
          key={key}
          score={key}
          times={timesUsual(weights, key)}
          share={shareOf(weights, key)}
          isRefused={refused === key}
          onTimes={set}
        />
      ))}
      <div role="status">
        {refused === undefined ? null : (
          <p className="weight-refused">
            At least one score has to count: {scoreNames[refused]} stays as the last that does.
          </p>
        )}
        {sheets.length < 2 ? null : (
          <p>
            Order now: <strong>{orderInWords(sheets)}</strong>.
            {isUsual(weights)
              ? null
              : isSameOrder
                ? ' The same as with the usual weights.'
                : ` With the usual weights: ${letters}.`}
          </p>
        )}
      </div>
      <button
        type="button"
        className="button"
        disabled={isUsual(weights)}
        onClick={() => {
          endStep();
          setRefused(undefined);
          edit((build) => withWeights(build, defaultWeights));
        }}
      >
        Back to usual
      </button>
    </details>
  );
}

/** On a phone the sheets come first; the panel opens with one press. */
const isRoomy = (): boolean => matchMedia('(min-width: 60em)').matches;

interface WeightProps {
  readonly score: ScoreKey;
  readonly times: number;
  readonly share: number;
  readonly isRefused: boolean;
  readonly onTimes: (score: ScoreKey, times: number) => void;
}

/** One slider from not at all to a lot, with the share it comes to. */
const Weight = memo(function Weight(props: WeightProps) {
  const { score, times, share, isRefused, onTimes } = props;
  const id = useId();
  const words = timesInWords(times);
  const percent = `${Math.round(share)}\u00a0%`;
  return (
    <div className="weight">
      <label htmlFor={id}>{scoreNames[score]}</label>
      <span className="weight-told">
        {words}, {percent}
      </span>
      <input
        id={id}
        type="range"
        min={0}
        max={mostTimes}
        step={timesStep}
        value={Math.min(mostTimes, times)}
        aria-valuetext={`${words}, ${percent} of the overall`}
        aria-invalid={isRefused}
        onChange={({ currentTarget }) => onTimes(score, Number(currentTarget.value))}
      />
    </div>
  );
});
