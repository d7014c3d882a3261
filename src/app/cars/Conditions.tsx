/** Under which lamp, from how far and from where: one switch each, for picture and scores alike. */
import { memo } from 'react';
import { useViewing } from '../live/viewing.ts';
import { useStagedCount } from '../onStage.ts';
import { PictureTools } from '../picture/PictureTools.tsx';
import { Choice } from '../pieces/Choice.tsx';
import { view as look, useBench } from '../store.ts';
import { Steer } from './card/Stand.tsx';
import { distances, lights } from './lamps.ts';
import { Toggle } from './Toggle.tsx';

interface ConditionsProps {
  /** From where the cars can be looked at, and from where they are. */
  readonly places: readonly { readonly id: string; readonly name: string }[];
  readonly place: string;
  readonly onPlace: (id: string) => void;
}

/** Switches for light, distance and view; a change of finish leaves them as they stand. */
export const Conditions = memo(function Conditions(props: ConditionsProps) {
  const { places, place, onPlace } = props;
  const { light, distanceMm } = useBench(({ work }) => work!.build.viewing);
  const isOurs = distances.some(({ value }) => value === distanceMm);
  const own = { value: distanceMm, name: 'Yours', note: `${distanceMm / 1000} m` };
  return (
    <div className="conditions">
      <Choice
        legend="Seen by"
        value={light}
        options={lights}
        onChoose={(chosen) => look({ light: chosen })}
      />
      {light === 'D65' ? null : (
        <p className="indicative">
          As your eye settles to it; indicative where no spectrum was measured.
        </p>
      )}
      <div className="seen-from">
        <Choice
          legend="Seen from"
          value={distanceMm}
          options={isOurs ? distances : [own, ...distances]}
          onChoose={(chosen) => look({ distanceMm: chosen })}
        />
        <TrueSize />
      </div>
      <div className="view">
        <Choice
          legend="View"
          value={place}
          options={places.map(({ id, name }) => ({ value: id, name }))}
          onChoose={onPlace}
        />
        <Steer />
      </div>
      <Marking />
      <PictureTools />
    </div>
  );
});

/** Whether the cars are as large as the built model would look; drawings cannot be. */
function TrueSize() {
  const isLive = useViewing(({ liveness }) => liveness === 'live');
  const isOn = useViewing(({ isTrueSize }) => isTrueSize);
  const overflow = useViewing((viewing) => viewing.overflow);
  if (!isLive) return null;
  return (
    <div className="true-size">
      <Toggle
        name="True size"
        title="As large as the built model looks from there, on a screen at arm’s length (0.7 m)"
        isOn={isOn}
        onChange={(isTrueSize) => useViewing.setState({ isTrueSize })}
      />
      <p role="status">{isOn ? sizeSentence(overflow) : ''}</p>
    </div>
  );
}

/** What to know of a car at true size that is `overflow` times as large as its place. */
function sizeSentence(overflow: number): string {
  if (overflow <= 1) return 'For a screen at arm’s length (0.7 m).';
  const times = Number.isFinite(overflow) ? `${overflow.toFixed(1)} times` : 'far';
  return `Larger than its place here by ${times}; step back or use a larger window.`;
}

/** Whether parts that differ between the alternatives have a dashed line round them. */
function Marking() {
  const isOn = useViewing(({ isMarking }) => isMarking);
  if (useStagedCount() < 2) return null;
  return (
    <Toggle
      name="Mark differences"
      title="A dashed line round every part whose finish differs between the alternatives"
      isOn={isOn}
      onChange={(isMarking) => useViewing.setState({ isMarking })}
    />
  );
}
