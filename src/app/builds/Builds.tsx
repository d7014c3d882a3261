/** Every build this browser keeps, to open, copy, save or delete, and the demo at the end. */
import { useDeferredValue, useState } from 'react';
import { askForFile } from '../opening/ask.ts';
import { openWhenRead } from '../opening/incoming.ts';
import { demoWork } from '../opening/start.ts';
import { clear, lay } from '../overlay/overlay.ts';
import { Dialog } from '../pieces/Dialog.tsx';
import { useWork } from '../store.ts';
import { Deleted } from './Deleted.tsx';
import { Line } from './Line.tsx';
import { Shape } from './Picture.tsx';
import { RoomLeft } from './RoomLeft.tsx';
import { useShelf } from './shelf.ts';
import './builds.css';

/** So many can be taken in at a glance; more are searched. */
const fewBuilds = 8;

/** The dialog. */
export function Builds() {
  const openKey = useWork().key;
  const { rows, refusal, elsewhere } = useShelf();
  const [sought, setSought] = useState('');
  const words = useDeferredValue(sought).trim().toLowerCase();
  const shown = rows?.filter(({ card }) => card.name.toLowerCase().includes(words));
  const hasOwn = (rows?.length ?? 0) > 0;
  return (
    <Dialog
      title="Builds"
      className="builds"
      onClose={clear}
      closing="Close"
      tools={
        <>
          <button type="button" className="button" onClick={() => lay({ kind: 'new' })}>
            New build…
          </button>
          <button type="button" className="button" onClick={askForFile}>
            Open a file…
          </button>
        </>
      }
    >
      {refusal === undefined ? null : <p className="builds-told">{refusal}</p>}
      {rows === undefined || hasOwn ? null : (
        <p className="builds-told">
          No builds of your own yet. Change anything on the bench, begin a new build or open a file:
          it is kept here by itself.
        </p>
      )}
      {(rows?.length ?? 0) <= fewBuilds ? null : (
        <div className="field builds-search">
          <label htmlFor="builds-sought">Search by name</label>
          <input
            id="builds-sought"
            type="search"
            dir="auto"
            autoComplete="off"
            value={sought}
            onChange={({ currentTarget }) => setSought(currentTarget.value)}
          />
        </div>
      )}
      <p className="unseen" role="status">
        {words === '' || shown === undefined ? '' : `${shown.length} builds found`}
      </p>
      <ul className="builds-list">
        {shown?.map(({ card, picture, deleted }) =>
          deleted === undefined ? (
            <Line
              key={card.key}
              card={card}
              picture={picture}
              isOpen={card.key === openKey}
              isElsewhere={card.key !== openKey && elsewhere.has(card.key)}
            />
          ) : (
            <Deleted key={card.key} deleted={deleted} />
          ),
        )}
        {shown?.length === 0 && hasOwn ? (
          <li className="builds-told">No build is called like this.</li>
        ) : null}
        <Demo />
      </ul>
      {hasOwn ? (
        <RoomLeft count={rows?.filter((row) => row.deleted === undefined).length ?? 0} />
      ) : null}
    </Dialog>
  );
}

/** Always there, always as it was made. */
function Demo() {
  return (
    <li className="builds-line">
      <Shape of="demo" />
      <div className="builds-words">
        <h3>Demo: Dragonfly roadster, as it was made</h3>
        <p className="quiet">It opens afresh each time; what you change in it becomes your own.</p>
      </div>
      <div className="buttons">
        <button
          type="button"
          className="button"
          onClick={() => void openWhenRead('The demo', demoWork())}
        >
          Open<span className="unseen"> the demo again</span>
        </button>
      </div>
    </li>
  );
}
