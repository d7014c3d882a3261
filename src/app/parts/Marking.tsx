/** What can be done to all ticked parts at once, at the foot of the list. */
import { useState } from 'react';
import { type Build, type Part, refOf } from '../../build/build.ts';
import { joinParts } from '../../build/edit/cover.ts';
import { embed } from '../../build/edit/finish.ts';
import { giveFinish } from '../../build/edit/part.ts';
import { edit, endStep } from '../store.ts';
import { bring } from './bring.ts';
import { Picking } from './Picking.tsx';
import { type Standing, standings } from './standing.ts';

interface MarkingProps {
  readonly parts: readonly Part[];
  /** The ticks have done their work. */
  readonly onDone: () => void;
}

/** Buttons for the ticked parts. */
export function Marking({ parts, onDone }: MarkingProps) {
  const [said, setSaid] = useState('');
  const ids = parts.map(({ id }) => id);
  const isNone = ids.length === 0;
  const count = `${ids.length} ${ids.length === 1 ? 'part' : 'parts'}`;
  const mark = (standing: Standing, name: string): void => {
    endStep();
    edit((build) => ids.reduce((now: Build, id) => bring(now, id, standing), build));
    setSaid(`${count} marked: ${name.toLowerCase()}.`);
    onDone();
  };
  return (
    <div className={isNone ? 'marking is-idle' : 'marking'}>
      <p role="status">
        {isNone
          ? said || 'Nothing is ticked.'
          : `${count} ticked. Mark ${ids.length === 1 ? 'it' : 'them'}:`}
      </p>
      <div className="buttons">
        {standings.map(({ standing, name }) => (
          <button
            key={standing}
            type="button"
            className="button"
            disabled={isNone}
            onClick={() => mark(standing, name)}
          >
            {name}
          </button>
        ))}
      </div>
      <div className="buttons">
        <Picking
          words={`Choose what ${ids.length === 1 ? 'it wears' : 'they wear'}…`}
          label="Finish of the ticked parts"
          isDisabled={isNone}
          onPick={(picked) =>
            edit(
              (build) =>
                ids.reduce(
                  (now: Build, id) => giveFinish(now, id, refOf(picked)),
                  embed(build, picked),
                ),
              `finish of ${ids.join()}`,
            )
          }
        />
        <button
          type="button"
          className="button"
          disabled={parts.length < 2}
          onClick={() => {
            endStep();
            edit((build) => joinParts(build, ids));
            setSaid(`Sprayed together as ${parts[0]?.name}.`);
            onDone();
          }}
        >
          Spray together
        </button>
      </div>
    </div>
  );
}
