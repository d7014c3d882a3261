/** @jsxImportSource preact */
/** All cars at once, one of which is chosen: native radio buttons, none of them set beforehand. */
import { useId } from 'preact/hooks';
import type { Round } from '../../../opinion/round.ts';
import type { Scene } from '../scene.ts';
import type { Worn } from '../worn.ts';
import { CarCard } from './CarCard.tsx';

export interface CarsProps {
  readonly round: Round;
  readonly scene: Scene;
  /** In the order this viewer sees them in. */
  readonly letters: readonly string[];
  readonly worn: ReadonlyMap<string, readonly Worn[]>;
}

interface TogetherProps extends CarsProps {
  readonly chosen: string | undefined;
  readonly onChoose: (letter: string) => void;
  /** Id of the question. */
  readonly labelledBy: string;
}

/** The cars, side by side or one below the other. */
export function Together(props: TogetherProps) {
  const { round, scene, letters, worn, chosen, onChoose, labelledBy } = props;
  const id = useId();
  return (
    <div class="round-cars" role="radiogroup" aria-labelledby={labelledBy}>
      {letters.map((letter) => (
        <CarCard
          key={letter}
          round={round}
          letter={letter}
          scene={scene}
          worn={worn.get(letter) ?? []}
          isChosen={letter === chosen}
          wordsId={`${id}${letter}`}
          control={
            <input
              type="radio"
              class="round-press"
              name={id}
              aria-label={`Car ${letter}`}
              aria-describedby={`${id}${letter}`}
              checked={letter === chosen}
              onChange={() => onChoose(letter)}
            />
          }
        />
      ))}
    </div>
  );
}
