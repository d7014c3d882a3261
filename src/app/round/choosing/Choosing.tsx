/** @jsxImportSource preact */
/**
 * Which one? Up to three cars are seen at once; more are put in pairs, with a way to all of them
 * and a way back.
 */
import { useState } from 'preact/hooks';
import type { Pair } from '../../../opinion/answer.ts';
import { leaderOf, mostAtOnce, nextPair, pairsLeft } from '../../../opinion/pairs.ts';
import { CarCard } from './CarCard.tsx';
import { type CarsProps, Together } from './Together.tsx';
import { TwoByTwo } from './TwoByTwo.tsx';

interface ChoosingProps extends CarsProps {
  readonly chosen: string | undefined;
  readonly pairs: readonly Pair[];
  /** Takes the choice, none while pairs are left, and the pairs it rests on. */
  readonly onSay: (chosen: string | undefined, pairs: readonly Pair[]) => void;
}

const questionId = 'round-question';

/** The question and the cars. */
export function Choosing({ chosen, pairs, onSay, ...cars }: ChoosingProps) {
  const { letters, worn } = cars;
  const isMany = letters.length > mostAtOnce;
  const [seesAll, setSeesAll] = useState(!isMany);
  const pair = seesAll ? undefined : nextPair(letters, pairs);
  const put = (answered: readonly Pair[]): void => {
    const isDone = nextPair(letters, answered) === undefined;
    onSay(isDone ? leaderOf(letters, answered) : undefined, answered);
  };
  const seeAll = (now: boolean): void => {
    setSeesAll(now);
    // What was chosen among all was not found by pairs: those go on where they were left.
    if (!now) put(pairs);
  };
  const left = pairsLeft(letters, pairs);
  return (
    <section class="round-choosing" aria-labelledby={questionId}>
      <h2 id={questionId}>{questionFor(seesAll, pair === undefined)}</h2>
      {isMany ? (
        <div class="round-ways-round">
          <p role="status">
            {seesAll
              ? `All ${letters.length} cars.`
              : pair === undefined
                ? `No pairs left: of ${letters.length} cars you liked ${chosen} best.`
                : `Pair ${pairs.length + 1} of ${pairs.length + left}, ${pair.join(' or ')}.`}
          </p>
          <div class="buttons">
            {seesAll || pairs.length === 0 ? null : (
              <button type="button" class="button" onClick={() => put(pairs.slice(0, -1))}>
                Back a pair
              </button>
            )}
            <button type="button" class="button" onClick={() => seeAll(!seesAll)}>
              {seesAll ? 'Two at a time' : 'See all'}
            </button>
          </div>
        </div>
      ) : null}
      {seesAll ? (
        <Together
          {...cars}
          chosen={chosen}
          onChoose={(letter) => onSay(letter, [])}
          labelledBy={questionId}
        />
      ) : pair === undefined ? (
        <div class="round-cars is-lone">
          <CarCard
            round={cars.round}
            scene={cars.scene}
            letter={chosen!}
            worn={worn.get(chosen!) ?? []}
            isChosen
            control={null}
            wordsId="round-leader"
          />
        </div>
      ) : (
        <TwoByTwo {...cars} pair={pair} onPut={(answer) => put([...pairs, answer])} />
      )}
    </section>
  );
}

function questionFor(seesAll: boolean, isFound: boolean): string {
  if (seesAll) return 'Which one? Tap a car.';
  return isFound ? 'This one' : 'Which of these two? Tap a car.';
}
