/**
 * All parts of the model at a glance, to mark many in one go: what is painted already, what is open,
 * what the kit lacks. Ticked parts are marked, given a finish or sprayed together; a name opens the
 * part's own card. Every change is live.
 */
import { useState } from 'react';
import { finishesByRef, type Part, usualFinish } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { cleared, lay, type Overlay } from '../overlay/overlay.ts';
import { UndoHere } from '../overlay/UndoHere.tsx';
import { Dialog } from '../pieces/Dialog.tsx';
import { Bowl } from '../pieces/Spoon.tsx';
import { pointsAt } from '../pointing.ts';
import { endStep, useWork } from '../store.ts';
import { Marking } from './Marking.tsx';
import { standings, standingWords } from './standing.ts';
import './parts.css';

/** Where parts sit, in the order in which a builder comes to them. */
const places = ['Body and trim', 'Cabin', 'Wheels'] as const;
type Place = (typeof places)[number];

function placeOf(part: Part, sight: SightTable): Place {
  const group = sight.parts.find(({ id }) => id === part.covers[0])?.group;
  if (group === 'cabin') return 'Cabin';
  return group === 'wheels' ? 'Wheels' : 'Body and trim';
}

type Asks = Extract<Overlay, { kind: 'parts' }>['asks'];

const titles = { painted: 'Mark what is painted', open: 'Open parts' } as const;

/** The list of parts with their ticks. */
export function PartList({ asks }: { readonly asks?: Asks }) {
  const { build, car } = useWork();
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const chosen = build.parts.filter(({ id }) => ticked.includes(id));
  const close = (): void => {
    endStep();
    cleared('parts');
  };
  const tick = (ids: readonly string[], isOn: boolean): void =>
    setTicked((now) =>
      isOn ? [...new Set([...now, ...ids])] : now.filter((id) => !ids.includes(id)),
    );
  return (
    <Dialog
      title={asks === undefined ? 'All parts' : titles[asks]}
      place="side"
      className="part-list"
      onClose={close}
      tools={<UndoHere />}
    >
      <p className="quiet">
        Tick parts, then say how they stand or what they wear. A name opens the part’s own card.
      </p>
      <dl className="meanings">
        {standings.map(({ standing, name, means }) => (
          <div key={standing}>
            <dt>{name}:</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
      {places.map((place) => {
        const parts = build.parts.filter((part) => placeOf(part, car.sight) === place);
        if (parts.length === 0) return null;
        const ids = parts.map(({ id }) => id);
        const isWhole = ids.every((id) => ticked.includes(id));
        return (
          <section key={place} aria-labelledby={`list-${place}`}>
            <header className="list-head">
              <h3 id={`list-${place}`}>{place}</h3>
              <button type="button" className="text-button" onClick={() => tick(ids, !isWhole)}>
                {isWhole ? 'Untick' : 'Tick'} all<span className="unseen"> of {place}</span>
              </button>
            </header>
            <ul className="list">
              {parts.map((part) => (
                <Line
                  key={part.id}
                  part={part}
                  isTicked={ticked.includes(part.id)}
                  onTick={(isOn) => tick([part.id], isOn)}
                />
              ))}
            </ul>
          </section>
        );
      })}
      <Marking parts={chosen} onDone={() => setTicked([])} />
    </Dialog>
  );
}

interface LineProps {
  readonly part: Part;
  readonly isTicked: boolean;
  readonly onTick: (isOn: boolean) => void;
}

function Line({ part, isTicked, onTick }: LineProps) {
  const { build } = useWork();
  const finish = finishesByRef(build).get(usualFinish(part));
  return (
    <li className={part.absent ? 'is-absent' : undefined} {...pointsAt([part.id])}>
      <input
        type="checkbox"
        aria-label={`Tick ${part.name}`}
        checked={isTicked}
        onChange={({ currentTarget }) => onTick(currentTarget.checked)}
      />
      {finish === undefined ? null : <Bowl finish={finish} light={build.viewing.light} />}
      <button
        type="button"
        className="list-name"
        aria-label={`${part.name}, its card`}
        onClick={() => lay({ kind: 'part', part: part.id })}
      >
        <bdi>{part.name}</bdi>
      </button>
      <span className="list-standing">{standingWords(part)}</span>
    </li>
  );
}
