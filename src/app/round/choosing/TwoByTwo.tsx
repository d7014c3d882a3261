/** @jsxImportSource preact */
/** Two cars, one of which is liked better: a press answers and brings the next pair. */
import { useId } from 'preact/hooks';
import type { Pair } from '../../../opinion/answer.ts';
import type { Worn } from '../worn.ts';
import { CarCard } from './CarCard.tsx';
import type { CarsProps } from './Together.tsx';

interface TwoByTwoProps extends CarsProps {
  readonly pair: readonly [string, string];
  readonly onPut: (answer: Pair) => void;
}

/** One pair. Its places stay while cars change, so that the focus does. */
export function TwoByTwo({ round, scene, worn, pair, onPut }: TwoByTwoProps) {
  const id = useId();
  const sides = [
    { place: 'first', chosen: pair[0], over: pair[1] },
    { place: 'second', chosen: pair[1], over: pair[0] },
  ];
  return (
    <div class="round-cars is-pair">
      {sides.map(({ place, chosen, over }) => (
        <CarCard
          key={place}
          round={round}
          letter={chosen}
          scene={scene}
          worn={apart(worn.get(chosen) ?? [], worn.get(over) ?? [])}
          isChosen={false}
          wordsId={`${id}${place}`}
          control={
            <button
              type="button"
              class="round-press"
              aria-label={`Car ${chosen} rather than ${over}`}
              aria-describedby={`${id}${place}`}
              onClick={({ detail }) => {
                // The second press of a double one was not meant for the next pair.
                if (detail < 2) onPut({ chosen, over });
              }}
            />
          }
        />
      ))}
    </div>
  );
}

/** What one wears and the other does not, so that the words tell these two apart and no others. */
const apart = (one: readonly Worn[], other: readonly Worn[]): readonly Worn[] =>
  one.filter(
    ({ part, finish }) => !other.some((its) => its.part === part && its.finish === finish),
  );
