/** One score explained in place: what it asks, where it comes from, and how far to trust it. */
import type { ScoreKey } from '../../../score/evidence.ts';
import { explanations } from './words.ts';
import './explained.css';

/** The explanation of a score, in a builder's words. */
export function Explained({ score }: { score: ScoreKey }) {
  const { asks, source, judgement, limits, units } = explanations[score];
  return (
    <>
      <p>{asks}</p>
      <dl>
        <div>
          <dt>Where it comes from</dt>
          <dd>{source}</dd>
        </div>
        <div>
          <dt>Our judgement</dt>
          <dd>{judgement}</dd>
        </div>
        <div>
          <dt>Its limits</dt>
          <dd>{limits}</dd>
        </div>
        <div>
          <dt>In its sentences</dt>
          {units.map(([unit, meaning]) => (
            <dd key={unit}>
              <strong>{unit}</strong>: {meaning}.
            </dd>
          ))}
        </div>
      </dl>
    </>
  );
}
