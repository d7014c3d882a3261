/** Which alternatives stand side by side: a letter to tick for each, where there are more than two. */
import { memo } from 'react';
import { letterOf } from '../../build/build.ts';
import { setOnStage, useStaged } from '../onStage.ts';
import { useWork } from '../store.ts';

/** The row of letters; nothing where there is nothing to leave off. */
export function OnStage() {
  const { alternatives } = useWork().build;
  const on = new Set(useStaged().map(({ alternative }) => alternative.id));
  if (alternatives.length < 3) return null;
  return (
    <fieldset className="on-stage">
      <legend>On the stage</legend>
      {alternatives.map(({ id, name }, at) => (
        <Tick
          key={id}
          id={id}
          name={name}
          letter={letterOf(at)}
          isOn={on.has(id)}
          isLast={on.has(id) && on.size === 1}
        />
      ))}
    </fieldset>
  );
}

interface TickProps {
  readonly id: string;
  readonly name: string;
  readonly letter: string;
  readonly isOn: boolean;
  /** The last one on the stage stays there. */
  readonly isLast: boolean;
}

/** One letter to tick. */
const Tick = memo(function Tick({ id, name, letter, isOn, isLast }: TickProps) {
  return (
    <label title={name}>
      <input
        type="checkbox"
        checked={isOn}
        disabled={isLast}
        aria-label={`${letter}, ${name}`}
        onChange={({ currentTarget }) => setOnStage(id, currentTarget.checked)}
      />
      <span aria-hidden="true">{letter}</span>
    </label>
  );
});
