/** Which alternatives stand side by side: a letter to tick for each, where there are more than two. */
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
        <label key={id} title={name}>
          <input
            type="checkbox"
            checked={on.has(id)}
            disabled={on.has(id) && on.size === 1}
            aria-label={`${letterOf(at)}, ${name}`}
            onChange={({ currentTarget }) => setOnStage(id, currentTarget.checked)}
          />
          <span aria-hidden="true">{letterOf(at)}</span>
        </label>
      ))}
    </fieldset>
  );
}
