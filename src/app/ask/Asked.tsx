/** What is asked: which alternatives, which parts one by one, and whether the story goes along. */
import { letterOf } from '../../build/build.ts';
import { lettersIn, mostAsked, type Round } from '../../opinion/round.ts';
import { useWork } from '../store.ts';
import { partsToAsk, toggled, type Wanted } from './wanted.ts';

interface AskedProps {
  readonly wanted: Wanted;
  readonly round: Round;
  readonly onChange: (next: Partial<Wanted>) => void;
}

/** Ticks; what cannot be asked is not there to tick. */
export function Asked({ wanted, round, onChange }: AskedProps) {
  const { build } = useWork();
  const { alternatives } = build;
  const parts = partsToAsk(build, wanted.alternatives);
  const asked = lettersIn(round);
  return (
    <section className="ask-what" aria-label="What is asked">
      <fieldset className="standings">
        <legend className="field-label">Which would you choose?</legend>
        {alternatives.slice(0, mostAsked).map(({ id, name }, at) => (
          <label key={id} className="tick">
            <input
              type="checkbox"
              checked={wanted.alternatives.includes(id)}
              onChange={({ currentTarget }) =>
                onChange({
                  alternatives: toggled(wanted.alternatives, id, currentTarget.checked),
                })
              }
            />
            <span>
              <strong>{letterOf(at)}</strong> <bdi>{name}</bdi>
            </span>
          </label>
        ))}
        <p className="field-hint">
          {asked.length < 2
            ? alternatives.length < 2
              ? 'Viewers need at least two to choose from. Close this and add an alternative.'
              : 'Viewers need at least two to choose from.'
            : 'Viewers see letters without names, in an order of their own, and none is chosen for them.'}
        </p>
      </fieldset>
      {asked.length < 2 ? null : (
        <fieldset className="standings">
          <legend className="field-label">
            {parts.length === 0 ? 'No part differs' : 'Asked one by one besides'}
          </legend>
          {parts.map(({ id, name }) => (
            <label key={id} className="tick">
              <input
                type="checkbox"
                checked={wanted.parts.includes(id)}
                onChange={({ currentTarget }) =>
                  onChange({ parts: toggled(wanted.parts, id, currentTarget.checked) })
                }
              />
              <bdi>{name}</bdi>
            </label>
          ))}
          <p className="field-hint">
            {parts.length === 0
              ? 'These alternatives wear the same on every part; viewers would see no difference.'
              : 'Each takes viewers a moment more. None need be ticked.'}
          </p>
        </fieldset>
      )}
      {build.story === undefined ? null : (
        <label className="tick ask-story">
          <input
            type="checkbox"
            checked={wanted.withStory}
            onChange={({ currentTarget }) => onChange({ withStory: currentTarget.checked })}
          />
          <span>
            The story goes along
            <small className="tick-note" dir="auto">
              {build.story}
            </small>
          </span>
        </label>
      )}
    </section>
  );
}
