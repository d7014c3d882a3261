/**
 * Why each alternative stands where it stands: how surely one is ahead, then a score sheet each,
 * worst score first, sentences before numbers.
 */

import { scoreKeys } from '../../score/evidence.ts';
import { useComparison, useDrawn } from './compared.ts';
import { Sheet } from './Sheet.tsx';
import { closenessSentence, lettersOf, scoreWords } from './scores.ts';

/** All score sheets side by side. */
export function Sheets() {
  const comparison = useComparison();
  return (
    <section className="sheets-section" aria-labelledby="sheets-title">
      <h2 id="sheets-title" className="section-title">
        Score sheets
        <small>Point at a sentence to see its parts; press it to keep them lit.</small>
      </h2>
      <div className="sheets-frame">
        <div className="sheets-rail">
          <details>
            <summary>What the scores ask</summary>
            <dl>
              {scoreKeys.map((key) => (
                <div key={key}>
                  <dt>{scoreWords[key].name}</dt>
                  <dd>{scoreWords[key].asks}</dd>
                </div>
              ))}
            </dl>
          </details>
          <p className="quiet">
            0 to 100. The overall weighs all six; half of all ordinary schemes reach 50. Numbers
            follow from stated colours and our judgement of what matters; your eye decides.
          </p>
        </div>
        <div className="sheets">
          {comparison.alternatives.map((sheet) => (
            <Sheet key={sheet.id} sheet={sheet} />
          ))}
        </div>
      </div>
    </section>
  );
}

/** How surely one alternative is ahead of another, colour uncertainty considered. */
export function Standing() {
  const comparison = useComparison();
  const { closeness } = useDrawn();
  const letterOf = lettersOf(comparison);
  if (closeness.length === 0) return null;
  return (
    <ul className="standing" aria-label="How surely one is ahead">
      {closeness.map((pair) => (
        <li key={`${pair.a} ${pair.b}`}>{closenessSentence(pair, letterOf)}</li>
      ))}
    </ul>
  );
}
