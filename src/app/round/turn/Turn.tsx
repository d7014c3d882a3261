/**
 * Would one choose the same after walking round them? The cars of a round as live 3D cars, turned
 * together, in the order this viewer sees them in and by the light of the round. Fetched when it is
 * asked for; drawings stand in until then, and wherever 3D is missing or lost.
 *
 * In: a round, its car, the letters to show. Out: nothing; turning changes no answer.
 */
import { useEffect, useRef, useState } from 'react';
import type { Round } from '../../../opinion/round.ts';
import { Stand, StandHint, Steer } from '../../cars/card/Stand.tsx';
import { useArrived } from '../../live/canvas/arrived.ts';
import { type Liveness, lookFrom, useViewing } from '../../live/viewing.ts';
import type { Car } from '../../opening/garage.ts';
import { Choice } from '../../pieces/Choice.tsx';
import { Letter } from '../../pieces/Letter.tsx';
import { Drawing } from './Drawing.tsx';
import '../../live/canvas/live.css';
import './turn.css';

interface TurnProps {
  readonly round: Round;
  readonly car: Car;
  /** In the order they are shown in. */
  readonly letters: readonly string[];
}

/** More cars than these are shown smaller, so that one sees several of them at once. */
const mostLarge = 4;

const load = async () => (await import('./TurnedCars.tsx')).TurnedCars;

/** The cars, to be turned. */
export function Turn(props: TurnProps) {
  const [attempt, setAttempt] = useState(0);
  return <Turned key={attempt} {...props} onAgain={() => setAttempt(attempt + 1)} />;
}

function Turned(props: TurnProps & { readonly onAgain: () => void }) {
  const { round, car, letters, onAgain } = props;
  const within = useRef<HTMLDivElement>(null);
  const liveness = useViewing((viewing) => viewing.liveness);
  // One begins where the drawings look from.
  const drawnFrom = car.views[0]?.id ?? 'front';
  useEffect(() => {
    lookFrom(drawnFrom);
    return () => useViewing.setState({ liveness: 'drawn', framed: undefined });
  }, [drawnFrom]);
  const arrived = useArrived(car, round.build, load);
  return (
    <section className="turn" data-liveness={liveness} aria-label="The cars, to be turned">
      <div className="turn-bar">
        {liveness === 'live' ? (
          <div className="turn-view">
            <Places />
            <Steer />
          </div>
        ) : null}
        <p className="turn-words" role="status">
          {words[liveness]}
        </p>
        {liveness === 'unfetched' ? (
          <button type="button" className="button" onClick={onAgain}>
            Try again
          </button>
        ) : null}
      </div>
      <StandHint press="press a part twice to see it from close by" />
      <div className={letters.length > mostLarge ? 'turn-cars is-many' : 'turn-cars'} ref={within}>
        {letters.map((letter) => (
          <div key={letter} className="turn-car">
            <Drawing build={round.build} alternative={wearerOf(round, letter)} car={car} />
            <Stand alternative={wearerOf(round, letter).id} letter={letter} />
            <p className="turn-letter">
              <Letter letter={letter} />
            </p>
          </div>
        ))}
        {arrived === undefined ? null : (
          <arrived.Cars mesh={arrived.mesh} within={within} round={round} letters={letters} />
        )}
      </div>
    </section>
  );
}

const wearerOf = ({ build }: Round, letter: string) =>
  build.alternatives.find(({ name }) => name === letter)!;

/** What there is to say while the cars cannot be turned. */
const words: Readonly<Record<Liveness, string>> = {
  drawn: '',
  coming:
    'The cars are on their way. Until they are here, these are drawings of the same finishes.',
  live: '',
  lost: 'This device has taken the 3D away for now. The cars come back as soon as it gives it back; until then, these are drawings of the same finishes.',
  impossible:
    'This browser draws no 3D, so the cars cannot be turned. These are drawings of the same finishes.',
  unfetched:
    'The cars could not be fetched, so they cannot be turned yet. These are drawings of the same finishes.',
};

/** From where the cars are seen. */
function Places() {
  const place = useViewing((viewing) => viewing.place);
  const places = useViewing((viewing) => viewing.places);
  return (
    <Choice
      legend="Seen from"
      value={place}
      options={places.map(({ id, name }) => ({ value: id, name }))}
      onChoose={lookFrom}
    />
  );
}
