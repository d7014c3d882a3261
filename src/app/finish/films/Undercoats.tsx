/** The films beneath the paint: bases and primers, in the order they lie, the uppermost first. */

import { isDyed } from '../../../finish/edit/effect.ts';
import {
  addUndercoat,
  changeUndercoat,
  mostUndercoats,
  moveUndercoat,
  removeUndercoat,
} from '../../../finish/edit/film.ts';
import type { Undercoat } from '../../../finish/finish.ts';
import { Choice } from '../../pieces/Choice.tsx';
import { Field } from '../../pieces/Field.tsx';
import { nameFault } from '../../pieces/naming.ts';
import { ColourEntry } from '../colour/ColourEntry.tsx';
import type { Live } from '../live.ts';
import { Bottle } from './Bottle.tsx';
import { FilmFields } from './FilmFields.tsx';

interface UndercoatsProps {
  readonly live: Live;
  readonly rack: string;
}

/** Undercoats from the paint down to the plastic. */
export function Undercoats({ live, rack }: UndercoatsProps) {
  const { finish, takeAlone } = live;
  const films = finish.undercoats.map((film, at) => ({ film, at })).toReversed();
  const isBare = isDyed(finish) && films.length === 0;
  return (
    <>
      <div className="buttons">
        <button
          type="button"
          className="button"
          disabled={finish.undercoats.length >= mostUndercoats}
          onClick={() => takeAlone((now) => addUndercoat(now))}
        >
          Add an undercoat beneath the paint
        </button>
      </div>
      {isBare ? (
        <p className="quiet">
          A dye shows what lies beneath it; without an undercoat it is worked out over white.
        </p>
      ) : null}
      {films.map(({ film, at }) => (
        <FilmCard key={at} live={live} rack={rack} film={film} at={at} />
      ))}
    </>
  );
}

interface FilmCardProps extends UndercoatsProps {
  readonly film: Undercoat;
  /** Position from the plastic, 0 first. */
  readonly at: number;
}

function FilmCard({ live, rack, film, at }: FilmCardProps) {
  const { finish, take, takeAlone } = live;
  const change = (changes: Partial<Undercoat>): string | undefined =>
    take((now) => changeUndercoat(now, at, changes));
  const count = finish.undercoats.length;
  return (
    <fieldset className="film">
      <legend>{at === 0 ? `${film.name}, on the plastic` : film.name}</legend>
      <Field
        label="Name of the film"
        value={film.name}
        onType={(name) => nameFault(name) ?? change({ name: name.trim() })}
      />
      <div className="fields">
        <FilmFields {...film} onChange={change} />
      </div>
      <div className="film-choices">
        <Choice
          legend="It is a"
          value={film.role}
          options={[
            { value: 'primer', name: 'primer' },
            { value: 'base', name: 'base' },
          ]}
          onChoose={(role) => change({ role })}
        />
        <Choice
          legend="and"
          value={film.effect}
          options={[
            { value: 'solid', name: 'solid' },
            { value: 'metallic', name: 'metallic' },
          ]}
          onChoose={(effect) => change({ effect })}
        />
      </div>
      <ColourEntry
        label="Its colour"
        colour={film.colour}
        onColour={(colour) => change({ colour })}
      />
      <Bottle live={live} rack={rack} place={at} film={film.name} />
      <div className="buttons">
        <button
          type="button"
          className="button"
          disabled={at === count - 1}
          onClick={() => takeAlone((now) => moveUndercoat(now, at, 1))}
        >
          Move up
        </button>
        <button
          type="button"
          className="button"
          disabled={at === 0}
          onClick={() => takeAlone((now) => moveUndercoat(now, at, -1))}
        >
          Move down
        </button>
        <button
          type="button"
          className="button"
          onClick={() => takeAlone((now) => removeUndercoat(now, at))}
        >
          Take {film.name} out
        </button>
      </div>
    </fieldset>
  );
}
