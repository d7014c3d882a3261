/**
 * Why each alternative stands where it stands: how surely one is ahead, then a score sheet each,
 * worst score first, sentences before numbers.
 */

import type { Closeness, ScoreSheet } from '../../score/comparison.ts';
import { closenessExplained, closenessSentence } from '../../score/sentence.ts';
import { later } from '../later.tsx';
import { useStaged } from '../onStage.ts';
import { useComparison } from './compared.ts';
import { useDrawn } from './drawn.ts';
import { Sheet } from './Sheet.tsx';
import { lettersOf } from './scores.ts';

const Weights = later(
  'What matters to you',
  async () => (await import('./weights/Weights.tsx')).Weights,
);

/** All score sheets side by side. */
export function Sheets() {
  const sheets = useStagedSheets();
  return (
    <section className="sheets-section" aria-labelledby="sheets-title">
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
  return useStaged().flatMap(({ at }) => alternatives[at] ?? []);
}

/** Alternatives up to which every pair is told; of more, each is told against the next best. */
const mostInPairs = 3;

const pairsOf = (count: number): number =>
  count <= mostInPairs ? (count * (count - 1)) / 2 : count - 1;

/** What is tried before one is said to be ahead. */
const Why = () => <li className="standing-why">{closenessExplained}</li>;

function worthTelling(all: readonly Closeness[], alternatives: readonly ScoreSheet[]) {
  const isShown = (id: string): boolean => alternatives.some((sheet) => sheet.id === id);
  const closeness = all.filter(({ a, b }) => isShown(a) && isShown(b));
  if (alternatives.length <= mostInPairs) return closeness;
  const order = [...alternatives].sort((one, other) => other.overall - one.overall);
  const place = new Map(order.map(({ id }, at) => [id, at]));
  const placeOf = (id: string): number => place.get(id) ?? -1;
  return closeness
    .filter(({ a, b }) => Math.abs(placeOf(a) - placeOf(b)) === 1)
    .sort((one, other) => placeOf(one.a) + placeOf(one.b) - placeOf(other.a) - placeOf(other.b));
}

/** How surely one alternative is ahead of another, colour uncertainty considered. */
export function Standing() {
  const comparison = useComparison();
  const sheets = useStagedSheets();
  const closeness = useDrawn()?.closeness;
  const letterOf = lettersOf(comparison);
  if (sheets.length < 2) return null;
  // As many lines as will be told, so that nothing moves when they come.
  const lines =
    closeness === undefined
      ? Array.from({ length: pairsOf(sheets.length) }, () => 'Trying how surely…')
      : worthTelling(closeness, sheets).map((pair) => closenessSentence(pair, letterOf));
  return (
    <ul
      className={closeness === undefined ? 'standing quiet' : 'standing'}
      aria-label="How surely one is ahead"
    >
      {[...lines.entries()].map(([at, line]) => (
        <li key={at}>{line}</li>
      ))}
      <Why />
    </ul>
  );
}
