/** What lies on the plastic, from the clear coat down to the primer? For things not painted, a bottle. */

import { isDyed, isPaint } from '../../../finish/edit/effect.ts';
import { changeClear, setClear, setTint } from '../../../finish/edit/film.ts';
import { Field } from '../../pieces/Field.tsx';
import { nameFault } from '../../pieces/naming.ts';
import { ColourEntry } from '../colour/ColourEntry.tsx';
import type { Live } from '../live.ts';
import { Bottle } from './Bottle.tsx';
import { FilmFields } from './FilmFields.tsx';
import { Undercoats } from './Undercoats.tsx';

interface FilmsProps {
  readonly live: Live;
  readonly rack: string;
}

/** All films, the outermost first. */
export function Films({ live, rack }: FilmsProps) {
  const { finish, take } = live;
  if (!isPaint(finish)) {
    return (
      <section className="editor-section">
        <h3>What to have on hand</h3>
        <Bottle live={live} rack={rack} place="paint" film={finish.name} />
      </section>
    );
  }
  return (
    <section className="editor-section">
      <h3>Films, the outermost first</h3>
      <Clear live={live} rack={rack} />
      <fieldset className="film">
        <legend>The paint itself</legend>
        <div className="fields">
          <FilmFields
            chemistry={finish.chemistry}
            coats={finish.coats}
            {...(isDyed(finish) && { coatsHint: 'The colour above is that of all these coats.' })}
            onChange={(changes) => take((now) => ({ ...now, ...changes }))}
          />
        </div>
        <Bottle live={live} rack={rack} place="paint" film={finish.name} />
      </fieldset>
      <Undercoats live={live} rack={rack} />
    </section>
  );
}

function Clear({ live, rack }: FilmsProps) {
  const { finish, take, takeAlone } = live;
  const { clear } = finish;
  return (
    <fieldset className="film">
      <legend>Clear coat</legend>
      <label className="tick">
        <input
          type="checkbox"
          checked={clear !== undefined}
          onChange={({ currentTarget: { checked } }) => takeAlone((now) => setClear(now, checked))}
        />
        A clear coat lies over it
      </label>
      {clear === undefined ? null : (
        <>
          <Field
            label="Name of the clear"
            value={clear.name}
            onType={(name) =>
              nameFault(name) ?? take((now) => changeClear(now, { name: name.trim() }))
            }
          />
          <div className="fields">
            <FilmFields
              {...clear}
              onChange={(changes) => take((now) => changeClear(now, changes))}
            />
          </div>
          <label className="tick">
            <input
              type="checkbox"
              checked={clear.tint !== undefined}
              onChange={({ currentTarget: { checked } }) =>
                takeAlone((now) => setTint(now, checked ? { srgb: '#e8e0d0' } : undefined))
              }
            />
            It is tinted
          </label>
          {clear.tint === undefined ? null : (
            <ColourEntry
              label="White seen through all its coats"
              colour={clear.tint}
              onColour={(tint) => take((now) => setTint(now, tint))}
            />
          )}
          <Bottle live={live} rack={rack} place="clear" film={clear.name} />
        </>
      )}
    </fieldset>
  );
}
