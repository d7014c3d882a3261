/** What can be done to all ticked parts at once, at the foot of the list. */
import { useState } from 'react';
import { type Build, isOpen, type Part, refOf } from '../../build/build.ts';
import { joinParts } from '../../build/edit/cover.ts';
import { embed } from '../../build/edit/finish.ts';
import { giveFinish } from '../../build/edit/part.ts';
import { edit, endStep, useBench } from '../store.ts';
import { bring } from './bring.ts';
import { Picking } from './Picking.tsx';
import { pickedWords } from './picked.ts';
import { type Standing, standings } from './standing.ts';

interface MarkingProps {
  readonly parts: readonly Part[];
  /** The ticks have done their work. */
  readonly onDone: () => void;
}

const openBuild = (): Build => useBench.getState().work!.build;

/** Buttons for the ticked parts. */
export function Marking({ parts, onDone }: MarkingProps) {
  const [said, setSaid] = useState('');
  /** How often parts were opened: each time their spoons are laid out afresh. */
  const [opened, setOpened] = useState(0);
  const ids = parts.map(({ id }) => id);
  const isNone = ids.length === 0;
  const count = `${ids.length} ${ids.length === 1 ? 'part' : 'parts'}`;
  const mark = (standing: Standing, name: string): void => {
    endStep();
    edit((build) => ids.reduce((now: Build, id) => bring(now, id, standing), build));
    setSaid(`${count} marked: ${name.toLowerCase()}.`);
    // Open parts are of no use without candidates, so they stay ticked for those.
    if (standing === 'open') setOpened(opened + 1);
    else onDone();
  };
  return (
    <div className={isNone ? 'marking is-idle' : 'marking'}>
      <p role="status" className="marking-said">
        {said}
      </p>
      <p>
        {isNone
          ? 'Nothing is ticked.'
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
          key={opened}
          isLaidOut={opened > 0}
          words={
            parts.every(isOpen) && !isNone
              ? 'Choose candidates…'
              : `Choose what ${ids.length === 1 ? 'it wears' : 'they wear'}…`
          }
          label="Finish of the ticked parts"
          isDisabled={isNone}
          onPick={(picked) => {
            const ref = refOf(picked);
            const before = openBuild();
            edit(
              (build) =>
                ids.reduce((now: Build, id) => giveFinish(now, id, ref), embed(build, picked)),
              // Each candidate is a step of its own, the trying on of finishes is one.
              parts.some(isOpen) ? undefined : `finish of ${ids.join()}`,
            );
            setSaid(pickedWords(before, openBuild(), ids, ref));
          }}
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
