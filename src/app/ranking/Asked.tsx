/** What is ranked, in a sentence whose words lead to where each is changed; and how many rows. */
import { useMemo, useState } from 'react';
import { type Build, finishesByRef } from '../../build/build.ts';
import { combinationsInWords } from '../../build/choice/combination.ts';
import { widened } from '../../build/edit/widen.ts';
import { heldIn, partsWithChoice } from '../../ranking/held.ts';
import { plainlyDifferent } from '../../score/judgement.ts';
import { lightWords } from '../cars/lamps.ts';
import { goToHeading } from '../commands/go.ts';
import { later } from '../later.tsx';
import { lay } from '../overlay/overlay.ts';
import { Choice } from '../pieces/Choice.tsx';
import { sayDone, sayOnly } from '../pieces/said.ts';
import { finishesToPick } from '../rack/finishes.ts';
import { useThought } from '../rules/thought.ts';
import { edit, endStep, useRacks } from '../store.ts';
import { combinationsOf, type Question } from './question.ts';
import { hold, useSearch } from './search.ts';

const Weights = later(
  'What matters to you',
  async () => (await import('../sheet/weights/Weights.tsx')).Weights,
);

const counts = [10, 20, 50] as const;

/** Sentence, held parts, switches. */
export function Asked({ question }: { question: Question }) {
  const { count, isDifferent } = useSearch();
  const [isWeighing, setWeighing] = useState(false);
  return (
    <div className="ranking-asked">
      <What question={question} isWeighing={isWeighing} onWeigh={() => setWeighing(!isWeighing)} />
      {isWeighing ? (
        <section className="ranking-weights" aria-label="What matters to you">
          <Weights sheets={[]} isUnfolded />
        </section>
      ) : null}
      <HeldParts question={question} />
      <div className="ranking-switches">
        <Choice
          legend="Rows"
          value={count}
          options={counts.map((value) => ({ value, name: String(value) }))}
          onChoose={(value) => useSearch.setState({ count: value })}
        />
        <label className="tick ranking-different">
          <input
            type="checkbox"
            checked={isDifferent}
            onChange={({ currentTarget }) =>
              useSearch.setState({ isDifferent: currentTarget.checked })
            }
          />
          <span>
            Only plainly different ones
            <small className="tick-note">
              Each at least ΔE2000 {plainlyDifferent} from every one above it, on some open part.
            </small>
          </span>
        </label>
        <Widen build={question.build} />
      </div>
    </div>
  );
}

/** Lets open parts wear whatever needs no buying, from the build and every rack. */
function Widen({ build }: { build: Build }) {
  const racks = useRacks();
  const wider = useMemo(
    () => (racks === undefined ? build : widened(build, finishesToPick(racks, build.finishes))),
    [build, racks],
  );
  return (
    <button
      type="button"
      className="button"
      onClick={() => {
        if (wider === build) {
          sayOnly('Open parts may wear all that is on hand already.');
          return;
        }
        endStep();
        edit(() => wider);
        endStep();
        sayDone('Open parts may wear anything on hand now.');
      }}
    >
      Let open parts wear anything on hand
    </button>
  );
}

const toRules = (): void => goToHeading('rules-title');

interface WhatProps {
  readonly question: Question;
  /** The weights lie beneath the sentence. */
  readonly isWeighing: boolean;
  readonly onWeigh: () => void;
}

function What({ question: { build, held }, isWeighing, onWeigh }: WhatProps) {
  const thought = useThought(build, 'standing');
  const parts = partsWithChoice(build).filter(({ id }) => heldIn(build, held)[id] === undefined);
  const all = combinationsOf(build, held);
  const keeping = parts.length === partsWithChoice(build).length && thought?.count.keepingRules;
  const { rules, viewing } = build;
  const openParts = `${parts.length} open ${parts.length === 1 ? 'part' : 'parts'}`;
  const isPart = typeof keeping === 'bigint' && keeping < all;
  if (keeping === 0n) {
    return (
      <p className="ranking-what">
        No combination of{' '}
        <Way words={openParts} onGo={() => lay({ kind: 'parts', asks: 'open' })} /> keeps{' '}
        <Way words={rulesInWords(rules.length)} onGo={toRules} />.
      </p>
    );
  }
  return (
    <p className="ranking-what">
      Ranked {all === 1n ? 'is' : 'are'}{' '}
      {isPart ? `${keeping.toLocaleString('en-GB')} of ${combinationsInWords(all)}` : null}
      {isPart ? null : allInWords(all)} of{' '}
      <Way words={openParts} onGo={() => lay({ kind: 'parts', asks: 'open' })} />
      {isPart ? ', those that keep ' : ', under '}
      <Way
        words={rules.length === 0 ? 'no rules yet' : rulesInWords(rules.length)}
        onGo={toRules}
      />
      , as seen in {lightWords(viewing.light)} from {`${viewing.distanceMm / 1000}\u00a0m`}, by{' '}
      <button type="button" className="text-button" aria-expanded={isWeighing} onClick={onWeigh}>
        what matters to you
      </button>
      .
    </p>
  );
}

function allInWords(count: bigint): string {
  const words = combinationsInWords(count);
  return /^[0-9]/.test(words) ? `all ${words}` : words;
}

const rulesInWords = (count: number): string => (count === 1 ? 'one rule' : `${count} rules`);

const Way = ({ words, onGo }: { words: string; onGo: () => void }) => (
  <button type="button" className="text-button" dir="auto" onClick={onGo}>
    {words}
  </button>
);

function HeldParts({ question: { build, held } }: { question: Question }) {
  const here = heldIn(build, held);
  const parts = partsWithChoice(build).filter(({ id }) => here[id] !== undefined);
  if (parts.length === 0) return null;
  const finishes = finishesByRef(build);
  return (
    <ul className="ranking-held" aria-label="Held for this ranking">
      {parts.map(({ id, name }) => (
        <li key={id}>
          <bdi>{name}</bdi> held at <bdi>{finishes.get(here[id] ?? '')?.name}</bdi>{' '}
          <button type="button" className="text-button" onClick={() => hold(id, undefined)}>
            Let go<span className="unseen"> of {name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
