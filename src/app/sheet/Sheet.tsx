/** One alternative's score sheet: broken rules, then its scores, worst first, each with reasons. */
import { memo, useId, useState } from 'react';
import type { ScoreSheet } from '../../score/comparison.ts';
import { type Evidence, type ScoreKey, scoreKeys } from '../../score/evidence.ts';
import { scoreNames } from '../../score/name.ts';
import { useAfterwards } from '../afterwards.ts';
import { later } from '../later.tsx';
import { Bar } from '../pieces/Bar.tsx';
import { Letter } from '../pieces/Letter.tsx';
import { useBefore, wasInWords } from './before.ts';
import { useComparison } from './compared.ts';
import { useDrawn } from './drawn.ts';
import { Finding } from './Finding.tsx';
import { Mending } from './mend/Mending.tsx';
import { beatenInWords } from './scores.ts';
import { useFollowed, withheld } from './withheld.ts';

const Explained = later(
  'The explanation',
  async () => (await import('./explained/Explained.tsx')).Explained,
);

/** Findings shown per score before the rest is folded. */
const mostShown = 3;

/** The score sheet of one alternative; one that has not changed is left as it stands. */
export const Sheet = memo(function Sheet({ sheet }: { sheet: ScoreSheet }) {
  const before = useBefore(sheet.id);
  const order = useWorstFirst(sheet);
  const findingsOf = (key: ScoreKey): Found[] => foundIn(sheet, key);
  const read = order.flatMap((key) => findingsOf(key).map(({ at }) => at));
  return (
    <article
      className="sheet"
      aria-label={`Score sheet of ${sheet.letter}`}
      tabIndex={-1}
      data-mends=""
    >
      <h3>
        <Letter letter={sheet.letter} /> <bdi>{sheet.name}</bdi>
      </h3>
      <p className="sheet-standing">
        <span>
          {Math.round(sheet.overall)} overall
          <Was before={before?.overall} now={sheet.overall} />
        </span>
        <span className="quiet">{Math.round(sheet.overallWithoutReadiness)} without readiness</span>
        <Ordinary sheet={sheet} />
        <Beaten sheet={sheet} />
      </p>
      {sheet.broken.length === 0 ? null : (
        <ul className="broken" aria-label="Rules broken">
          {sheet.broken.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {order.map((key) => (
        <Score
          key={key}
          score={key}
          sheet={sheet}
          before={before?.scores[key]}
          findings={findingsOf(key)}
          read={read}
        />
      ))}
    </article>
  );
});

/** The scores, worst first; a change of order is seen a frame after the numbers that ask for it. */
function useWorstFirst({ scores }: ScoreSheet): readonly ScoreKey[] {
  const order = [...scoreKeys].sort((one, other) => scores[one] - scores[other]);
  const shown = useAfterwards(order.join());
  return [...scoreKeys].sort((one, other) => shown.indexOf(one) - shown.indexOf(other));
}

/** Findings on one score, in order. */
function foundIn({ evidence }: ScoreSheet, score: ScoreKey): Found[] {
  const counts = new Map<Evidence['kind'], number>();
  return evidence.flatMap((one, at) => {
    if (one.score !== score) return [];
    const nth = counts.get(one.kind) ?? 0;
    counts.set(one.kind, nth + 1);
    return [{ evidence: one, at, key: `${one.kind} ${nth}` }];
  });
}

/** Who is nowhere worse and somewhere better, where there is one. */
function Beaten({ sheet }: { sheet: ScoreSheet }) {
  const better = beatenInWords(sheet, useComparison().alternatives);
  return better === undefined ? null : <span className="quiet">{better}</span>;
}

/** How many ordinary schemes this one is ahead of, once they are drawn. */
function Ordinary({ sheet }: { sheet: ScoreSheet }) {
  const drawn = useDrawn()?.alternatives.find(({ id }) => id === sheet.id)?.aheadOfOrdinary;
  const { answer, isWithheld } = useFollowed([sheet], drawn);
  if (answer === undefined) return null;
  return (
    <span className="quiet" {...withheld(isWithheld)}>
      ahead of {Math.round(answer)} of 100 ordinary schemes
    </span>
  );
}

/** Where a number stood before the last change of finish, if that moved it. */
function Was({ before, now }: { before: number | undefined; now: number }) {
  const words = wasInWords(before, now);
  return words === undefined ? null : <small className="was"> {words}</small>;
}

interface Found {
  readonly evidence: Evidence;
  /** Place in the evidence of the sheet. */
  readonly at: number;
  /** The first of its kind stays the first of its kind, whatever it says after a change. */
  readonly key: string;
}

interface ScoreProps {
  readonly score: ScoreKey;
  readonly sheet: ScoreSheet;
  readonly before: number | undefined;
  readonly findings: readonly Found[];
  /** Places of all the sheet's findings, in the order they are read. */
  readonly read: readonly number[];
}

/** One score: its sentences with what would mend them, the number and a bar beside. */
function Score({ score, sheet, before, findings, read }: ScoreProps) {
  const value = sheet.scores[score];
  const list = (some: readonly Found[]) => (
    <ul>
      {some.map(({ evidence, at, key }) => (
        <li key={key}>
          <Finding evidence={evidence} />
          {evidence.cost > 0 || evidence.kind === 'wasted' ? (
            <Mending sheet={sheet} at={at} after={read.slice(0, read.indexOf(at))} />
          ) : null}
        </li>
      ))}
    </ul>
  );
  const rest = findings.slice(mostShown);
  return (
    <div className="score">
      <div className="score-words">
        <Name score={score} />
        {findings.length === 0 ? <p className="quiet">Nothing to remark.</p> : null}
        {list(findings.slice(0, mostShown))}
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
        <Was before={before} now={value} />
      </div>
    </div>
  );
}

/** A score's name; pressing it unfolds what it means. */
function Name({ score }: { score: ScoreKey }) {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  return (
    <>
      <h4>
        <button
          type="button"
          className="score-name"
          aria-expanded={isOpen}
          aria-controls={isOpen ? id : undefined}
          title={isOpen ? undefined : 'What this score means'}
          onClick={() => setOpen(!isOpen)}
        >
          {scoreNames[score]}
        </button>
      </h4>
      {isOpen ? (
        <div id={id} className="explained">
          <Explained score={score} />
        </div>
      ) : null}
    </>
  );
}
