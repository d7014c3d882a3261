/** One build of the list: its picture, what it is, when it was changed, what can be done with it. */
import { useState } from 'react';
import { isNewer } from '../keeping/store/card.ts';
import type { Card } from '../keeping/store/database.ts';
import { refusalText } from '../keeping/trouble.ts';
import { clear } from '../overlay/overlay.ts';
import { copyBuild, deleteBuild, openBuild, saveBuild } from './act.ts';
import { Shape } from './Picture.tsx';

interface LineProps {
  readonly card: Card;
  readonly picture: string | undefined;
  readonly isOpen: boolean;
  readonly isElsewhere: boolean;
}

export function Line({ card, picture, isOpen, isElsewhere }: LineProps) {
  const [trouble, setTrouble] = useState<string>();
  const isReadable = !isNewer(card);
  const tell = (doing: Promise<unknown>): void => {
    doing.catch((error: unknown) => setTrouble(refusalText(error)));
  };
  return (
    <li className="builds-line" data-open={isOpen || undefined}>
      <Shape of={isReadable ? card.key : undefined} picture={picture} />
      <div className="builds-words">
        <h3 dir="auto">{card.name}</h3>
        <p className="quiet">
          {isReadable ? (
            <>
              1:{card.scale}; {card.openParts} {card.openParts === 1 ? 'part' : 'parts'} open
            </>
          ) : (
            'Made by a newer Testspoon; it stays untouched'
          )}
          ; changed {whenInWords(card.changed)}
          {isElsewhere ? '; open in another tab' : ''}
        </p>
        {trouble === undefined ? null : <p role="alert">{trouble}</p>}
      </div>
      <div className="buttons">
        {isReadable ? (
          <>
            <button
              type="button"
              className="button"
              onClick={() => (isOpen ? clear() : void openBuild(card))}
            >
              {isOpen ? 'Back to it' : 'Open'}
              <Unseen name={card.name} />
            </button>
            <button type="button" className="button" onClick={() => tell(copyBuild(card))}>
              Copy
              <Unseen name={card.name} />
            </button>
          </>
        ) : null}
        <button type="button" className="button" onClick={() => tell(saveBuild(card))}>
          Save to file
          <Unseen name={card.name} />
        </button>
        <button
          type="button"
          className="button"
          disabled={isElsewhere}
          title={isElsewhere ? 'Close it in the other tab first' : undefined}
          onClick={() => tell(deleteBuild(card))}
        >
          Delete
          <Unseen name={card.name} />
        </button>
      </div>
    </li>
  );
}

/** Which build a button is about, for those who hear it. */
const Unseen = ({ name }: { name: string }) => <span className="unseen"> {name}</span>;

const day = (at: Date): string => at.toDateString();
const clock = new Intl.DateTimeFormat('en-GB', { timeStyle: 'short' });
const calendar = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' });

/** today at 19:02; yesterday at 9:40; on 3 November 2026. */
function whenInWords(at: number): string {
  const then = new Date(at);
  const now = new Date();
  const yesterday = new Date(now.getFullYear(), now.getMonth(), now.getDate() - 1);
  if (day(then) === day(now)) return `today at ${clock.format(then)}`;
  if (day(then) === day(yesterday)) return `yesterday at ${clock.format(then)}`;
  return `on ${calendar.format(then)}`;
}
