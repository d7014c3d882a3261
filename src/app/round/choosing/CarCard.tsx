/** @jsxImportSource preact */
/** One car to choose from: its letter, its picture, and in words what tells it from the others. */
import type { ComponentChildren } from 'preact';
import type { Round } from '../../../opinion/round.ts';
import { Bowl } from '../drawn/Bowl.tsx';
import { Drawing } from '../drawn/Drawing.tsx';
import type { Scene } from '../scene.ts';
import type { Worn } from '../worn.ts';

interface CarCardProps {
  readonly round: Round;
  readonly letter: string;
  readonly scene: Scene;
  readonly worn: readonly Worn[];
  readonly isChosen: boolean;
  /** What chooses it; lies over the whole card, so that a tap anywhere will do. */
  readonly control: ComponentChildren;
  /** Id of the words, for the control to refer to. */
  readonly wordsId: string;
}

/** More spoons than these beneath a car are folded away: they would push the cars out of sight. */
const mostSpoons = 6;

/** The card of one car. */
export function CarCard(props: CarCardProps) {
  const { round, letter, scene, worn, isChosen, control, wordsId } = props;
  const { build } = round;
  const alternative = build.alternatives.find(({ name }) => name === letter)!;
  const rest = worn.slice(mostSpoons);
  return (
    <div class={isChosen ? 'round-car is-chosen' : 'round-car'}>
      {control}
      <div class="round-car-head" aria-hidden="true">
        <span class="letter">{letter}</span>
        <span class="round-tick">{isChosen ? 'Your choice' : ''}</span>
      </div>
      <Drawing build={build} alternative={alternative} scene={scene} />
      <ul class="round-worn" id={wordsId}>
        {worn.slice(0, mostSpoons).map((one) => (
          <WornSpoon key={one.part} worn={one} light={build.viewing.light} />
        ))}
      </ul>
      {rest.length === 0 ? null : (
        <details class="round-rest">
          <summary>{rest.length} more that differ</summary>
          <ul class="round-worn">
            {rest.map((one) => (
              <WornSpoon key={one.part} worn={one} light={build.viewing.light} />
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

type Light = Round['build']['viewing']['light'];

const WornSpoon = ({ worn: { name, finish }, light }: { worn: Worn; light: Light }) => (
  <li class="spoon">
    <Bowl finish={finish} light={light} />
    <span class="handle">
      <span class="handle-note">
        <bdi>{name}</bdi>
        <span class="unseen">: </span>
      </span>
      <span class="handle-name">
        <bdi>{finish.name}</bdi>
      </span>
    </span>
  </li>
);
