/**
 * Why each alternative stands where it stands: how surely one is ahead, then a score sheet each,
 * worst score first, sentences before numbers.
 */

import { useMemo, useRef } from 'react';
import type { Closeness, Comparison, ScoreSheet } from '../../score/comparison.ts';
import { closenessExplained, closenessSentence } from '../../score/sentence.ts';
import { useInSight } from '../afterwards.ts';
import { later } from '../later.tsx';
import { useStaged } from '../onStage.ts';
import { useComparison } from './compared.ts';
import { useDrawn } from './drawn.ts';
import { Sheet } from './Sheet.tsx';
import { lettersOf } from './scores.ts';
import { useFollowed, withheld } from './withheld.ts';

const Weights = later(
  'What matters to you',
  async () => (await import('./weights/Weights.tsx')).Weights,
);

/** All score sheets side by side. */
export function Sheets() {
  const place = useRef<HTMLElement>(null);
  const sheets = useInSight(place, useStagedSheets());
  return (
    <section className="sheets-section" aria-labelledby="sheets-title" ref={place}>
      <h2 id="sheets-title" className="section-title">
        Score sheets
        <small>
          Point at a sentence to see its parts; press it to keep them lit. Press a score’s name for
          what it means.
        </small>
      </h2>
      <div className="sheets-frame">
        <div className="sheets-rail">
          <Weights sheets={sheets} />

          <p className="quiet">
            0 to 100. The overall weighs all six; half of all ordinary schemes reach 50. Numbers
            follow from stated colours and our judgement of what matters; your eye decides.
          </p>
        </div>
        <div className="sheets">
          {sheets.map((sheet) => (
            <Sheet key={sheet.id} sheet={sheet} />
          ))}
        </div>
      </div>
    </section>
  );
}

/** Sheets of the alternatives that are being compared. */
function useStagedSheets(): readonly ScoreSheet[] {
  const { alternatives } = useComparison();
  const staged = useStaged();
  return useMemo(() => staged.flatMap(({ at }) => alternatives[at] ?? []), [alternatives, staged]);
}

/** Alternatives up to which every pair is told; of more, each is told against the next best. */
const mostInPairs = 3;

/** What is tried before one is said to be ahead. */
const Why = () => <li className="standing-why">{closenessExplained}</li>;

type Pair = readonly [ScoreSheet, ScoreSheet];

/** The pairs that are told, in the order of the first of each. */
function pairsToTell(sheets: readonly ScoreSheet[]): Pair[] {
  if (sheets.length <= mostInPairs) {
    return sheets.flatMap((one, at) => sheets.slice(at + 1).map((other): Pair => [one, other]));
  }
  const order = [...sheets].sort((one, other) => other.overall - one.overall);
  return order.slice(1).map((other, at) => [order[at]!, other]);
}

const isOf = ({ a, b }: Closeness, [one, other]: Pair): boolean =>
  (a === one.id && b === other.id) || (a === other.id && b === one.id);

/** How surely one alternative is ahead of another, colour uncertainty considered. */
export function Standing() {
  const sheets = useStagedSheets();
  const drawn = useDrawn();
  if (sheets.length < 2) return null;
  return (
    <ul className="standing" aria-label="How surely one is ahead">
      {pairsToTell(sheets).map((pair) => (
        <Ahead key={pair.map(({ id }) => id).join()} pair={pair} drawn={drawn} />
      ))}
      <Why />
    </ul>
  );
}

/** One pair's line; the last one keeps its room while they are tried anew. */
function Ahead({ pair, drawn }: { pair: Pair; drawn: Comparison | undefined }) {
  const letterOf = lettersOf(useComparison());
  const now = drawn?.closeness.find((closeness) => isOf(closeness, pair));
  const { answer, isWithheld } = useFollowed(pair, now);
  return (
    <li>
      {answer === undefined ? null : (
        <span {...withheld(isWithheld)}>{closenessSentence(answer, letterOf)}</span>
      )}
      {answer === undefined || isWithheld ? (
        <span className="quiet">Trying how surely…</span>
      ) : null}
    </li>
  );
}
