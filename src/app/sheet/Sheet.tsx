/** One alternative's score sheet: broken rules, then its scores, worst first, each with reasons. */
import type { ScoreSheet } from '../../score/comparison.ts';
import { type Evidence, type ScoreKey, scoreKeys } from '../../score/evidence.ts';
import { Bar } from '../pieces/Bar.tsx';
import { Letter } from '../pieces/Letter.tsx';
import { useDrawn } from './drawn.ts';
import { Finding } from './Finding.tsx';
import { scoreWords } from './scores.ts';

/** Findings shown per score before the rest is folded. */
const mostShown = 3;

/** The score sheet of one alternative. */
export function Sheet({ sheet }: { sheet: ScoreSheet }) {
  const worstFirst = [...scoreKeys].sort((one, other) => sheet.scores[one] - sheet.scores[other]);
  return (
    <article className="sheet" aria-label={`Score sheet of ${sheet.letter}`}>
      <h3>
        <Letter letter={sheet.letter} /> {sheet.name}
      </h3>
      <p className="sheet-standing">
        <span>{Math.round(sheet.overall)} overall</span>
        <span className="quiet">{Math.round(sheet.overallWithoutReadiness)} without readiness</span>
        <Ordinary id={sheet.id} />
        {sheet.pareto && sheet.broken.length === 0 ? (
          <span className="quiet">unbeaten: no other is at least as good on every score</span>
        ) : null}
      </p>
      {sheet.broken.length === 0 ? null : (
        <ul className="broken" aria-label="Rules broken">
          {sheet.broken.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {worstFirst.map((key) => (
        <Score
          key={key}
          score={key}
          value={sheet.scores[key]}
          evidence={sheet.evidence.filter(({ score }) => score === key)}
        />
      ))}
    </article>
  );
}

/** How many ordinary schemes this one is ahead of, once they are drawn. */
function Ordinary({ id }: { id: string }) {
  const drawn = useDrawn()?.alternatives.find((sheet) => sheet.id === id)?.aheadOfOrdinary;
  if (drawn === undefined) return null;
  return <span className="quiet">ahead of {Math.round(drawn)} of 100 ordinary schemes</span>;
}

interface ScoreProps {
  readonly score: ScoreKey;
  readonly value: number;
  readonly evidence: readonly Evidence[];
}

/** One score: its sentences, with the number and a bar beside. */
function Score({ score, value, evidence }: ScoreProps) {
  const { name } = scoreWords[score];
  const list = (findings: readonly Evidence[]) => (
    <ul>
      {findings.map((finding) => (
        <li
          key={`${finding.kind} ${finding.parts.join(' ')} ${Object.values(finding.words).join()}`}
        >
          <Finding evidence={finding} />
        </li>
      ))}
    </ul>
  );
  const rest = evidence.slice(mostShown);
  return (
    <div className="score">
      <div className="score-words">
        <h4>{name}</h4>
        {evidence.length === 0 ? <p className="quiet">Nothing to remark.</p> : null}
        {list(evidence.slice(0, mostShown))}
        {rest.length === 0 ? null : (
          <details>
            <summary>{rest.length} more</summary>
            {list(rest)}
          </details>
        )}
      </div>
      <div className="score-number">
        <span>{Math.round(value)}</span>
        <Bar value={value} />
      </div>
    </div>
  );
}
